import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  analyseRows,
  covarianceTable,
  makeRandom,
  orderUnknowns,
  solveDampedRows,
  spreadOf,
} from '#core/numerics';
import type { SparseRow } from '#core/numerics';
import { analyseBySingularValues } from '../../../src/core/numerics/design-analysis.ts';
import { denseRow } from '../../../src/core/numerics/sparse-rows.ts';

interface Drawn {
  readonly rows: readonly SparseRow[];
  readonly count: number;
}

/** A chain of unknowns with some long ties, in a shuffled order; `loose` of them hang by nothing but their neighbour's double. */
function drawRows(seed: number, count: number, loose: number): Drawn {
  const random = makeRandom(seed);
  const rows: SparseRow[] = [];
  const names = Array.from({ length: count }, (_, k) => k).sort(() => random.next() - 0.5);
  const tie = (list: readonly number[]) =>
    rows.push({ columns: list.map((k) => names[k] ?? 0), values: list.map(() => random.normal() + 2) });
  for (let k = 0; k + loose < count; k += 1) {
    tie([k]);
    if (k > 0) tie([k - 1, k]);
    if (k > 2 && random.next() < 0.3) tie([k - 3, k]);
  }
  // Two unknowns that only ever appear together cannot be told apart.
  for (let k = count - loose; k + 1 < count; k += 2) tie([0, k, k + 1]);
  if (loose % 2 === 1) tie([0, 1]);
  return { rows, count };
}

const shapes = fc.record({
  seed: fc.integer(),
  count: fc.integer({ min: 1, max: 30 }),
});

function expectSame({ rows, count }: Drawn): void {
  const quick = analyseRows(rows, count, 'quick');
  const sure = analyseBySingularValues(
    rows.map((row) => denseRow(row, count)),
    count,
  );
  expect(quick.rank).toBe(sure.rank);
  expect(quick.nullSpace).toHaveLength(count - sure.rank);
  quick.redundancy.forEach((share, i) =>
    expect(Math.abs(share - (sure.residualCovariance[i]?.[i] ?? NaN))).toBeLessThan(1e-7),
  );
  const open = new Set(
    sure.nullSpace.flatMap((way) => way.flatMap((part, k) => (Math.abs(part) > 1e-6 ? [k] : []))),
  );
  const found = new Set(
    quick.nullSpace.flatMap((way) => way.flatMap((part, k) => (Math.abs(part) > 1e-6 ? [k] : []))),
  );
  expect([...found].sort()).toEqual([...open].sort());
  quick.variances.forEach((variance, k) => {
    if (!open.has(k)) expect(variance / (sure.covariance[k]?.[k] ?? NaN)).toBeCloseTo(1, 6);
  });
  for (const way of quick.nullSpace)
    for (const { columns, values } of rows)
      expect(Math.abs(columns.reduce((sum, k, p) => sum + (values[p] ?? 0) * (way[k] ?? 0), 0))).toBeLessThan(
        1e-7,
      );
}

describe('always: sparse rows say what singular values say', () => {
  test('of unknowns that are all determined', () => {
    fc.assert(
      fc.property(shapes, ({ seed, count }) => expectSame(drawRows(seed, count, 0))),
      { numRuns: 60 },
    );
  });

  test('of unknowns of which some are open', () => {
    fc.assert(
      fc.property(shapes, fc.integer({ min: 1, max: 7 }), ({ seed, count }, loose) =>
        expectSame(drawRows(seed, count + 2 + loose, loose)),
      ),
      { numRuns: 60 },
    );
  });

  test('of a hundred unknowns, too many for singular values, without being asked to be quick', () => {
    const { rows, count } = drawRows(7, 101, 6);
    expect(analyseRows(rows, count)).toEqual(analyseRows(rows, count, 'quick'));
    expect(analyseRows(rows, count).nullSpace).toHaveLength(3); // of each pair one direction is open
  });

  test('the whole inverse, and one column of it, belong to the normal equations', () => {
    fc.assert(
      fc.property(shapes, ({ seed, count }) => {
        const { rows } = drawRows(seed, count, 0);
        const analysis = analyseRows(rows, count);
        const table = covarianceTable(analysis);
        const dense = rows.map((row) => denseRow(row, count));
        const normal = table.map((_, i) =>
          table.map((__, j) => dense.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)),
        );
        table.forEach((line, i) =>
          table.forEach((_, j) => {
            const entry = normal.reduce((sum, row, k) => sum + (line[k] ?? 0) * (row[j] ?? 0), 0);
            expect(entry).toBeCloseTo(Number(i === j), 6);
          }),
        );
        const spread = spreadOf(analysis, { columns: [0], values: [2] });
        spread.forEach((value, k) => expect(value).toBeCloseTo(2 * (table[0]?.[k] ?? NaN), 9));
      }),
      { numRuns: 40 },
    );
  });
});

test('always: the order of the unknowns is an order, and does not change a step', () => {
  fc.assert(
    fc.property(shapes, ({ seed, count }) => {
      const { rows } = drawRows(seed, count, 0);
      const place = orderUnknowns(rows, count);
      expect([...place].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, k) => k));
      const right = rows.map((_, k) => Math.sin(k));
      const plain = Int32Array.from(place, (_, k) => k);
      const narrow = solveDampedRows(rows, right, { count, damping: 1e-3, place });
      solveDampedRows(rows, right, { count, damping: 1e-3, place: plain })?.forEach((value, k) =>
        expect(narrow?.[k]).toBeCloseTo(value, 9),
      );
    }),
  );
});

test('a chain keeps a narrow order however its unknowns were named', () => {
  const random = makeRandom(4);
  const count = 200;
  const names = Array.from({ length: count }, (_, k) => k).sort(() => random.next() - 0.5);
  const rows = names.slice(1).map((k, i): SparseRow => ({ columns: [names[i] ?? 0, k], values: [1, 1] }));
  const place = orderUnknowns(rows, count);
  for (const { columns } of rows) {
    const [a = 0, b = 0] = columns.map((k) => place[k] ?? 0);
    expect(Math.abs(a - b)).toBe(1);
  }
});
