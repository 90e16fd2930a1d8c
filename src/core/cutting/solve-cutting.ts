import { makeRandom } from '#core/numerics';
import type { SolveLp } from '#core/numerics';
import { areaBound } from './bounds.ts';
import { checkJob } from './check-job.ts';
import { emitPlan } from './emit-plan.ts';
import type { Answer } from './emit-plan.ts';
import { buildModel } from './model.ts';
import type { Load } from './load.ts';
import { runSearch, startSearch } from './search.ts';
import type { CuttingJob, CuttingPlan, CuttingProgress } from './types.ts';
import { tellUnplaced } from './unplaced.ts';

/** What a search is given besides the job. */
export interface CuttingTools {
  readonly solveLp: SolveLp;
  /** Milliseconds, from any start. */
  readonly clock: () => number;
  /** How long it may take; 10 when left out. Not asked when `work` is given. */
  readonly seconds?: number;
  /** How many steps of search to make; the same number gives the same plan. */
  readonly work?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: CuttingProgress) => void;
}

/** The cheapest plan found for a job, with a bound that no plan can go below. */
export function solveCutting(job: CuttingJob, tools: CuttingTools): CuttingPlan {
  const start = tools.clock();
  const wrong = checkJob(job);
  if (wrong.length > 0) throw new Error(wrong[0]?.message);
  const model = buildModel(job);
  const search = startSearch(model, makeRandom(tools.seed ?? 1), 3);
  const bound = areaBound(model);
  const isOver = () => tools.clock() - start > (tools.seconds ?? 10) * 1000;
  while (!isOver() && (search.best.cost > bound + 1e-9 && search.best.leftCount === 0)) runSearch(search, 1000, isOver);
  const answer = answerOf(search.best);
  return emitPlan(model, answer, { bound, seconds: (tools.clock() - start) / 1000, findings: tellUnplaced(model, answer.left) });
}

export function answerOf(load: Load): Answer {
  return {
    fillings: load.sheets.map((sheet) => ({ filling: { bin: sheet.bin, way: sheet.way, roots: sheet.roots }, times: 1 })),
    left: load.left,
    cost: load.cost,
  };
}
