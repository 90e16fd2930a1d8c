import { describe, expect, test } from 'vitest';
import { chiSquareQuantile, makeRandom, normalTail } from '#core/numerics';

function take(count: number, draw: () => number): number[] {
  return Array.from({ length: count }, draw);
}

describe('seeded random numbers', () => {
  test('the same seed gives the same numbers, another seed others', () => {
    const [a, b, c] = [7, 7, 8].map((seed) => {
      const random = makeRandom(seed);
      return take(20, () => random.next());
    });
    expect(a).toEqual(b);
    expect(a).not.toEqual(c);
  });

  test('numbers lie in [0, 1) and fill ten boxes evenly by the chi-square test', () => {
    const random = makeRandom(1);
    const boxes = new Array<number>(10).fill(0);
    for (const value of take(10_000, () => random.next())) {
      expect(value >= 0 && value < 1).toBe(true);
      const at = Math.floor(value * 10);
      boxes[at] = (boxes[at] ?? 0) + 1;
    }
    const chi2 = boxes.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    expect(chi2).toBeLessThan(chiSquareQuantile(0.999, 9));
  });

  test('whole numbers reach both ends and no further', () => {
    const random = makeRandom(2);
    const seen = new Set(take(500, () => random.whole(-2, 3)));
    expect([...seen].sort((a, b) => a - b)).toEqual([-2, -1, 0, 1, 2, 3]);
  });

  test('normal numbers have the tails of the normal distribution', () => {
    const random = makeRandom(3);
    const values = take(20_000, () => random.normal());
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(Math.abs(mean)).toBeLessThan(3.3 / Math.sqrt(values.length));
    for (const z of [-1, 0.5, 2]) {
      const share = values.filter((value) => value > z).length / values.length;
      expect(Math.abs(share - normalTail(z))).toBeLessThan(0.012);
    }
  });
});
