import { expect, test } from 'vitest';
import { buildKind } from '../../support/flat-pieces.ts';
import { worked } from '../../support/joinery-boxes.ts';

// Test vectors beside the trade rulebook that the worked examples of its pieces do not hold.

// joinery B8: item width, height of its centre of gravity, angle of the boat, fiddle below which it tips over
test.each([
  [75, 110, 45, 72.5],
  [170, 120, 45, 35],
  [80, 60, 40, 12.33],
])('an item %d wide, its weight %d up, at %d° wants a fiddle of %d', (itemWidth, itemCentre, angle, f) => {
  const shelf = buildKind('shelf', {
    ...{ length: 760, depth: 180, itemWidth, itemCentre, angle },
    materials: { shelf: 'ply18', fiddle: 'oak' },
  });
  expect(worked(shelf, 'f_needed')).toBeCloseTo(f, 2);
});

// joinery A11: 2 more than the deviation and four times the uncertainty, up to the next mm, at least 5 and at most 25
test.each([
  [[18, 21, 27, 24, 22], 1, 14],
  [[20, 20, 20, 20, 20], 0.5, 5],
  [[20, 60, 20, 60, 20], 1, 25],
])('gaps of %j known to %d are scribed with %d left on', (gaps, sigma, left) => {
  const filler = buildKind('infill', { height: 800, gaps, sigma, materials: { filler: 'oak' } });
  expect(worked(filler, 'S')).toBe(left);
});

// Figures of worked examples to the last digit printed, where the tests of the piece go to one less.
test('louvres of 27 at 40° in a clear height of 430 stand 21.306 apart, overlap by 3.877 and leave 6.695 for air', () => {
  const door = buildKind('louvred-door', {
    ...{ width: 410, height: 560, slatWidth: 27 },
    materials: { frame: 'oak', slats: 'oak' },
  });
  expect(worked(door, 'p')).toBeCloseTo(21.306, 3); // joinery B4
  expect(worked(door, 'overlap')).toBeCloseTo(3.877, 3);
  expect(worked(door, 'air')).toBeCloseTo(6.695, 3);
});

test('a ring cut out of one blank of 620 wastes 0.750 of it', () => {
  const ring = buildKind('hatch-surround', {
    ...{ width: 520, height: 520, form: 'one-piece', lining: 'none' },
    materials: { ring: 'ply18' },
  });
  expect(worked(ring, 'waste_share')).toBeCloseTo(0.75, 3); // joinery B16
});
