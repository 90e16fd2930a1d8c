import type { SolveLp } from '#core/numerics';
import type { Problem } from '#core/problems';
import { checkJob } from './check-job.ts';
import { emitPlan } from './emit-plan.ts';
import { answerFreely, answerWith } from './answer.ts';
import { costSoFar, startEngine } from './engine.ts';
import type { Effort, Engine } from './engine.ts';
import { mergeKinds } from './merge-kinds.ts';
import { buildModel } from './model.ts';
import type { Model } from './model.ts';
import { polishEngine, runEngine } from './run-engine.ts';
import { resumeLoad } from './resume-load.ts';
import type { CuttingJob, CuttingPlan, CuttingProgress, PlanAim } from './types.ts';
import { fitsSomewhere, tellUnplaced } from './unplaced.ts';

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
  /** Ends as soon as a plan costs no more than this, or none can; for asking what a change would save. */
  readonly enough?: number;
  /** A plan of the same job to go on from: the answer is never dearer. Left aside when it cannot be read back. */
  readonly start?: CuttingPlan;
  /** What tells plans of one cost apart; with `enough` it is not asked unless given. */
  readonly aim?: PlanAim;
  readonly onProgress?: (progress: CuttingProgress) => void;
}

/**
 * The cheapest plan found for a job, with a bound that no plan can go below. A job that `checkJob` refuses yields an
 * empty plan with those findings.
 */
export function solveCutting(job: CuttingJob, tools: CuttingTools): CuttingPlan {
  const start = tools.clock();
  const wrong = checkJob(job);
  if (wrong.length > 0) return refuse(job, wrong);
  const model = buildModel(job);
  const placeable = mergeKinds(withoutImpossible(model));
  const time = tools.work === undefined ? (tools.seconds ?? 10) * 1000 : Infinity;
  let share = searchShare;
  const seconds = () => (tools.clock() - start) / 1000;
  const finish = (engine: Engine): CuttingPlan => {
    const free = engine.free?.best;
    const answer = free ? answerFreely(model, free) : answerWith(model, engine.search.best);
    const findings = [...tellUnplaced(model, answer.left), ...tellRounding(model)];
    return emitPlan(model, answer, { bound: engine.bound, seconds: seconds(), findings });
  };
  const engine = startEngine(placeable, {
    solveLp: tools.solveLp,
    seed: tools.seed ?? 1,
    steps: tools.work ?? Infinity,
    enough: tools.enough ?? null,
    start: tools.start ? resumeLoad(model, placeable, tools.start) : null,
    effort: effortFor(tools),
    isOver: () => tools.clock() - start > time * share,
    secondsLeft: () => (tools.work === undefined ? (time * share) / 1000 - seconds() : 0),
    tell: tellNowAndThen(tools, (each, phase) => ({ ...standing(each), phase, plan: finish(each) })),
  });
  runEngine(engine);
  share = timeShare;
  if (tools.enough === undefined || tools.aim) polishEngine(engine, tools.aim ?? {}, tools.aim ? 4 : 1);
  return notDearer(finish(engine), tools.start);
}

/** The plan begun with where going on from it has come out dearer, as it can where it cannot be taken up again as it is. */
function notDearer(found: CuttingPlan, start: CuttingPlan | undefined): CuttingPlan {
  if (!start || start.unplaced.length > 0 || start.layouts.length === 0) return found;
  if (found.unplaced.length === 0 && found.cost <= start.cost) return found;
  const bound = found.bound === null ? start.bound : Math.max(found.bound, start.bound ?? 0);
  return { ...start, bound, proven: bound !== null && bound >= start.cost, seconds: found.seconds };
}

/** Tells what the search has, but no more often than a twentieth of the time allows: writing a large plan takes long. */
function tellNowAndThen(
  { onProgress, clock }: CuttingTools,
  write: (engine: Engine, phase: string) => CuttingProgress,
): (engine: Engine, phase: string) => void {
  let last = -Infinity;
  let took = 0;
  return (engine, phase) => {
    const now = clock();
    if (!onProgress || now - last < 20 * took) return;
    onProgress(write(engine, phase));
    last = clock();
    took = last - now;
  };
}

/** About a thirtieth of a second is a fair price for one full pricing, and a twentieth of the time for a fine one. */
function effortFor(tools: CuttingTools): Effort {
  const { work } = tools;
  if (work === undefined) {
    const affordable = (tools.seconds ?? 10) * 3e7;
    const pricing = Math.min(2e7, affordable);
    return {
      rounds: Infinity,
      dives: Infinity,
      pricing,
      finePricing: Math.min(4e8, affordable),
      polish: Infinity,
    };
  }
  const pricing = Math.min(2e7, 1e6 + work * 2000);
  return {
    rounds: 40 + work / 10,
    dives: 1 + work / 5000,
    pricing,
    finePricing: Math.min(1.5e8, work * 2000),
    polish: work,
  };
}

/** The last parts of the time are kept for the leftovers and for writing the plan. */
const searchShare = 0.93;
const timeShare = 0.97;

function standing(engine: Engine): { readonly cost: number; readonly bound: number } {
  const cost = costSoFar(engine);
  return { cost, bound: Math.min(cost, engine.bound) };
}

/** Parts that fit no stock would only be in the way of the search. */
function withoutImpossible(model: Model): Model {
  const kinds = model.kinds.map((kind) => (fitsSomewhere(model, kind) ? kind : { ...kind, count: 0 }));
  return { ...model, kinds };
}

function tellRounding(model: Model): readonly Problem[] {
  if (!model.rounded) return [];
  return [
    {
      severity: 'note',
      code: 'sizes-rounded',
      message: 'Some sizes are finer than 0.01 mm; parts and kerf were taken up to it, stock down.',
    },
  ];
}

function refuse(job: CuttingJob, findings: readonly Problem[]): CuttingPlan {
  const unplaced = job.parts.map((part) => ({ id: part.id, count: part.count ?? 1 }));
  return { cost: 0, bound: null, proven: false, seconds: 0, stockUsed: [], unplaced, findings, layouts: [] };
}
