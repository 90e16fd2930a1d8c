import { roundBound } from './bounds.ts';
import { startBoardLp, valueOf } from './boards/board-lp.ts';
import type { BoardLp, Pattern } from './boards/board-lp.ts';
import { addPattern, listBoardRows } from './boards/board-rows.ts';
import type { BoardRows } from './boards/board-rows.ts';
import { settle } from './boards/generate-rows.ts';
import { makePool } from './columns.ts';
import type { Pool } from './columns.ts';
import { liftBin, liftedWork, valueLifted } from './lifted-plates.ts';
import type { LiftedBin } from './lifted-plates.ts';
import { dualBound, penaltyOf } from './master.ts';
import { mergeKinds } from './merge-kinds.ts';
import { buildModel } from './model.ts';
import type { Bin, Kind, Model } from './model.ts';
import type { CuttingJob } from './types.ts';

/**
 * A program for the bound alone: its patterns are those of coarse grids, on which all that can be cut still can, so
 * they need not be patterns of the job. It is run on ever finer grids.
 */
export interface Tightening {
  readonly model: Model;
  readonly pool: Pool;
  /** Cells along the longest side of the stock, grid after grid. */
  readonly grids: readonly number[];
  /** Sums that one pricing may make at most. */
  readonly work: number;
  level: Level | null;
  levels: number;
  /** Best bound so far, not yet a total that sheets can come to. */
  bound: number;
  /** The prices that gave it. */
  centre: Float64Array | null;
  rounds: number;
  done: boolean;
}

interface Level {
  readonly lifted: readonly LiftedBin[];
  readonly program: BoardRows;
  readonly lp: BoardLp;
}

/** Starts on a job with what patterns are known. */
export function startTightening(
  model: Model,
  pool: Pool,
  work: number,
  grids: readonly number[] = gridsFor(model),
): Tightening {
  const wanted = model.kinds.filter((kind) => kind.count > 0).length;
  const entries = wanted * longestOf(model) * model.bins.length;
  const done = wanted === 0 || wanted > mostRows || entries > mostEntries;
  return { model, pool, grids, work, level: null, levels: 0, bound: 0, centre: null, rounds: 0, done };
}

/** Stock of few units is taken in these at once. */
function gridsFor(model: Model): readonly number[] {
  const longest = longestOf(model);
  return longest <= fewUnits ? [longest] : [100, 200, 300, 450, 650];
}

const fewUnits = 130;

/** With more kinds one solution of the program takes too long to wait for. */
const mostRows = 400;

/** Kinds times places in a row times sizes of stock: beyond it laying a grid takes too long to wait for. */
const mostEntries = 2e7;

function longestOf({ bins }: Model): number {
  return Math.max(...bins.map((bin) => Math.max(bin.length, bin.width)));
}

/** One round: a grid is laid, or one is priced. Done when no grid is left or none could lift the bound `known`. */
export function tightenOnce(tightening: Tightening, known: number): void {
  if (!tightening.level) {
    tightening.level = layGrid(tightening, known);
    if (!tightening.level) tightening.done = true;
    return;
  }
  tightening.rounds++;
  if (!priceLevel(tightening, tightening.level)) tightening.level = null;
}

/** The next grid with the patterns that can be cut; null when those alone allow the bound there is, or none is left. */
function layGrid(tightening: Tightening, known: number): Level | null {
  const { model, pool, work, levels } = tightening;
  const cells = tightening.grids[levels];
  if (cells === undefined) return null;
  tightening.levels++;
  const program = listBoardRows(model);
  const rowOf = new Map(program.kinds.map((kind, row) => [kind, row]));
  for (const { bin, kinds, counts } of pool.columns) {
    const proper = kinds.every((kind, k) => (counts[k] as number) <= (model.kinds[kind] as Kind).count);
    const rows = kinds.map((kind) => rowOf.get(kind) as number);
    if (proper) addPattern(program, bin, rows, counts);
  }
  const lp = startBoardLp(program.kinds.length, program.demand, program.patterns, penaltyOf(model));
  settle(program, lp, mostPivots);
  if (roundBound(model, valueOf(lp)) <= known) return null;
  const lifted = model.bins.map((bin) => liftBin(model, bin, cells));
  return lifted.reduce((sum, each) => sum + liftedWork(each), 0) > work ? null : { lifted, program, lp };
}

