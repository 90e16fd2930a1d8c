import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  canBeStoodUp,
  checkRoute,
  fitsThrough,
  leastSecondSide,
  longestRoundCorner,
  takeRoute,
} from '#core/fitting';
import type { Gate } from '#core/joinery';

/** Every turn tried: whether a rectangle's box, turned, lies within the opening. */
function fitsAtSomeTurn(p: number, q: number, a: number, b: number): boolean {
  return Array.from({ length: 9001 }, (_, i) => (i / 9000) * (Math.PI / 2)).some(
    (turn) => p * Math.cos(turn) + q * Math.sin(turn) <= a && p * Math.sin(turn) + q * Math.cos(turn) <= b,
  );
}

describe('a rectangle through a rectangle', () => {
  // J. E. Wetzel, "Rectangles in rectangles", Math. Magazine 73 (2000) 204-211: 9 × 4 does not fit in 8 × 6; the
  // needed second side of the others by Carver's condition, its equivalent form and a scan of turns, which agree.
  test.each([
    [9, 4, 8, 6, false, 9.787594],
    [9, 1, 8, 6, true, 5.895259],
    [9.5, 0.3, 8, 6, true, 5.626785],
    [8.5, 1.5, 8, 6, true, 5.782898],
    [8.5, 2, 8, 6, false, 6.7],
    [13, 1, 12, 6, false, 6.874325],
  ])('%d × %d in %d × %d: %s', (p, q, a, b, fits, need) => {
    expect(fitsThrough({ p, q, a, b })).toBe(fits);
    expect(leastSecondSide({ p, q, a, b })).toBeCloseTo(need, 5);
  });

  // The trade rulebook's pairs (joinery F1), among them the square that the bare formula would let through a smaller one.
  test.each([
    [10, 10, 8, 8, false],
    [624.5, 24, 574.8, 514.8, true],
    [640, 30, 480, 460, false],
    [590, 330, 560, 480, false],
    [12, 11, 10, 10, false],
    [1300, 20, 1000, 850, false],
    [1300, 20, 1000, 870, true],
    [1300, 60, 1000, 905, false],
  ])('%d × %d in %d × %d: %s', (p, q, a, b, fits) => {
    expect(fitsThrough({ p, q, a, b })).toBe(fits);
  });

  test('always: agrees with trying every turn', () => {
    const size = fc.double({ min: 1, max: 20, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, (p, q, a, b) => {
        const need = leastSecondSide({ p, q, a, b });
        const second = Math.min(a, b);
        fc.pre(Math.abs(need - second) > 0.01 && Math.abs(Math.max(p, q) - Math.max(a, b)) > 0.01);
        expect(fitsThrough({ p, q, a, b })).toBe(
          fitsAtSomeTurn(Math.max(p, q), Math.min(p, q), Math.max(a, b), second),
        );
      }),
      { numRuns: 200 },
    );
  });
});

describe('a bar round a corner', () => {
  // L = (a^(2/3) + b^(2/3))^(3/2), a text-book result; 3 and 4 ft give 9.87 ft (socratic.org, rounded there).
  test.each([
    [3, 4, 9.865663],
    [8, 27, 46.872167],
    [1, 1, 2.828427],
  ])('passages %d and %d: %d', (a, b, length) => {
    expect(longestRoundCorner(a, b, 0)).toBeCloseTo(length, 5);
  });
  // Rulebook vectors (joinery F4).
  test.each([
    [620, 560, 0, 1668.05],
    [620, 560, 18, 1632.03],
    [620, 560, 24, 1620.02],
    [700, 600, 40, 1756.55],
  ])('passages %d and %d, %d thick: %d', (a, b, thickness, length) => {
    expect(longestRoundCorner(a, b, thickness)).toBeCloseTo(length, 1);
  });
  test('a bar as thick as the passage does not turn', () => {
    expect(longestRoundCorner(60, 500, 60)).toBe(0);
  });
});

const companionway: Gate = {
  kind: 'opening',
  id: 'hatch',
  name: 'the companionway',
  width: 560,
  height: 620,
  cornerRadius: 60,
};
const turn: Gate = {
  kind: 'corner',
  id: 'turn',
  name: 'the turn below the hatch',
  before: 630,
  after: 570,
  depth: 660,
};
const frame = { name: 'A Door frame', length: 624.5, width: 1737, thickness: 24 };

describe('a route', () => {
  test('a tall frame passes the hatch long end first and sticks in the turn below (joinery F)', () => {
    const answers = takeRoute(frame, [companionway, turn]);
    expect(answers.map(({ passes }) => passes)).toEqual([true, false]);
    expect(answers[0]?.way).toBe('long end first');
    expect(answers[1]).toMatchObject({ need: 1737 });
    expect(answers[1]?.have).toBeCloseTo(1620, 0);
  });
  test('the first gate that fails is named with what it needs and what there is', () => {
    expect(checkRoute(frame, [companionway, turn])?.message).toBe(
      'A Door frame, 1737 × 625 × 24 mm as one, does not pass the turn below the hatch: turning it needs 1737 mm, and there are 1620.',
    );
    expect(checkRoute({ ...frame, width: 1500 }, [companionway, turn])).toBeNull();
  });
  test('what is wider than a passage says that, not how far it would turn', () => {
    const low: Gate = {
      kind: 'corner',
      id: 'low',
      name: 'the low turn',
      before: 700,
      after: 600,
      depth: 600,
    };
    expect(takeRoute(frame, [low])[0]).toMatchObject({ passes: false, way: 'flat', need: 624.5, have: 590 });
  });
  test('what slides square through both passages need not turn', () => {
    const thin: Gate = { kind: 'corner', id: 'c', name: 'c', before: 2000, after: 40, depth: 700 };
    expect(takeRoute(frame, [thin])[0]?.passes).toBe(true);
  });
  test('a cabinet is stood up only where its diagonal clears the headroom', () => {
    // sqrt(1780² + 350²) = 1814.1 (joinery F)
    expect(canBeStoodUp(1780, 350, 1814)).toBe(false);
    expect(canBeStoodUp(1780, 350, 1815)).toBe(true);
  });
  test('a space takes what lies in it, also askew', () => {
    const space: Gate = {
      kind: 'space',
      id: 's',
      name: 'the saloon',
      length: 1700,
      width: 1100,
      height: 400,
    };
    expect(takeRoute({ ...frame, length: 100 }, [space])[0]?.passes).toBe(true);
    expect(takeRoute({ ...frame, width: 2100 }, [space])[0]?.passes).toBe(false);
  });
});
