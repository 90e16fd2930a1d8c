import { roundBound } from './bounds.ts';
import { valueOf } from './boards/board-lp.ts';
import { makePool } from './columns.ts';
import type { Pool } from './columns.ts';
import { countFewer, countMore, properColumns, startProgram, usualLean } from './grid-program.ts';
import type { GridProgram } from './grid-program.ts';
import { liftBin, liftedWork } from './lifted-plates.ts';
import type { LiftedBin } from './lifted-plates.ts';
import { mergeKinds } from './merge-kinds.ts';
import { buildModel } from './model.ts';
import type { Model } from './model.ts';
import { priceGridProgram } from './price-grid.ts';
import type { BestBound } from './price-grid.ts';
import type { CuttingJob } from './types.ts';

/**
 * A program for the bound alone: its patterns are those of coarse grids, on which all that can be cut still can, so
 * they need not be patterns of the job. It is run on ever finer grids, then once more on one of the finest with counts
 * of the kinds that its patterns hold more often than they are wanted.
 */
export interface Tightening extends BestBound {
  readonly pool: Pool;
  /** Cells along the longest side of the stock, grid after grid. */
  readonly grids: readonly number[];
  level: GridProgram | null;
  levels: number;
  /** Whether the grids are done with once: then patterns shall hold no kind more often than wanted. */
  counts: boolean;
  rounds: number;
  /** Seconds taken since `counts`, by the clock of the run. */
  spent: number;
  done: boolean;
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
  const nothing = { level: null, levels: 0, counts: false, bound: 0, centre: null, rounds: 0, spent: 0 };
  return { model, pool, grids, work, ...nothing, done };
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
  const { level } = tightening;
  if (!level) {
    tightening.level = layGrid(tightening, known);
    if (tightening.level) return;
    if (tightening.counts || !startCounting(tightening)) tightening.done = true;
    return;
  }
  tightening.rounds++;
  const outcome = priceGridProgram(tightening, level);
  if (outcome === 'more') return;
  if (!tightening.counts) tightening.level = null;
  else
    tightening.level =
      outcome === 'settled' ? countMore(tightening, level, 1 / 2) : countFewer(tightening, level);
}

/** Goes back to the finest grid on which patterns can be counted; false when there is none. */
function startCounting(tightening: Tightening): boolean {
  const { model, grids, work } = tightening;
  let finest = -1;
  for (let n = 0; n < grids.length; n++) {
    const lifted = model.bins.map((bin) => liftBin(model, bin, grids[n] as number));
    if (workOf(lifted) > work * shareOfCounting) break;
    finest = n;
  }
  tightening.counts = true;
  tightening.levels = finest;
  return finest >= 0;
}

/** Many pricings are needed while kinds are counted. */
const shareOfCounting = 0.07;

function workOf(lifted: readonly LiftedBin[]): number {
  return lifted.reduce((sum, each) => sum + liftedWork(each), 0);
}

/** The next grid with the patterns that can be cut; null when those alone allow the bound there is, or none is left. */
function layGrid(tightening: Tightening, known: number): GridProgram | null {
  const { model, pool, work, levels } = tightening;
  const cells = tightening.grids[levels];
  if (cells === undefined) return null;
  tightening.levels++;
  const patterns = properColumns(model, pool);
  const limits = new Int32Array(model.kinds.length);
  const { program, lp } = startProgram(model, patterns);
  if (roundBound(model, valueOf(lp)) <= known) return null;
  const lifted = model.bins.map((bin) => liftBin(model, bin, cells));
  return workOf(lifted) > work
    ? null
    : { lifted, limits, program, lp, lean: usualLean, before: null, share: 0 };
}

/**
 * What every plan of a job by guillotine cuts must cost at least by patterns on grids of so many cells: the program for
 * the bound by itself, open to tests.
 */
export function tightBound(job: CuttingJob, grids: readonly number[]): number {
  const model = mergeKinds(buildModel(job));
  const tightening = startTightening(model, makePool(), 2e7, grids);
  while (!tightening.done) tightenOnce(tightening, 0);
  return roundBound(model, tightening.bound);
}
