import { describe, expect, test } from 'vitest';
import { solveLeastSquares } from '#core/numerics';
import { standardSets } from './nist-linear.ts';
import type { StandardSet } from './nist-linear.ts';

/** Correct significant digits, as NIST counts them (log relative error); absolute where the certified value is 0. */
function digits(found: number, certified: number): number {
  const error = Math.abs(found - certified) / (certified === 0 ? 1 : Math.abs(certified));
  return error === 0 ? 15 : Math.min(15, -Math.log10(error));
}

function designOf(set: StandardSet): number[][] {
  return set.x.map((x) => {
    if (typeof x !== 'number') return [1, ...x];
    return (set.powers ?? []).map((power) => x ** power);
  });
}

describe('the certified values of NIST are met', () => {
  test.each(standardSets.map((set) => [set.name, set] as const))('%s', (_, set) => {
    const solved = solveLeastSquares(designOf(set), set.y);
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const { coefficients, deviations, residualSum, residualDeviation, dof } = solved.value;
    const scale = set.name === 'Wampler1' || set.name === 'Wampler2' ? 1e-6 : 0;
    const atLeast = 7;
    set.coefficients.forEach((b, k) => expect(digits(coefficients[k] ?? NaN, b)).toBeGreaterThan(atLeast));
    expect(dof).toBe(set.dof);
    if (scale > 0) {
      // Exact fits: the certified residual sum is 0, and what rounding leaves of sums of 20^5 is far below 1e-6.
      expect(residualSum).toBeLessThan(scale);
      return;
    }
    set.deviations.forEach((sd, k) => expect(digits(deviations?.[k] ?? NaN, sd)).toBeGreaterThan(atLeast));
    expect(digits(residualSum, set.residualSum)).toBeGreaterThan(atLeast);
    expect(digits(residualDeviation ?? NaN, set.residualDeviation)).toBeGreaterThan(atLeast);
  });
});
