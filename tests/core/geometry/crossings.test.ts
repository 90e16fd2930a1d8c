import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { findCrossing, type Point } from '#core/geometry';

const path = (...numbers: readonly number[]): readonly Point[] =>
  numbers.flatMap((x, at) => (at % 2 === 0 ? [{ x, y: numbers[at + 1] ?? 0 }] : []));

describe('a closed path that crosses itself', () => {
  test('a bow tie crosses, a square and an L do not', () => {
    expect(findCrossing(path(0, 0, 10, 0, 0, 10, 10, 10))).toEqual([1, 3]);
    expect(findCrossing(path(0, 0, 10, 0, 10, 10, 0, 10))).toBeNull();
    expect(findCrossing(path(0, 0, 10, 0, 10, 5, 5, 5, 5, 10, 0, 10))).toBeNull();
  });

  test('a side that runs back along its neighbour, or touches another, counts', () => {
    expect(findCrossing(path(0, 0, 10, 0, 5, 0, 5, 5))).not.toBeNull();
    expect(findCrossing(path(0, 0, 10, 0, 10, 10, 5, 0, 0, 10))).not.toBeNull();
  });

  test('always: a star round a point does not cross; with two of its corners exchanged it does', () => {
    const radii = fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 5, maxLength: 12 });
    fc.assert(
      fc.property(radii, (lengths) => {
        const star = lengths.map((radius, k) => {
          const angle = (2 * Math.PI * k) / lengths.length;
          return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
        });
        expect(findCrossing(star)).toBeNull();
        const [a, b, ...rest] = star.map(({ x, y }) => {
          const radius = Math.hypot(x, y);
          return { x: (50 * x) / radius, y: (50 * y) / radius };
        });
        if (a && b) expect(findCrossing([b, a, ...rest])).not.toBeNull();
      }),
    );
  });
});
