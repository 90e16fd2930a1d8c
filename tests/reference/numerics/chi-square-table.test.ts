import { describe, expect, test } from 'vitest';
import { chiSquareQuantile, findableShift, normalQuantile, suspectLimit } from '#core/numerics';

// Computed with another library (SciPy) for degrees of freedom 1 to 15; it agrees with the printed textbook tables (appendix D
// of a probability textbook, an examination table) in all their digits.
const quantiles: Readonly<Record<string, readonly number[]>> = {
  '0.05': [
    0.00393, 0.10259, 0.35185, 0.71072, 1.14548, 1.63538, 2.16735, 2.73264, 3.32511, 3.9403, 4.57481, 5.22603,
    5.89186, 6.57063, 7.26094,
  ],
  '0.025': [
    0.00098, 0.05064, 0.2158, 0.48442, 0.83121, 1.23734, 1.68987, 2.17973, 2.70039, 3.24697, 3.81575, 4.40379,
    5.00875, 5.62873, 6.26214,
  ],
  '0.95': [
    3.84146, 5.99146, 7.81473, 9.48773, 11.0705, 12.59159, 14.06714, 15.50731, 16.91898, 18.30704, 19.67514,
    21.02607, 22.36203, 23.68479, 24.99579,
  ],
  '0.975': [
    5.02389, 7.37776, 9.3484, 11.14329, 12.8325, 14.44938, 16.01276, 17.53455, 19.02277, 20.48318, 21.92005,
    23.33666, 24.7356, 26.11895, 27.48839,
  ],
  '0.99': [
    6.6349, 9.21034, 11.34487, 13.2767, 15.08627, 16.81189, 18.47531, 20.09024, 21.66599, 23.20925, 24.72497,
    26.21697, 27.68825, 29.14124, 30.57791,
  ],
};

describe('chi-square agrees with the tables in all their digits', () => {
  test.each(Object.entries(quantiles))('at %s', (share, values) => {
    values.forEach((value, k) =>
      expect(Math.abs(chiSquareQuantile(Number(share), k + 1) - value), `${k + 1}`).toBeLessThan(6e-6),
    );
  });
});

// Baarda 1968: a slip in 1000 readings by chance, four of five slips found; the digits computed with another library.
describe('the constants of Baarda', () => {
  test.each([
    [0.9995, 3.2905267314919255],
    [0.8, 0.8416212335729143],
    [0.975, 1.959963984540054],
  ])('the normal quantile at %d is %d', (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 9);
  });
  test('shift 4.13214796506484, its square 17.074646805189502', () => {
    const shift = normalQuantile(0.9995) + normalQuantile(0.8);
    expect(shift).toBeCloseTo(4.13214796506484, 9);
    expect(shift ** 2).toBeCloseTo(17.074646805189502, 8);
    expect(Math.abs(findableShift - shift)).toBeLessThan(0.0005);
    expect(Math.abs(suspectLimit - 3.2905267314919255)).toBeLessThan(0.001);
  });
});
