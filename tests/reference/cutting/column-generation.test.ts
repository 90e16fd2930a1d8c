import { describe, expect, test } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob, CuttingPlan } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();

function planOf(job: CuttingJob): CuttingPlan {
  const plan = solveCutting(job, { solveLp, clock: () => performance.now(), seconds: 20 });
  expect(checkPlan(job, plan)).toEqual([]);
  return plan;
}

function rows(lengths: readonly number[], counts: readonly number[]): CuttingJob['parts'] {
  return lengths.map((length, i) => ({ id: `w${i + 1}`, length, count: counts[i] ?? 1 }));
}

describe('worked examples of column generation', () => {
  /** JuMP documentation, tutorial "Column generation" (cutting_stock_column_generation.jl): bound 299, plan 299. */
  test('the JuMP tutorial: 299 rolls, and no fewer', () => {
    const widths = [
      75, 70, 68.4, 65.5, 59.6, 53.8, 53, 51, 50.2, 32.2, 30.8, 29.8, 20.1, 16.2, 14.5, 11, 8.6, 8.2, 6.6,
      5.1,
    ];
    const demand = [38, 41, 34, 23, 18, 33, 36, 41, 35, 37, 44, 49, 37, 36, 42, 33, 47, 35, 49, 42];
    const plan = planOf({
      cuts: { style: 'length' },
      stock: [{ id: 'roll', length: 100, cost: 1 }],
      parts: rows(widths, demand),
    });
    expect(plan).toMatchObject({ cost: 299, bound: 299, proven: true });
  });

  /** Chvatal, Linear Programming (1983), ch. 13, pp. 195-198, as read in a notebook of JuliaOpt: LP 452.25, 453 rolls. */
  test("Chvatal's paper mill: 453 rolls, bound 452.25 rounded up", () => {
    const plan = planOf({
      cuts: { style: 'length' },
      stock: [{ id: 'roll', length: 100, cost: 1 }],
      parts: rows([14, 31, 36, 45], [211, 395, 610, 97]),
    });
    expect(plan).toMatchObject({ cost: 453, bound: 453, proven: true });
  });

  /** Wikipedia, "Cutting stock problem": rolls of 5600 mm, optimum 73 with waste 0.401 %. */
  test('the paper rolls of 5600 mm: 73 rolls, waste 0.401 %', () => {
    const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
    const demand = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
    const plan = planOf({
      cuts: { style: 'length' },
      stock: [{ id: 'roll', length: 5600, cost: 1 }],
      parts: rows(widths, demand),
    });
    expect(plan).toMatchObject({ cost: 73, bound: 73, proven: true });
    const used = widths.reduce((sum, width, i) => sum + width * (demand[i] ?? 0), 0);
    expect(100 * (1 - used / (73 * 5600))).toBeCloseTo(0.401, 3);
  });

  /** J. Kantor, CBE 40455 notebook 05.07: bars of 15 m and 10 m, three each; the optimum uses 60 m without waste. */
  test("Kantor's bars: two of 15 m and three of 10 m are used up", () => {
    const plan = planOf({
      cuts: { style: 'length' },
      stock: [
        { id: 'long', length: 15000, cost: 15, count: 3 },
        { id: 'short', length: 10000, cost: 10, count: 3 },
      ],
      parts: rows([7000, 6000, 4000, 3000], [3, 2, 6, 1]),
    });
    expect(plan).toMatchObject({ cost: 60, bound: 60, proven: true });
  });

  /** Gilmore & Gomory, Operations Research 9 (1961), the worked example, from memory: 170. */
  test('three stock lengths of Gilmore and Gomory: 170', () => {
    const plan = planOf({
      cuts: { style: 'length' },
      stock: [
        { id: 'five', length: 5, cost: 6 },
        { id: 'six', length: 6, cost: 7 },
        { id: 'nine', length: 9, cost: 10 },
      ],
      parts: rows([2, 3, 4], [20, 10, 20]),
    });
    expect(plan).toMatchObject({ cost: 170, bound: 170, proven: true });
  });

  /**
   * stackoverflow.com/questions/15685665: bars of 12 and 25 in the rack, 5 and 10 wanted, a leftover worth its length to
   * the power 1.2. Of the three plans the one with leftovers 2 and 20 is worth 38.71, the others 36.11 and 35.57 (our own
   * enumeration). The bars are owned and cost nothing, so that the leftovers alone decide.
   */
  test('of bars already owned, 10 comes out of the 12 and 5 out of the 25: the leftover of 20 is worth more', () => {
    const plan = planOf({
      cuts: { style: 'length' },
      keepLeftover: { minLength: 1 },
      stock: [
        { id: 'twelve', length: 12, cost: 0, count: 1 },
        { id: 'twenty-five', length: 25, cost: 0, count: 1 },
      ],
      parts: rows([5, 10], [1, 1]),
    });
    const lengths = plan.layouts.flatMap(({ leftovers }) => leftovers.map(({ length }) => length));
    const worth = lengths.reduce((total, length) => total + length ** 1.2, 0);
    expect(lengths.sort((a, b) => a - b)).toEqual([2, 20]);
    expect(worth).toBeCloseTo(38.7087, 4);
  });
});
