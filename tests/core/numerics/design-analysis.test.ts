import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyseDesign, makeRandom } from '#core/numerics';

type Table = readonly (readonly number[])[];
const multiply = (a: Table, b: Table): Table =>
  a.map((row) =>
    (b[0] ?? []).map((_, j) => row.reduce((sum, value, k) => sum + value * (b[k]?.[j] ?? 0), 0)),
  );
const turn = (a: Table): Table => (a[0] ?? []).map((_, k) => a.map((row) => row[k] ?? 0));
const farthest = (a: Table, b: Table) =>
  Math.max(...a.flatMap((row, i) => row.map((value, j) => Math.abs(value - (b[i]?.[j] ?? NaN)))));
const one = (size: number): Table =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => Number(i === j)));
const nothing = (rows: number, columns: number): Table =>
  Array.from({ length: rows }, () => new Array<number>(columns).fill(0));

function drawDesign(seed: number, rows: number, columns: number): Table {
  const random = makeRandom(seed);
  return Array.from({ length: rows }, () => Array.from({ length: columns }, () => random.normal()));
}
const trace = (a: Table) => a.reduce((sum, row, i) => sum + (row[i] ?? NaN), 0);

describe('always: the analysis of a design', () => {
  const sizes = fc.record({
    seed: fc.integer(),
    columns: fc.integer({ min: 1, max: 7 }),
    more: fc.integer({ min: 0, max: 8 }),
  });

  test('gives the inverse of the normal equations, and residuals that no unknown can explain', () => {
    fc.assert(
      fc.property(sizes, fc.constantFrom(1, 1e-3, 1e4), ({ seed, columns, more }, unit) => {
        const rows = columns + 1 + more;
        // The last unknown in another unit: scaling must not matter.
        const design = drawDesign(seed, rows, columns).map((row) =>
          row.map((v, k) => (k === columns - 1 ? v * unit : v)),
        );
        const { rank, covariance, residualCovariance: q, nullSpace } = analyseDesign(design, columns);
        fc.pre(rank === columns && Math.max(...covariance.flat().map(Math.abs)) < 1e9); // drawn nearly singular: rare
        expect(nullSpace).toEqual([]);
        expect(farthest(multiply(multiply(turn(design), design), covariance), one(columns))).toBeLessThan(
          1e-5,
        );
        expect(farthest(multiply(q, q), q)).toBeLessThan(1e-8);
        expect(farthest(multiply(q, design), nothing(rows, columns))).toBeLessThan(1e-6 * Math.max(1, unit));
        expect(trace(q)).toBeCloseTo(rows - columns, 8);
      }),
    );
  });

  test('of which two columns are one another’s double finds the direction left open', () => {
    fc.assert(
      fc.property(sizes, ({ seed, columns, more }) => {
        const design = drawDesign(seed, columns + 2 + more, columns).map((row) => [
          ...row,
          2 * (row[0] ?? 0),
        ]);
        const { rank, nullSpace, residualCovariance } = analyseDesign(design, columns + 1);
        expect(rank).toBe(columns);
        expect(nullSpace.length).toBe(1);
        const moved = multiply(design, turn(nullSpace));
        expect(farthest(moved, nothing(design.length, 1))).toBeLessThan(1e-9);
        expect(trace(residualCovariance)).toBeCloseTo(design.length - columns, 8);
      }),
    );
  });
});

// Both ways must agree where they meet: a column that almost repeats another is left to singular values.
test('an unknown hardly told from another has the variance that its own share gives', () => {
  for (const share of [1e-1, 1e-2, 2e-3, 5e-4, 1e-4, 1e-5]) {
    const design = [
      [1, 1, 0],
      [1, 1 + share, 0],
      [0, 0, 1],
      [0, 0, 1],
    ];
    const { covariance, rank } = analyseDesign(design, 3);
    expect(rank).toBe(3);
    // The difference of the first two rows tells the second unknown alone: share x = d, with variance 2.
    expect((covariance[1]?.[1] ?? NaN) / (2 / share ** 2)).toBeCloseTo(1, 5);
    expect(covariance[2]?.[2]).toBeCloseTo(0.5, 12);
  }
});
