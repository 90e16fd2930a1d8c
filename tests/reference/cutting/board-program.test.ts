import { describe, expect, test } from 'vitest';
import type { CuttingJob } from '#core/cutting';
import { reducedCostOf, startBoardLp, valueOf } from '../../../src/core/cutting/boards/board-lp.ts';
import type { BoardLp } from '../../../src/core/cutting/boards/board-lp.ts';
import { addPattern, listBoardRows } from '../../../src/core/cutting/boards/board-rows.ts';
import type { BoardRows } from '../../../src/core/cutting/boards/board-rows.ts';
import { priceBoardRows, settle, startCentre } from '../../../src/core/cutting/boards/generate-rows.ts';
import { makeRowTables, priceRows, readRow } from '../../../src/core/cutting/boards/price-rows.ts';
import { buildModel } from '../../../src/core/cutting/model.ts';

// The relaxed program of boards is hard numerics, so it is held against printed values from inside.

function programOf(stock: CuttingJob['stock'], lengths: readonly number[], demand: readonly number[]) {
  const parts = lengths.map((length, i) => ({ id: `w${i}`, length, count: demand[i] ?? 1 }));
  const board = listBoardRows(buildModel({ cuts: { style: 'length' }, stock, parts }));
  return { board, lp: startBoardLp(board.kinds.length, board.demand, board.patterns, 1000) };
}

/** Generates until no pattern helps; answers the value. */
function solve(board: BoardRows, lp: BoardLp): { readonly value: number; readonly bound: number } {
  const centre = startCentre(board);
  let added = 1;
  for (let round = 0; round < 500 && added > 0; round++) {
    settle(board, lp, 1000);
    added = priceBoardRows(board, lp, centre, 3).added;
  }
  return { value: valueOf(lp), bound: centre.bound };
}

const juMpWidths = [
  75, 70, 68.4, 65.5, 59.6, 53.8, 53, 51, 50.2, 32.2, 30.8, 29.8, 20.1, 16.2, 14.5, 11, 8.6, 8.2, 6.6, 5.1,
];
const juMpDemand = [38, 41, 34, 23, 18, 33, 36, 41, 35, 37, 44, 49, 37, 36, 42, 33, 47, 35, 49, 42];

describe('the relaxed program of boards', () => {
  /** JuMP documentation, tutorial "Column generation", as read at commit 21c52ac3: the relaxed optimum is 299. */
  test('the JuMP tutorial comes to 299', () => {
    const { board, lp } = programOf([{ id: 'roll', length: 100, cost: 1 }], juMpWidths, juMpDemand);
    const { value, bound } = solve(board, lp);
    expect(value).toBeCloseTo(299, 5);
    expect(bound).toBeCloseTo(299, 5);
  });

  /** Same tutorial, its test of the pricing: prices 1, 1/2, ... 1/20 give one of #1, one of #17 and three of #20. */
  test('the JuMP pricing test comes to 1 + 1/17 + 3/20', () => {
    const parts = {
      lengths: Int32Array.from(juMpWidths, (width) => Math.round(width * 10)),
      counts: juMpDemand,
      worths: juMpWidths.map((_, i) => 1 / (i + 1)),
    };
    const tables = makeRowTables(1000);
    priceRows(tables, parts);
    const row = readRow(tables, parts, 1000);
    expect(row.worth).toBeCloseTo(1.2088235, 7);
    expect(new Map(Array.from(row.rows, (kind, k) => [kind + 1, row.counts[k]]))).toEqual(
      new Map([
        [1, 1],
        [17, 1],
        [20, 3],
      ]),
    );
  });

  /** Chvatal, Linear Programming (1983), ch. 13, pp. 195-198, as read in a notebook of JuliaOpt (commit 5f9479cb). */
  test("Chvatal's paper mill goes through the printed values 700, 577.33, 517.62, 501.33, 485.17 to 452.25", () => {
    const { board, lp } = programOf(
      [{ id: 'roll', length: 100, cost: 1 }],
      [14, 31, 36, 45],
      [211, 395, 610, 97],
    );
    const [bin] = board.bins;
    const printed: readonly (readonly [pattern: readonly number[], reducedCost: number, value: number])[] = [
      [[0, 3, 0, 0], -2, 577.33333],
      [[7, 0, 0, 0], -3.6667, 517.619048],
      [[2, 0, 2, 0], -0.2857, 501.333333],
      [[0, 0, 0, 2], -0.3333, 485.166667],
      [[0, 2, 1, 0], -0.1667, 452.25],
    ];
    const add = (pattern: readonly number[]) => {
      const rows = [0, 1, 2, 3].filter((row) => (pattern[row] ?? 0) > 0);
      if (bin)
        addPattern(
          board,
          bin,
          rows,
          rows.map((row) => pattern[row] ?? 0),
        );
      return board.patterns.at(-1);
    };
    add([1, 1, 0, 1]);
    add([0, 0, 2, 0]);
    settle(board, lp, 100);
    expect(valueOf(lp)).toBeCloseTo(700, 4);
    for (const [pattern, reducedCost, value] of printed) {
      const added = add(pattern);
      expect(added && reducedCostOf(lp, added)).toBeCloseTo(reducedCost, 4);
      settle(board, lp, 100);
      expect(valueOf(lp)).toBeCloseTo(value, 4);
    }
    expect(priceBoardRows(board, lp, startCentre(board), 0).added).toBe(0);
    const cut = [...lp.amounts].filter((_, row) => (lp.basis[row] ?? -1) >= 0).sort((a, b) => a - b);
    expect(cut).toEqual([48.5, 197.5, 206.25].map((amount) => expect.closeTo(amount, 4) as number));
  });

  /** Wikipedia, "Cutting stock problem": 407160 mm from rolls of 5600; the relaxed value 72.9167 is our own enumeration. */
  test('the paper rolls of 5600 mm come to 72.9167, above 72.7 by length', () => {
    const { board, lp } = programOf(
      [{ id: 'roll', length: 5600, cost: 1 }],
      [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200],
      [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20],
    );
    expect(solve(board, lp).value).toBeCloseTo(72.916667, 5);
  });

  /** Gilmore & Gomory, Operations Research 9 (1961) 849-859, worked example, from memory: 170, prices 2, 3, 5. */
  test('three stock lengths of Gilmore and Gomory come to 170, and the parts at its prices too', () => {
    const { board, lp } = programOf(
      [
        { id: 'five', length: 5, cost: 6 },
        { id: 'six', length: 6, cost: 7 },
        { id: 'nine', length: 9, cost: 10 },
      ],
      [2, 3, 4],
      [20, 10, 20],
    );
    expect(solve(board, lp).value).toBeCloseTo(170, 5);
    // other prices do as well: what they make of the parts is the same
    const [two = 0, three = 0, four = 0] = lp.prices;
    expect(20 * two + 10 * three + 20 * four).toBeCloseTo(170, 5);
  });
});
