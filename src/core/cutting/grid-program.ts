import { startBoardLp } from './boards/board-lp.ts';
import type { BoardLp, Pattern } from './boards/board-lp.ts';
import { addPattern, listBoardRows } from './boards/board-rows.ts';
import type { BoardRows } from './boards/board-rows.ts';
import { settle } from './boards/generate-rows.ts';
import type { Pool } from './columns.ts';
import type { LiftedBin } from './lifted-plates.ts';
import { penaltyOf } from './master.ts';
import type { Bin, Kind, Model } from './model.ts';

/** The program of one grid: patterns on it, which need not be cuttable. */
export interface GridProgram {
  readonly lifted: readonly LiftedBin[];
  /** How often each kind may be in a pattern; 0 as long as it is not counted. */
  readonly limits: Int32Array;
  readonly program: BoardRows;
  readonly lp: BoardLp;
  /** How far prices lean to the best so far, from 0 to 1. */
  lean: number;
  /** The program before more kinds were counted, and which share of those overused was then. */
  readonly before: GridProgram | null;
  readonly share: number;
}

/** How far prices lean to the best so far where nothing speaks against it. */
export const usualLean = 0.5;

/** Simplex steps between two pricings at most. */
export const mostPivots = 1000;

/** What a pattern holds of which kinds. */
export interface KindPattern {
  readonly bin: Bin;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** What can be cut and holds no kind more often than wanted. */
export function properColumns({ kinds: all }: Model, { columns }: Pool): readonly KindPattern[] {
  return columns.filter(({ kinds, counts }) =>
    kinds.every((kind, k) => (counts[k] as number) <= (all[kind] as Kind).count),
  );
}

/** The program of some patterns, solved. */
export function startProgram(
  model: Model,
  patterns: readonly KindPattern[],
): Pick<GridProgram, 'program' | 'lp'> {
  const program = listBoardRows(model);
  const rowOf = new Map(program.kinds.map((kind, row) => [kind, row]));
  for (const { bin, kinds, counts } of patterns) {
    const rows = kinds.map((kind) => rowOf.get(kind) as number);
    addPattern(program, bin, rows, counts);
  }
  const lp = startBoardLp(program.kinds.length, program.demand, program.patterns, penaltyOf(model));
  settle(program, lp, mostPivots);
  return { program, lp };
}

/**
 * The grid again with limits on some of the kinds that its patterns hold too often; null when there are none (decremental
 * state-space relaxation; Righini and Salani 2008, from memory).
 */
export function countMore(
  { model, pool }: { readonly model: Model; readonly pool: Pool },
  level: GridProgram,
  share: number,
): GridProgram | null {
  const overused = listOverused(model, level);
  if (overused.length === 0) return null;
  const limits = level.limits.slice();
  for (const kind of overused.slice(0, Math.ceil(overused.length * share))) {
    limits[kind] = (model.kinds[kind] as Kind).count;
  }
  const known = readPatterns(level.program).map((pattern) => capPattern(pattern, limits));
  const { program, lp } = startProgram(model, [...properColumns(model, pool), ...known]);
  return { ...level, limits, program, lp, lean: usualLean, before: { ...level, before: null }, share };
}

/** The same grid with fewer kinds counted at once, where all were too much work; null when even one is. */
export function countFewer(
  job: { readonly model: Model; readonly pool: Pool },
  { before, share }: GridProgram,
): GridProgram | null {
  return before && share > leastShare ? countMore(job, before, share / 4) : null;
}

/** Of more kinds than this stands for, a few are still counted at once. */
const leastShare = 0.02;

/** Kinds that patterns in use hold more often than they are wanted, the worst first. */
function listOverused(model: Model, { program, lp }: GridProgram): readonly number[] {
  const excess = new Float64Array(model.kinds.length);
  lp.basis.forEach((entry, i) => {
    const amount = lp.amounts[i] as number;
    if (entry < 0 || amount < 1e-7) return;
    const { rows, counts } = program.patterns[entry] as Pattern;
    rows.forEach((row, k) => {
      const kind = program.kinds[row];
      if (kind === undefined) return;
      const over = (counts[k] as number) - (model.kinds[kind] as Kind).count;
      if (over > 0) excess[kind] = (excess[kind] as number) + over * amount;
    });
  });
  const overused = program.kinds.filter((kind) => (excess[kind] as number) > 0);
  return overused.sort((a, b) => (excess[b] as number) - (excess[a] as number));
}

function readPatterns({ patterns, kinds, bins }: BoardRows): readonly KindPattern[] {
  return patterns.map(({ bin, rows, counts }) => {
    const own = [...rows.keys()].filter((k) => (rows[k] as number) < kinds.length);
    return {
      bin: bins[bin] as Bin,
      kinds: own.map((k) => kinds[rows[k] as number] as number),
      counts: own.map((k) => counts[k] as number),
    };
  });
}

/** A pattern with what it holds too often left out as far as that is counted. */
export function capPattern({ bin, kinds, counts }: KindPattern, limits: Int32Array): KindPattern {
  const capped = counts.map((count, k) => {
    const limit = limits[kinds[k] as number] as number;
    return limit > 0 ? Math.min(count, limit) : count;
  });
  return { bin, kinds, counts: capped };
}
