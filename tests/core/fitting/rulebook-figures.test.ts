import { describe, expect, test } from 'vitest';
import { fitsThrough, leastSecondSide, longestRoundCorner, takeRoute } from '#core/fitting';
import type { Load } from '#core/fitting';
import type { Gate } from '#core/joinery';

// Door frame 624.5 × 1737 × 24; companionway 560 wide, 620 along the hatch, corners of radius 60, 5 for the hands on each side.
// Every value as printed in the trade rulebook's calculated example (joinery F), whose arithmetic was evaluated there.
describe('the worked way aboard', () => {
  const hatch: Gate = { kind: 'opening', id: 'h', name: 'hatch', width: 560, height: 620, cornerRadius: 60 };
  const through = (load: Omit<Load, 'name'>) => takeRoute({ name: 'load', ...load }, [hatch])[0];
  /** Printed figures take 1 - 1/√2 as 0.293: 0.013 less on a side with two corners of 60. */
  const roundedShare = 0.06;

  test('of the companionway 574.8 by 514.8 are left to pass through', () => {
    // wider than the longer side: what lacks is that side; else the shorter one
    const long = through({ length: 2000, width: 600, thickness: 590 });
    expect(Math.abs((long?.have ?? NaN) - 574.8)).toBeLessThan(roundedShare);
    const short = through({ length: 2000, width: 700, thickness: 300 });
    expect(Math.abs((short?.have ?? NaN) - 514.8)).toBeLessThan(roundedShare);
  });
  test('the frame with its long end first needs 288.6 of the second side, so it fits', () => {
    expect(leastSecondSide({ p: 624.5, q: 24, a: 574.84, b: 514.84 })).toBeCloseTo(288.6, 1);
    const frame = through({ length: 1737, width: 624.5, thickness: 24 });
    expect(frame).toMatchObject({ passes: true, way: 'long end first' });
  });
  test('in the turn below the least over all angles is no more than 1620.8 at 45°, and 1668.1 for a bar of no thickness', () => {
    const least = longestRoundCorner(620, 560, 24);
    expect(least).toBeLessThanOrEqual(1620.8);
    expect(least).toBeGreaterThan(1620.8 - 1); // the valley is flat: 47 degrees instead of 45 gains 0.8
    // joinery F4 as printed for a thin bar
    expect(longestRoundCorner(620, 560, 0)).toBeCloseTo(1668.1, 1);
  });
});

// Test vectors beside the trade rulebook (joinery F1), those with the second side just too small at any turn.
test.each([
  [1300, 60, 1000, 850, false],
  [1300, 20, 1000, 830, false],
])('%d × %d in %d × %d: %s', (p, q, a, b, fits) => {
  expect(fitsThrough({ p, q, a, b })).toBe(fits);
});

// L = (a^(2/3) + b^(2/3))^(3/2), a textbook result; 3 and 4 ft give 9.87 ft (socratic.org, rounded there), the others by the
// formula.
describe('the ladder round a corner', () => {
  test.each([
    [6, 9, 21.070447],
    [3, 5, 11.1941],
  ])('passages %d and %d: %d', (a, b, length) => {
    expect(longestRoundCorner(a, b, 0)).toBeCloseTo(length, 5);
  });
  test('passages of 3 and 4 m take 9865.6 mm through and not 9865.7', () => {
    const turn: Gate = { kind: 'corner', id: 't', name: 'turn', before: 3010, after: 4010, depth: 500 };
    const ladder = (length: number) =>
      takeRoute({ name: 'ladder', length, width: 400, thickness: 0.001 }, [turn])[0];
    expect(ladder(9865.6)?.passes).toBe(true);
    expect(ladder(9865.7)?.passes).toBe(false);
    expect(ladder(9865.7)?.have).toBeCloseTo(9865.663, 1);
  });
});
