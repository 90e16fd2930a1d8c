import { describe, expect, test } from 'vitest';
import { descend, solveDamped } from '#core/numerics';
import { nonlinearSets } from './nist-nonlinear.ts';
import type { NonlinearSet } from './nist-nonlinear.ts';

interface Place {
  readonly sum: number;
  readonly b: readonly number[];
}

function placeAt({ model, x, y }: NonlinearSet, b: readonly number[]): Place {
  const sum = y.reduce((total, value, i) => total + (value - model(b, x[i] ?? NaN)) ** 2, 0);
  return { b, sum: Number.isFinite(sum) ? sum : Infinity };
}

/** Central differences: the iteration needs no better slope, and no model needs its own. */
function slopesAt({ model, x }: NonlinearSet, b: readonly number[]): readonly (readonly number[])[] {
  return x.map((at) =>
    b.map((value, k) => {
      const step = 1e-6 * Math.max(Math.abs(value), 1e-6);
      const moved = (by: number) =>
        model(
          b.map((other, j) => (j === k ? other + by : other)),
          at,
        );
      return (moved(step) - moved(-step)) / (2 * step);
    }),
  );
}

/** The iteration of the adjustment: damped steps by `solveDamped`, led by `descend`. */
function fit(set: NonlinearSet, start: readonly number[]): Place {
  const step = ({ b }: Place, damping: number): Place | null => {
    const right = set.y.map((value, i) => value - set.model(b, set.x[i] ?? NaN));
    const change = solveDamped(slopesAt(set, b), right, Math.max(damping, 1e-13));
    return (
      change &&
      placeAt(
        set,
        b.map((value, k) => value + (change[k] ?? 0)),
      )
    );
  };
  return descend(placeAt(set, start), step, { steps: 500, arrived: 1e-16, still: 0 });
}

/** Correct digits, at least 0 and at most the eleven that are certified. */
function digits(found: number, certified: number): number {
  const miss = Math.abs(found - certified) / Math.abs(certified);
  return Math.max(0, Math.min(11, miss > 0 ? -Math.log10(miss) : 11));
}

describe('the nonlinear sets of NIST are met by the iteration of the adjustment', () => {
  // From (1, 1) BoxBOD sends every plain Levenberg-Marquardt up a valley without end; MINPACK too (checks of the same files).
  const astray = (set: NonlinearSet, k: number) => set.name === 'BoxBOD' && k === 0;
  const cases = nonlinearSets.flatMap((set) =>
    set.starts.flatMap((start, k) => (astray(set, k) ? [] : [[set.name, k + 1, set, start] as const])),
  );
  test.each(cases)('%s from start %d', (_, __, set, start) => {
    const { b, sum } = fit(set, start);
    expect(digits(sum, set.residualSum)).toBeGreaterThanOrEqual(8);
    expect(Math.min(...set.certified.map((value, k) => digits(b[k] ?? NaN, value)))).toBeGreaterThanOrEqual(
      6,
    );
  });

  test('BoxBOD from its first start comes back all the same, with numbers and no lower than certified', () => {
    const set = nonlinearSets.find(({ name }) => name === 'BoxBOD');
    if (!set) throw new Error('set missing');
    const { b, sum } = fit(set, set.starts[0] ?? []);
    expect([...b, sum].every(Number.isFinite)).toBe(true);
    expect(sum).toBeGreaterThan(set.residualSum);
  });
});
