import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { InfillParameters } from '#core/joinery';
import { buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';
import { contextFor, openingShape } from '../../support/joinery-samples.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies } from '../../support/joinery-solid.ts';

const build = (parameters: Partial<InfillParameters> = {}) =>
  buildKind('infill', {
    height: 800,
    gaps: [18, 21, 27, 24, 22],
    materials: { filler: 'oak' },
    ...parameters,
  });

// Every value as printed in the trade rulebook's calculated example (joinery B12): gaps at 0, 200, 400, 600, 800, sigma 1.0.
test.each([
  ['mean', 22.4],
  ['b', 0.0055],
  ['r_1', -2.2],
  ['r_2', -0.3],
  ['r_3', 4.6],
  ['r_4', 0.5],
  ['r_5', -2.6],
  ['dev', 7.2],
  ['S', 14],
  ['cut_W', 41],
  ['min_fin', 18],
])('%s is %d', (name, value) => {
  expect(worked(build(), name)).toBeCloseTo(value, 6);
});

test('the filler is fitted to the gaps and cut with what is left on', () => {
  const filler = partOf(build(), 1);
  expect(filler.finished).toEqual({ length: 800, width: 27, thickness: 20 });
  expect(filler.cut.width).toBe(41);
  expect(filler.edges).toEqual([{ edge: 'far-edge', treatment: 'scribed', amount: 14 }]);
});

test('a gap read from a shape follows the bow of its sides', () => {
  const shape = openingShape(
    { BL: [0, 0], BR: [30, 0], TR: [36, 900], TL: [0, 900] },
    { edges: [{ name: 'right', from: 'BR', to: 'TR', bow: 5 }] },
  );
  const built = buildKind('infill', { materials: { filler: 'mahogany' } }, contextFor(shape));
  expect(worked(built, 'g_1')).toBeCloseTo(30, 6);
  expect(worked(built, 'g_4')).toBeCloseTo(38, 1); // 33 at mid height and a bow of 5
  expect(worked(built, 'g_7')).toBeCloseTo(36, 6);
  expectSound(built);
});

describe('what stands against it is said', () => {
  test.each<[string, Partial<InfillParameters>]>([
    ['gaps-missing', { gaps: [] }],
    ['gaps-missing', { height: 0 }],
    ['heights-unfit', { heights: [0, 200] }],
    ['heights-unfit', { heights: [0, 200, 100, 600, 800] }],
    ['filler-impossible', { gaps: [0, 5, 5, 5, 5] }],
  ])('%s', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts).toEqual([]);
  });
  test.each<[string, Partial<InfillParameters>]>([
    ['filler-sliver', { gaps: [12, 14, 16, 14, 12] }],
    ['gaps-at-few-places', { gaps: [20, 30, 20] }],
    ['scribe-too-wide', { gaps: [20, 60, 20, 60, 20] }],
    ['no-back-bevel', { bevelDegrees: 0 }],
  ])('and %s leaves it built', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts).toHaveLength(1);
  });
});

const sensible = fc.record({
  height: fc.integer({ min: 300, max: 1800 }),
  gaps: fc.array(fc.integer({ min: 20, max: 60 }), { minLength: 2, maxLength: 9 }),
  scribed: fc.constantFrom('left' as const, 'right' as const),
  reveal: fc.integer({ min: 0, max: 3 }),
});

test('always: the filler ends at each gap less the reveal, on the side asked for', () => {
  fc.assert(
    fc.property(sensible, (parameters) => {
      const built = build({ ...parameters, bevelDegrees: 0 });
      expectSound(built);
      expectWords(built);
      expectWorking(built);
      const { height, gaps, scribed, reveal } = parameters;
      const sign = scribed === 'right' ? 1 : -1;
      gaps.forEach((gap, i) => {
        const y = Math.min(Math.max((height * i) / (gaps.length - 1), 0.01), height - 0.01);
        const at = (x: number) => occupies(partOf(built, 1), { x: sign * x, y, z: -5 });
        expect(at(gap - reveal - 0.2)).toBe(true);
        expect(at(gap - reveal + 0.2)).toBe(false);
        expect(at(-0.1)).toBe(false);
      });
    }),
    { numRuns: 100 },
  );
});
