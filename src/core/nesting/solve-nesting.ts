import { makeRandom } from '#core/numerics';
import { boundCost, boundLength, takenAreas } from './bounds.ts';
import { checkNestJob } from './check-nest-job.ts';
import { emitNest, refuseNest } from './emit-nest.ts';
import { runStrip, startEngine } from './engine.ts';
import type { Load } from './load.ts';
import { buildNestModel } from './model.ts';
import { runSheets } from './sheet-search.ts';
import type { NestJob, NestPlan, NestProgress } from './types.ts';

/** What a search is given besides the job. */
export interface NestTools {
  /** Milliseconds, from any start. */
  readonly clock: () => number;
  /** How long it may take; 10 when left out, without end when `work` is given. */
  readonly seconds?: number;
  /** How many parts to move; the same number gives the same plan. */
  readonly work?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: NestProgress) => void;
}

/**
 * The cheapest sheets found for true shapes, or the shortest strip, with a bound that no plan can go below. A job that
 * `checkNestJob` refuses yields an empty plan with those findings.
 */
export function solveNesting(job: NestJob, tools: NestTools): NestPlan {
  const start = tools.clock();
  const wrong = checkNestJob(job);
  if (wrong.length > 0) return refuseNest(job.parts, wrong);
  const model = buildNestModel(job);
  const areas = takenAreas(model);
  const bound = model.strip === null ? boundCost(model, areas) : boundLength(model, areas, model.strip);
  const time = (tools.seconds ?? (tools.work === undefined ? 10 : Infinity)) * 1000;
  const emit = (load: Load) => emitNest(model, load, bound, (tools.clock() - start) / 1000);
  const engine = startEngine({
    model,
    areas,
    bound,
    random: makeRandom(tools.seed ?? 1),
    work: tools.work ?? Infinity,
    isTimeUp: makeTimer(tools.clock, start + time),
    tell: (load) => {
      if (!tools.onProgress) return;
      const plan = emit(load);
      tools.onProgress({ cost: plan.cost, bound: plan.bound, plan });
    },
  });
  if (model.strip === null) runSheets(engine);
  else runStrip(engine);
  return emit(engine.best);
}

/** Asking the clock costs as much as weighing some places, so it is asked now and then. */
function makeTimer(clock: () => number, end: number): () => boolean {
  let asked = 0;
  let isUp = false;
  return () => {
    if (!isUp && ++asked % 8 === 0) isUp = clock() > end;
    return isUp;
  };
}
