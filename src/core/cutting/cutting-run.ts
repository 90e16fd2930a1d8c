import type { SolveLp } from '#core/numerics';
import type { Problem } from '#core/problems';
import { answerFreely, answerWith } from './answer.ts';
import { checkJob } from './check-job.ts';
import { takeNews, tellNews } from './cutting-news.ts';
import type { CuttingNews, Told } from './cutting-news.ts';
import { emitPlan } from './emit-plan.ts';
import { costSoFar, startEngine } from './engine.ts';
import type { Effort, Engine } from './engine.ts';
import { mergeKinds } from './merge-kinds.ts';
import { buildModel } from './model.ts';
import type { Model } from './model.ts';
import { resumeLoad } from './resume-load.ts';
import { leanToSearch, polishEngine, runEngine } from './run-engine.ts';
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
  /** The second of two runs of one job: of another character, and heard only through its news. */
  readonly isMate?: boolean;
}

/** How far a run goes before it pauses; without limits to its end. */
export interface Turn<News> {
  /** What another run of the same job told since the last turn. */
  readonly heard?: News | null;
  readonly steps?: number;
  readonly milliseconds?: number;
}

/** A search that works in turns, so that two of them can tell each other what they find. */
export interface CuttingRun {
  /** Takes what was heard, works, tells what it has. A turn may take longer than asked where work cannot be broken off. */
  readonly work: (turn: Turn<CuttingNews>) => CuttingNews;
  /** Ends the search: the plan, its leftovers and settings seen to. */
  readonly finish: () => CuttingPlan;
}

/** Starts a search with a first load. A job that `checkJob` refuses is settled at once: an empty plan with those findings. */
export function startCuttingRun(job: CuttingJob, tools: CuttingTools): CuttingRun {
  const wrong = checkJob(job);
  return wrong.length > 0 ? refuse(job, wrong) : startSoundRun(job, tools);
}

function startSoundRun(job: CuttingJob, tools: CuttingTools): CuttingRun {
  const start = tools.clock();
  const model = buildModel(job);
  const placeable = mergeKinds(withoutImpossible(model));
  const time = tools.work === undefined ? (tools.seconds ?? 10) * 1000 : Infinity;
  let share = searchShare;
  const seconds = () => (tools.clock() - start) / 1000;
  const write = (engine: Engine): CuttingPlan => {
    const free = engine.free?.best;
    const answer = free ? answerFreely(model, free) : answerWith(model, engine.search.best);
    const findings = [...tellUnplaced(model, answer.left), ...tellRounding(model)];
    return emitPlan(model, answer, { bound: engine.bound, seconds: seconds(), findings });
  };
  const engine = startEngine(placeable, {
    solveLp: tools.solveLp,
    seed: tools.isMate ? seedOfMate(tools.seed ?? 1) : (tools.seed ?? 1),
    steps: tools.work ?? Infinity,
    enough: tools.enough ?? null,
    start: tools.start ? resumeLoad(model, placeable, tools.start) : null,
    effort: effortFor(tools),
    isOver: () => tools.clock() - start > time * share,
    secondsLeft: () => (tools.work === undefined ? (time * share) / 1000 - seconds() : 0),
    tell: tellNowAndThen(tools, (each, phase) => ({ ...standing(each), phase, plan: write(each) })),
  });
  if (tools.isMate) leanToSearch(engine);
  const told: Told = { load: null, free: null };
  return {
    work: (turn) => {
      if (turn.heard) takeNews(engine, turn.heard, told);
      runEngine(engine, pauseAfter(turn, engine, tools.clock));
      return tellNews(engine, told);
    },
    finish: () => {
      share = timeShare;
      if (tools.enough === undefined || tools.aim) polishEngine(engine, tools.aim ?? {}, tools.aim ? 4 : 1);
      return notDearer(write(engine), tools.start);
    },
  };
}

function pauseAfter(
  { steps = Infinity, milliseconds = Infinity }: Turn<CuttingNews>,
  engine: Engine,
  clock: () => number,
): () => boolean {
  const from = engine.stepsLeft;
  const end = milliseconds === Infinity ? Infinity : clock() + milliseconds;
  const byClock = end < Infinity;
  return () => from - engine.stepsLeft >= steps || (byClock && clock() > end);
}

/** Far from what anybody would give as the next seed. */
function seedOfMate(seed: number): number {
  return (seed + 0x9e3779b9) >>> 0;
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

function refuse(job: CuttingJob, findings: readonly Problem[]): CuttingRun {
  const unplaced = job.parts.map((part) => ({ id: part.id, count: part.count ?? 1 }));
  const plan = {
    cost: 0,
    bound: null,
    proven: false,
    seconds: 0,
    stockUsed: [],
    unplaced,
    findings,
    layouts: [],
  };
  return {
    work: () => ({ state: 'settled', left: unplaced.length, cost: 0, bound: 0, found: null }),
    finish: () => plan,
  };
}
