import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyseDesign, solveDamped, solveLeastSquares } from '#core/numerics';

const number = fc.integer({ min: -1000, max: 1000 });
const design = fc.array(fc.tuple(number, number, number), { minLength: 5, maxLength: 12 });

function solve(rows: readonly (readonly number[])[], right: readonly number[], names?: readonly string[]) {
  return solveLeastSquares(rows, right, names ? { names } : {});
}

describe('least squares', () => {
  test('a straight line through three points out of line', () => {
    // y = 1, 2, 2 at x = 0, 1, 2: worked by hand, slope 1/2, start 7/6, residual sum 1/6.
    const solved = solve(
      [
        [1, 0],
        [1, 1],
        [1, 2],
      ],
      [1, 2, 2],
    );
    if (!solved.ok) throw new Error('not solved');
    expect(solved.value.coefficients[0]).toBeCloseTo(7 / 6, 14);
    expect(solved.value.coefficients[1]).toBeCloseTo(1 / 2, 14);
    expect(solved.value.residualSum).toBeCloseTo(1 / 6, 14);
    expect(solved.value.dof).toBe(1);
    expect(solved.value.deviations?.[1]).toBeCloseTo(Math.sqrt(1 / 12), 14);
  });

  test('columns that depend on each other are refused by name', () => {
    const rows = [1, 2, 3, 4].map((k) => [1, k, k * k, 2 * k + 1]);
    const solved = solve(rows, [1, 2, 3, 4], ['start', 'slope', 'bend', 'twice']);
    expect(solved.ok).toBe(false);
    expect(solved.problems[0]).toMatchObject({ code: 'columns-dependent', severity: 'stop' });
    expect(solved.problems[0]?.message).toContain('start, slope, twice');
  });

  test('too few equations, a column of nothing and values that are none are refused', () => {
    expect(solve([[1, 2]], [1]).problems[0]?.message).toBe('1 equations cannot fix 2 unknowns.');
    expect(solve([[0], [0]], [1, 2]).problems[0]?.code).toBe('columns-dependent');
    expect(solve([[1], [NaN]], [1, 2]).ok).toBe(false);
    expect(solve([], []).ok).toBe(false);
    expect(() => solve([[1], [2]], [1])).toThrow('does not match');
  });

  test('always: residuals stand square to every column', () => {
    fc.assert(
      fc.property(design, fc.array(number, { minLength: 12, maxLength: 12 }), (rows, values) => {
        const solved = solve(rows, values.slice(0, rows.length));
        fc.pre(solved.ok);
        if (!solved.ok) return;
        for (const k of [0, 1, 2] as const) {
          const dot = rows.reduce((sum, row, i) => sum + row[k] * (solved.value.residuals[i] ?? NaN), 0);
          expect(Math.abs(dot)).toBeLessThan(1e-5);
        }
      }),
    );
  });

  test('always: the order of the equations does not matter', () => {
    fc.assert(
      fc.property(design, fc.array(number, { minLength: 12, maxLength: 12 }), (rows, values) => {
        const right = values.slice(0, rows.length);
        const [a, b] = [solve(rows, right), solve([...rows].reverse(), [...right].reverse())];
        fc.pre(a.ok && b.ok);
        if (!a.ok || !b.ok) return;
        const size = Math.max(1, ...a.value.coefficients.map(Math.abs));
        a.value.coefficients.forEach((value, k) =>
          expect(Math.abs(value - (b.value.coefficients[k] ?? NaN)) / size).toBeLessThan(1e-9),
        );
      }),
    );
  });
});

describe('what a design can tell', () => {
  test('a missing equation leaves a direction free, and the rest known', () => {
    // Only x + y and z are seen: x - y stays free.
    const analysis = analyseDesign(
      [
        [1, 1, 0],
        [0, 0, 2],
      ],
      3,
    );
    expect(analysis.rank).toBe(2);
    expect(analysis.nullSpace).toHaveLength(1);
    const [free = []] = analysis.nullSpace;
    expect((free[0] ?? NaN) + (free[1] ?? NaN)).toBeCloseTo(0, 12);
    expect(free[2]).toBeCloseTo(0, 12);
    expect(analysis.covariance[2]?.[2]).toBeCloseTo(1 / 4, 12);
  });

  test('always: redundancy sums to equations less rank, and the covariance inverts the normal matrix', () => {
    fc.assert(
      fc.property(design, (rows) => {
        const { rank, covariance, residualCovariance } = analyseDesign(rows, 3);
        const sum = residualCovariance.reduce((total, row, i) => total + (row[i] ?? NaN), 0);
        expect(sum).toBeCloseTo(rows.length - rank, 8);
        if (rank < 3) return;
        const normal = [0, 1, 2].map((i) =>
          [0, 1, 2].map((j) => rows.reduce((s, row) => s + (row[i] ?? 0) * (row[j] ?? 0), 0)),
        );
        const size = Math.max(...normal.flat().map(Math.abs)) * Math.max(...covariance.flat().map(Math.abs));
        fc.pre(size < 1e6);
        for (const i of [0, 1, 2])
          for (const j of [0, 1, 2]) {
            const entry = [0, 1, 2].reduce(
              (s, k) => s + (normal[i]?.[k] ?? 0) * (covariance[k]?.[j] ?? 0),
              0,
            );
            expect(Math.abs(entry - (i === j ? 1 : 0))).toBeLessThan(1e-8);
          }
      }),
    );
  });

  test('nothing observed leaves everything free', () => {
    expect(analyseDesign([], 2)).toMatchObject({ rank: 0 });
    expect(analyseDesign([], 2).nullSpace).toHaveLength(2);
    expect(analyseDesign([[]], 0).rank).toBe(0);
  });
});

describe('a damped step', () => {
  test('always: without damping it is the least-squares solution, with more damping it is shorter', () => {
    fc.assert(
      fc.property(design, fc.array(number, { minLength: 12, maxLength: 12 }), (rows, values) => {
        const right = values.slice(0, rows.length);
        const solved = solve(rows, right);
        const { rank, covariance } = analyseDesign(rows, 3);
        fc.pre(solved.ok && rank === 3 && Math.max(...covariance.flat()) < 1);
        if (!solved.ok) return;
        const size = Math.max(1e-3, ...solved.value.coefficients.map(Math.abs));
        const plain = solveDamped(rows, right, 0);
        solved.value.coefficients.forEach((value, k) =>
          expect(Math.abs(value - (plain?.[k] ?? NaN)) / size).toBeLessThan(1e-5),
        );
        const lengths = [0.01, 1, 100].map((damping) => {
          const step = solveDamped(rows, right, damping) ?? [];
          const scales = [0, 1, 2].map((k) => Math.hypot(...rows.map((row) => row[k] ?? 0)));
          return Math.hypot(...step.map((x, k) => x * (scales[k] ?? 1)));
        });
        expect(lengths[1]).toBeLessThanOrEqual((lengths[0] ?? NaN) + 1e-9);
        expect(lengths[2]).toBeLessThanOrEqual((lengths[1] ?? NaN) + 1e-9);
      }),
    );
  });

  test('nothing seen gives no step', () => {
    expect(solveDamped([], [], 1)).toBeNull();
    expect(solveDamped([[0, 0]], [1], 1)).toBeNull();
  });
});
