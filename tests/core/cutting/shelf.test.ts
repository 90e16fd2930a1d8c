import { expect, test } from 'vitest';
import { addColumn, makePool } from '../../../src/core/cutting/columns.ts';
import { clearShelf } from '../../../src/core/cutting/combine.ts';
import { emptyLoad } from '../../../src/core/cutting/load.ts';
import { buildModel } from '../../../src/core/cutting/model.ts';
import { rowOf } from '../../../src/core/cutting/pricing.ts';
import type { Node } from '../../../src/core/cutting/tree.ts';
import { useColumn } from '../../../src/core/cutting/use-column.ts';

const lengths = Array.from({ length: 160 }, (_, i) => 10 + i);
const model = buildModel({
  stock: [{ id: 'board', length: 1000, width: 20, cost: 1 }],
  parts: lengths.map((length) => ({ id: `p${length}`, length, width: 20 })),
});
const bin = model.bins[0];

/** A sheet with two parts beside each other. */
function columnOf(first: number, second: number) {
  if (!bin) throw new Error('a job without stock');
  return { bin, way: 0, roots: [rowOf(model, [first, second])] };
}

test('a full shelf is cleared of what is dearest at the prices, and takes it in again', () => {
  const shelf = makePool();
  const prices = Float64Array.from(lengths, (length) => length / 1000);
  for (let a = 0; a < lengths.length; a++) {
    for (let b = a + 1; b < lengths.length; b++) addColumn(model, shelf, columnOf(a, b));
  }
  const all = shelf.columns.length;
  expect(all).toBe((160 * 159) / 2);
  clearShelf(shelf, prices);
  expect(shelf.columns.length).toBeLessThan(8000);
  expect(shelf.columns.length).toBeGreaterThan(7000);
  expect(shelf.known.size).toBe(shelf.columns.length);
  // the longest two parts are worth most of a sheet, the shortest two least
  expect(addColumn(model, shelf, columnOf(158, 159))).toBe(false);
  expect(addColumn(model, shelf, columnOf(0, 1))).toBe(true);
  const before = shelf.columns.length;
  clearShelf(shelf, prices);
  expect(shelf.columns.length).toBe(before);
});

test('a pattern that was used keeps nothing of the sheet made from it', () => {
  const pool = makePool();
  addColumn(model, pool, columnOf(3, 4));
  const [column] = pool.columns;
  if (!column) throw new Error('no column');
  const load = emptyLoad(model);
  expect(useColumn(model, load, column)).toBe(1);
  expect(load.sheets).toHaveLength(1);
  const copies = (node: Node): number =>
    Number(node.copy !== null) + node.kids.reduce((sum, kid) => sum + copies(kid), 0);
  expect(column.roots.reduce((sum, root) => sum + copies(root), 0)).toBe(0);
});