/** Simplex steps between two pricings at most. */
const mostPivots = 1000;

/** Prices between the best prices so far and those of the program, then at the latter; false when this grid is done with. */
function priceLevel(tightening: Tightening, level: Level): boolean {
  const { model, centre } = tightening;
  const { program, lp } = level;
  settle(program, lp, mostPivots);
  if (roundBound(model, tightening.bound) >= roundBound(model, valueOf(lp))) return false;
  const own = new Float64Array(model.kinds.length);
  program.kinds.forEach((kind, row) => (own[kind] = Math.max(0, lp.prices[row] as number)));
  const between = centre ? own.map((price, i) => (price + (centre[i] as number)) / 2) : own;
  const before = tightening.bound;
  if (priceGrid(tightening, level, between) > 0 || tightening.bound > before * (1 + 1e-6)) return true;
  return centre !== null && priceGrid(tightening, level, own) > 0;
}

/** Takes the bound at some prices; answers how many patterns were new. */
function priceGrid(tightening: Tightening, level: Level, prices: Float64Array): number {
  const { model } = tightening;
  const { program } = level;
  const most = new Float64Array(model.bins.length);
  let added = addBest(level, model, prices, most);
  const bound = dualBound(model, countsOf(model), prices, most);
  if (bound > tightening.bound) {
    tightening.bound = bound;
    tightening.centre = prices.slice();
  }
  const cheaper = prices.slice();
  for (let i = 0; i < variations && added > 0; i++) {
    const from = program.patterns.length - 1;
    const { rows } = program.patterns[from] as Pattern;
    for (const row of rows) {
      const kind = program.kinds[row];
      if (kind !== undefined) cheaper[kind] = (cheaper[kind] as number) * 0.7;
    }
    added += addBest(level, model, cheaper, null);
  }
  return added;
}

/** More patterns a round, unlike the best: fewer rounds are needed. */
const variations = 2;

/** Adds the best pattern of each stock on the grid, where it lowers the program. */
function addBest(level: Level, model: Model, prices: Float64Array, most: Float64Array | null): number {
  const { lifted, program } = level;
  const rowOf = new Map(program.kinds.map((kind, row) => [kind, row]));
  let added = 0;
  for (const each of lifted) {
    const { value, kinds, counts } = valueLifted(each, model, prices);
    if (most) most[each.bin.index] = value;
    const rows = kinds.map((kind) => rowOf.get(kind) as number);
    if (gains(level, each.bin, rows, counts) && addPattern(program, each.bin, rows, counts)) added++;
  }
  return added;
}

function gains(
  { program, lp }: Level,
  bin: Bin,
  rows: readonly number[],
  counts: readonly number[],
): boolean {
  const counted = program.countRows[bin.index] as number;
  let cost = bin.cost - (counted < 0 ? 0 : (lp.prices[counted] as number));
  rows.forEach((row, k) => (cost -= (lp.prices[row] as number) * (counts[k] as number)));
  return cost < -1e-9 * Math.max(1, bin.cost);
}

/**
 * What every plan of a job by guillotine cuts must cost at least by patterns on grids of so many cells: the program for
 * the bound by itself, open to tests.
 */
export function tightBound(job: CuttingJob, grids: readonly number[]): number {
  const model = mergeKinds(buildModel(job));
  const tightening = startTightening(model, makePool(), Infinity, grids);
  while (!tightening.done) tightenOnce(tightening, 0);
  return roundBound(model, tightening.bound);
}

function countsOf({ kinds }: Model): Float64Array {
  return Float64Array.from(kinds, (kind) => kind.count);
}
