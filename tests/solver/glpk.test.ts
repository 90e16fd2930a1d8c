import { describe, expect, test, vi } from 'vitest';
import type { LinearProgram } from '#core/numerics';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();

/** Dorfman, Samuelson & Solow style textbook program, worked by hand: x = 4, y = 2, value 26, prices 2 and 3. */
const small: LinearProgram = {
  sense: 'maximise',
  objective: [
    ['chairs', 5],
    ['tables', 3],
  ],
  rows: [
    {
      name: 'wood',
      terms: [
        ['chairs', 1],
        ['tables', 1],
      ],
      upper: 6,
    },
    { name: 'hours', terms: [['chairs', 1]], upper: 4 },
  ],
};

describe('linear programs', () => {
  test('a small program with its dual prices', () => {
    const solution = solveLp(small);
    expect(solution).toMatchObject({ status: 'optimal', value: 26, variables: { chairs: 4, tables: 2 } });
    expect(solution.duals['wood']).toBeCloseTo(3, 9);
    expect(solution.duals['hours']).toBeCloseTo(2, 9);
  });

  test('infeasible and unbounded programs are told apart', () => {
    const rows = [{ name: 'r', terms: [['x', 1]] as const, upper: -1 }];
    expect(solveLp({ sense: 'minimise', objective: [['x', 1]], rows }).status).toBe('infeasible');
    expect(
      solveLp({
        sense: 'maximise',
        objective: [['x', 1]],
        rows: [{ name: 'r', terms: [['x', 1]], lower: 1 }],
      }).status,
    ).toBe('unbounded');
  });

  test('an upper bound keeps the lower bound at nought', () => {
    const solution = solveLp({
      sense: 'minimise',
      objective: [['x', 1]],
      rows: [
        {
          name: 'r',
          terms: [
            ['x', 1],
            ['y', 1],
          ],
          lower: 1,
        },
      ],
      bounds: [
        { variable: 'x', upper: 5 },
        { variable: 'y', upper: 3 },
      ],
    });
    expect(solution).toMatchObject({ status: 'optimal', value: 0, variables: { x: 0 } });
  });

  test('whole numbers: a knapsack worked by hand', () => {
    const solution = solveLp({
      sense: 'maximise',
      objective: [
        ['a', 8],
        ['b', 11],
        ['c', 6],
      ],
      rows: [
        {
          name: 'room',
          terms: [
            ['a', 5],
            ['b', 7],
            ['c', 4],
          ],
          upper: 13,
        },
      ],
      bounds: ['a', 'b', 'c'].map((variable) => ({ variable, upper: 1 })),
      integers: ['a', 'b', 'c'],
    });
    expect(solution).toMatchObject({ status: 'optimal', value: 19, variables: { a: 1, b: 1, c: 0 } });
  });

  test('a variable named twice in a row counts twice, and odd names are safe', () => {
    const name = '__proto__ '.repeat(40);
    const solution = solveLp({
      sense: 'maximise',
      objective: [[name, 1]],
      rows: [
        {
          name: 'r',
          terms: [
            [name, 1],
            [name, 1],
          ],
          upper: 10,
        },
      ],
    });
    expect(solution.variables[name]).toBeCloseTo(5, 9);
  });

  test('a coefficient that is no number is refused with its place', () => {
    const rows = [{ name: 'wood', terms: [['x', NaN]] as const, upper: 1 }];
    expect(() => solveLp({ sense: 'minimise', objective: [['x', 1]], rows })).toThrow(
      'coefficient of x in wood is NaN',
    );
  });

  test('nothing is written to the console', () => {
    const log = vi.spyOn(console, 'log');
    const error = vi.spyOn(console, 'error');
    solveLp({ ...small, integers: ['chairs'] });
    expect(log).not.toHaveBeenCalled();
    expect(error).not.toHaveBeenCalled();
    vi.restoreAllMocks();
  });
});
