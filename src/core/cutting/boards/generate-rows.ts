import { dualBound } from '../master.ts';
import type { Bin } from '../model.ts';
import { boughtOf, enter, reducedCostOf, surplusOf } from './board-lp.ts';
import type { BoardLp, Pattern } from './board-lp.ts';
import { addPattern } from './board-rows.ts';
import type { BoardRows } from './board-rows.ts';
import { priceRows, readRow } from './price-rows.ts';

/** A reduced cost above it gains nothing. */
const gain = -1e-9;

/** Simplex steps with the patterns known until none helps, or so many were made. */
export function settle(board: BoardRows, lp: BoardLp, mostSteps: number): void {
  for (let step = 0; step < mostSteps; step++) {
    const entry = findEntry(board, lp);
    if (entry === null || !enter(lp, entry)) return;
  }
}

/** The same with all patterns of the program. */
export function settlePatterns(lp: BoardLp, mostSteps: number): void {
  for (let step = 0; step < mostSteps; step++) {
    const entry = findEntry(lp, lp);
    if (entry === null || !enter(lp, entry)) return;
  }
}

function findEntry({ patterns }: { readonly patterns: readonly Pattern[] }, lp: BoardLp): number | null {
  let best: number | null = null;
  let least = gain;
  for (let p = 0; p < patterns.length; p++) {
    const reduced = reducedCostOf(lp, patterns[p] as Pattern);
    if (reduced < least && !lp.inBasis.has(p)) [best, least] = [p, reduced];
  }
  for (let row = 0; row < lp.rows; row++) {
    const price = lp.prices[row] as number;
    const reduced = row < lp.kinds ? price : -price;
    if (reduced >= least) continue;
    [best, least] = [row < lp.kinds ? surplusOf(row) : boughtOf(row), reduced];
  }
  return best;
}

/** What one exact pricing says: a bound for the cost of the rest, and whether patterns came of it. */
export interface RowPricing {
  readonly bound: number;
  readonly added: number;
}

/** Prices that gave the best bound so far: pricing between them and the program's own needs far fewer rounds. */
export interface Centre {
  readonly prices: Float64Array;
  bound: number;
}

/** Prices by length, which no board can beat. */
export function startCentre({ bins, lengths }: BoardRows): Centre {
  const rate = Math.min(...bins.map((bin) => bin.cost / bin.length));
  return { prices: Float64Array.from(lengths, (length) => length * rate), bound: 0 };
}

/**
 * Prices all boards exactly, first between the centre and the prices of the program (Wentges 1997, from memory), then at
 * the latter, and adds what helps and a few rows unlike the best.
 */
export function priceBoardRows(
  board: BoardRows,
  lp: BoardLp,
  centre: Centre,
  variations: number,
): RowPricing {
  const own = Float64Array.from({ length: lp.kinds }, (_, i) => Math.max(0, lp.prices[i] as number));
  const between = own.map((price, i) => leaning * (centre.prices[i] as number) + (1 - leaning) * price);
  const first = priceAt(board, lp, { prices: between, centre, variations });
  return first.added > 0 ? first : priceAt(board, lp, { prices: own, centre, variations });
}

/** How far the prices lean to the centre. */
const leaning = 0.7;

function priceAt(
  board: BoardRows,
  lp: BoardLp,
  { prices, centre, variations }: { prices: Float64Array; centre: Centre; variations: number },
): RowPricing {
  const worths = prices.slice();
  const most = new Float64Array(board.bins.length);
  let added = priceOnce(board, lp, worths, most);
  const bound = boundAt(board, lp, prices, most);
  if (bound > centre.bound) {
    centre.prices.set(prices);
    centre.bound = bound;
  }
  for (let i = 0; i < variations && added > 0; i++) added += priceOnce(board, lp, worths, null);
  return { bound, added };
}

/** Adds the best row of each board; what it uses is worth less afterwards. */
function priceOnce(board: BoardRows, lp: BoardLp, worths: Float64Array, most: Float64Array | null): number {
  const parts = { lengths: board.lengths, counts: lp.demand, worths };
  priceRows(board.tables, parts);
  let added = 0;
  const used = new Set<number>();
  for (const bin of board.bins) {
    const row = readRow(board.tables, parts, bin.length);
    if (most) most[bin.index] = row.worth;
    if (bin.hasKeepOut || row.rows.length === 0) continue;
    if (reducedCostOf(lp, patternOf(board, bin, row)) < gain && addPattern(board, bin, row.rows, row.counts))
      added++;
    row.rows.forEach((kind) => used.add(kind));
  }
  for (const kind of used) worths[kind] = (worths[kind] as number) * 0.7;
  return added;
}

function patternOf(
  board: BoardRows,
  bin: Bin,
  row: { readonly rows: Int32Array; readonly counts: Float64Array },
): Pattern {
  const counted = board.countRows[bin.index] as number;
  if (counted < 0) return { bin: bin.index, cost: bin.cost, price: bin.cost, ...row };
  return {
    bin: bin.index,
    cost: bin.cost,
    price: bin.cost,
    rows: Int32Array.from([...row.rows, counted]),
    counts: Float64Array.from([...row.counts, 1]),
  };
}

/** What the rest must cost at least by these prices. */
function boundAt(
  { model, kinds, countRows }: BoardRows,
  lp: BoardLp,
  worths: Float64Array,
  most: Float64Array,
): number {
  const prices = new Float64Array(model.kinds.length);
  const demand = new Float64Array(model.kinds.length);
  kinds.forEach((kind, row) => {
    prices[kind] = worths[row] as number;
    demand[kind] = lp.demand[row] as number;
  });
  const bins = model.bins.map((bin) => {
    const row = countRows[bin.index] as number;
    return row < 0 ? bin : { ...bin, count: lp.demand[row] as number };
  });
  return dualBound({ ...model, bins }, demand, prices, most);
}
