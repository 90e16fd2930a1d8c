import { describe, expect, test } from 'vitest';
import {
  chiSquareQuantile,
  chiSquareTail,
  findableShift,
  normalQuantile,
  normalTail,
  suspectLimit,
} from '#core/numerics';

describe('quantiles agree with printed tables', () => {
  // Upper-tail chi-square table as printed in textbooks (appendix D of a probability textbook; an examination table).
  const printed: readonly (readonly [dof: number, tail: number, x: number])[] = [
    [1, 0.1, 2.70554],
    [1, 0.05, 3.84146],
    [1, 0.025, 5.02389],
    [1, 0.01, 6.6349],
    [1, 0.005, 7.87944],
    [2, 0.1, 4.60517],
    [2, 0.05, 5.99146],
    [2, 0.005, 10.59663],
    [3, 0.1, 6.25139],
    [3, 0.05, 7.81473],
    [3, 0.01, 11.34487],
    [3, 0.005, 12.83816],
    [9, 0.95, 3.32511],
    [9, 0.975, 2.70039],
    [10, 0.95, 3.9403],
    [10, 0.975, 3.24697],
    [10, 0.05, 18.30704],
    [10, 0.025, 20.48318],
    [15, 0.95, 7.26094],
    [15, 0.975, 6.26214],
  ];
  test.each(printed)('chi-square with %d degrees of freedom, upper tail %d', (dof, tail, x) => {
    expect(Math.abs(chiSquareQuantile(1 - tail, dof) - x)).toBeLessThan(6e-6);
    expect(Math.abs(chiSquareTail(x, dof) - tail)).toBeLessThan(2e-6);
  });

  // Baarda 1968: two-sided 0.1 % point 3.29, shift 4.13 at 80 % power, lambda zero 17.07.
  test('Baarda’s constants follow from the normal distribution', () => {
    expect(Math.abs(normalQuantile(0.9995) - suspectLimit)).toBeLessThan(5e-5);
    expect(Math.abs(normalQuantile(0.9995) + normalQuantile(0.8) - findableShift)).toBeLessThan(5e-5);
    expect(findableShift ** 2).toBeCloseTo(17.07, 2);
  });

  test('the normal distribution is symmetric and its quantile undoes its tail', () => {
    for (const z of [-6, -3.29, -1, -0.1, 0, 0.3, 1.959963984540054, 5]) {
      expect(normalTail(z) + normalTail(-z)).toBeCloseTo(1, 14);
      if (z < 0) expect(normalQuantile(normalTail(-z))).toBeCloseTo(z, 9);
    }
    expect(normalTail(1.959963984540054)).toBeCloseTo(0.025, 12);
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
  });
});
