import type { Bin, Model } from '../model.ts';
import type { Pattern } from './board-lp.ts';
import { makeRowTables } from './price-rows.ts';
import type { RowTables } from './price-rows.ts';

/** A job of boards as rows: kinds that are wanted first, then the stocks there is a count of. */
export interface BoardRows {
  readonly model: Model;
  /** Kinds by row. */
  readonly kinds: readonly number[];
  readonly lengths: Int32Array;
  readonly demand: Float64Array;
  readonly bins: readonly Bin[];
  /** Row of a stock's count by the stock's index; -1 where as many as wanted. */
  readonly countRows: Int32Array;
  readonly patterns: Pattern[];
  readonly known: Set<string>;
  readonly tables: RowTables;
}

export function listBoardRows(model: Model): BoardRows {
  const wanted = model.kinds.filter((kind) => kind.count > 0);
  const counted = model.bins.filter((bin) => bin.count < Infinity);
  const countRows = new Int32Array(model.bins.length).fill(-1);
  counted.forEach((bin, i) => (countRows[bin.index] = wanted.length + i));
  return {
    model,
    kinds: wanted.map((kind) => kind.index),
    lengths: Int32Array.from(wanted, (kind) => kind.length),
    demand: Float64Array.from([...wanted.map((kind) => kind.count), ...counted.map((bin) => bin.count)]),
    bins: model.bins,
    countRows,
    patterns: [],
    known: new Set(),
    tables: makeRowTables(Math.max(...model.bins.map((bin) => bin.length))),
  };
}

/** Adds a way to cut a board; false when it is known or empty. */
export function addPattern(
  board: BoardRows,
  bin: Bin,
  rows: ArrayLike<number>,
  counts: ArrayLike<number>,
): boolean {
  const pairs = Array.from(rows, (row, k) => [row, counts[k] as number] as const).sort((a, b) => a[0] - b[0]);
  const key = `${bin.index}:${pairs.map(([row, count]) => (count === 1 ? row : `${row}*${count}`)).join()}`;
  if (pairs.length === 0 || board.known.has(key)) return false;
  board.known.add(key);
  const counted = board.countRows[bin.index] as number;
  if (counted >= 0) pairs.push([counted, 1]);
  board.patterns.push({
    bin: bin.index,
    rows: Int32Array.from(pairs, ([row]) => row),
    counts: Float64Array.from(pairs, ([, count]) => count),
    cost: bin.cost,
    price: bin.cost * (1 + ((board.patterns.length * 7919) % 1009) * 1e-11),
  });
  return true;
}

/** The same for what is left: only kinds still wanted, and the patterns without what is not. */
export function shrinkBoardRows(board: BoardRows, demand: Float64Array): BoardRows {
  const all = board.kinds.length;
  const kept = board.kinds.map((_, row) => row).filter((row) => (demand[row] as number) > 0.5);
  const rowOf = new Int32Array(all).fill(-1);
  kept.forEach((row, at) => (rowOf[row] = at));
  const fewer = all - kept.length;
  const rest: BoardRows = {
    ...board,
    kinds: kept.map((row) => board.kinds[row] as number),
    lengths: Int32Array.from(kept, (row) => board.lengths[row] as number),
    demand: Float64Array.from([...kept.map((row) => demand[row] as number), ...demand.slice(all)]),
    countRows: board.countRows.map((row) => (row < 0 ? -1 : row - fewer)),
    patterns: [],
    known: new Set(),
  };
  for (const pattern of board.patterns) {
    const rows: number[] = [];
    const counts: number[] = [];
    pattern.rows.forEach((row, k) => {
      const at = row < all ? (rowOf[row] as number) : -1;
      if (at < 0) return;
      rows.push(at);
      counts.push(Math.min(pattern.counts[k] as number, rest.demand[at] as number));
    });
    addPattern(rest, board.bins[pattern.bin] as Bin, rows, counts);
  }
  return rest;
}
