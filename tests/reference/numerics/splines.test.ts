import { describe, expect, test } from 'vitest';
import { fitSpline, readSpline } from '#core/numerics';

/** Coefficients a + b d + c d² + e d³ of each piece. */
function expectPieces(
  knots: readonly number[],
  values: readonly number[],
  printed: readonly (readonly number[])[],
): void {
  const { pieces } = fitSpline(knots, values);
  expect(pieces.length).toBe(printed.length);
  pieces.forEach((piece, i) =>
    piece.forEach((value, k) => expect(Math.abs(value - (printed[i]?.[k] ?? NaN))).toBeLessThan(6e-7)),
  );
}

describe('natural cubic splines come out as published', () => {
  // In the form of Cheney and Kincaid, as worked by a published solver: S0 = -x³ + 2x + (1 - x) and so on.
  test('through (0, 1), (1, 1), (2, 0), (3, 10)', () => {
    const knots = [0, 1, 2, 3];
    expectPieces(
      knots,
      [1, 1, 0, 10],
      [
        [1, 1, 0, -1],
        [1, -2, -3, 4],
        [0, 4, 9, -3],
      ],
    );
    const spline = fitSpline(knots, [1, 1, 0, 10]);
    expect(knots.map((x) => readSpline(spline, x).bend)).toEqual([0, -6, 18, 0]); // printed
    for (const x of [0.3, 1.7, 2.5]) {
      const printed =
        x < 1
          ? -(x ** 3) + 2 * x + (1 - x)
          : x < 2
            ? -((2 - x) ** 3) + 3 * (x - 1) ** 3 - 3 * (x - 1) + 2 * (2 - x)
            : 3 * (3 - x) ** 3 + 10 * (x - 2) - 3 * (3 - x);
      expect(readSpline(spline, x).value).toBeCloseTo(printed, 12);
    }
  });

  // Mathews and Fink, Numerical Methods Using MATLAB, example 5.7; first piece as printed, the rest from memory.
  test('through (0, 0), (1, 0.5), (2, 2), (3, 1.5)', () => {
    expectPieces(
      [0, 1, 2, 3],
      [0, 0.5, 2, 1.5],
      [
        [0, 0.1, 0, 0.4],
        [0.5, 1.3, 1.2, -1],
        [2, 0.7, -1.8, 0.6],
      ],
    );
  });

  // Burden and Faires, Numerical Analysis, section 3.5, example 1 (from memory).
  test('through (1, 2), (2, 3), (3, 5)', () => {
    expectPieces(
      [1, 2, 3],
      [2, 3, 5],
      [
        [2, 0.75, 0, 0.25],
        [3, 1.5, 0.75, -0.25],
      ],
    );
  });

  // Burden and Faires, section 3.5: S0 = 1 + 1.46600 x + 0.25228 x³ (from memory).
  test('through the exponential at 0, 1, 2, 3', () => {
    expectPieces(
      [0, 1, 2, 3],
      [1, Math.E, Math.E ** 2, Math.E ** 3],
      [
        [1, 1.465998, 0, 0.252284],
        [2.718282, 2.22285, 0.756853, 1.691071],
        [7.389056, 8.80977, 5.830067, -1.943356],
      ],
    );
  });
});
