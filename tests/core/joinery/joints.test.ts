import { describe, expect, test } from 'vitest';
import { buildPiece, screwLimits } from '#core/joinery';
import type { BuiltPiece, DrawerParameters } from '#core/joinery';
import { boxContext, drawer, worked } from '../../support/joinery-boxes.ts';

const build = (parameters: Partial<DrawerParameters> = {}): BuiltPiece =>
  buildPiece(drawer(parameters), boxContext());

describe('dovetails', () => {
  // A box 92 high with 3 tails at 1:7, half pins and pins of 5, pin piece 15 thick: as printed in the trade rulebook's
  // calculated example (joinery C12). A box front of 92 comes from an opening of 99 without a notch.
  const built = build({
    openingHeight: 99,
    runner: 'bottom',
    corner: 'through-dovetail',
    frontThickness: 15,
    grooveUp: 14,
    materials: { box: 'ash', bottom: 'ply6', runners: 'ash' },
  });
  test.each([
    ['dove_n_front', 3],
    ['delta_front', 2.143],
    ['tail_end_front', 24.0],
    ['tail_base_front', 19.71],
    ['pin_base_front', 9.29],
    ['half_base_front', 7.14],
    ['sum_end_front', 92.0],
    ['sum_base_front', 92.0],
    ['dove_angle_front', 8.13],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 2);
  });

  test('the tails stand on the side, the sockets are in the front', () => {
    const names = (id: string) =>
      built.parts
        .find((part) => part.id === id)
        ?.machining.flatMap((one) => (one.kind === 'prism' ? [one.name] : []));
    expect(names('D1')?.filter((name) => name === 'pin-socket')).toHaveLength(4 + 4); // n + 1 at each end
    expect(names('D3')).toEqual(Array.from({ length: 6 }, () => 'tail-socket')); // n at each end
  });
});

describe('box joint', () => {
  test('the number of fingers is odd and their pitch fills the width', () => {
    const built = build();
    for (const end of ['front', 'back']) {
      expect(worked(built, `finger_n_${end}`) % 2).toBe(1);
      const width = worked(built, end === 'front' ? 'boxfront_h' : 'back_h');
      expect(worked(built, `finger_n_${end}`) * worked(built, `finger_f_${end}`)).toBeCloseTo(width, 9);
    }
  });
  test('the groove is stopped in the piece that has a finger at its height (C11)', () => {
    const built = build();
    // front: pitch 128/9 = 14.22, groove from 113.8 to 120 lies in pitch 8, a finger of the side
    const groove = (id: string) => {
      const found = built.parts
        .find((part) => part.id === id)
        ?.machining.find((one) => one.kind === 'recess' && one.name === 'groove');
      return found?.kind === 'recess' ? [found.box.min.x, found.box.max.x] : [];
    };
    expect(groove('D1')[0]).toBe(6); // thickness of the front less the depth of the groove
    expect(groove('D3')).toEqual([0, 377]);
    // back: pitch 139/9 = 15.44, pitch 7, a finger of the back
    expect(groove('D1')[1]).toBe(445);
    expect(groove('D4')).toEqual([6, 371]);
  });
});

// A 4 mm screw through 12 of plywood into a cleat edge of 20, as printed in the trade rulebook's example (joinery C1):
// the least length exceeds the longest, so the cleat is too thin for it.
test('a screw of 4 through 12 into 20 wants 40 and finds room for 29, pilot 2.4 in hard wood', () => {
  const limits = screwLimits(4, 12, { depth: 20, grain: 'side', hard: true });
  expect(limits.pilot).toBeCloseTo(2.4, 9);
  expect(limits.least).toBe(40);
  expect(limits.longest).toBe(29);
});

test('end grain wants ten diameters of screw, softwood a smaller pilot (joinery C1)', () => {
  const limits = screwLimits(4, 12, { depth: 60, grain: 'end', hard: false });
  expect(limits.least).toBe(52);
  expect(limits.pilot).toBeCloseTo(1.88, 9);
});
