import { makeRandom } from '#core/numerics';
import { boundCost, boundLength, takenAreas } from './bounds.ts';
import { checkNestJob } from './check-nest-job.ts';
import { emitNest, refuseNest } from './emit-nest.ts';
import { adopt, isOver, runStrip, startEngine } from './engine.ts';
import type { Engine } from './engine.ts';
import type { Load } from './load.ts';
import { buildNestModel } from './model.ts';
import { isProven, runSheets } from './sheet-search.ts';
import type { Pausing } from './strip-search.ts';
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
  /** The second of two runs of one job: it begins elsewhere. */
  readonly isMate?: boolean;
  readonly onProgress?: (progress: NestProgress) => void;
}

/** What one run tells another of the same job: plain data. */
export interface NestNews {
  /** `working`: goes on when asked; `idle`: sees no way to more by itself; `out`: no time or work left; `settled`: proven. */
  readonly state: 'working' | 'idle' | 'out' | 'settled';
  /** The best load; null when it was told or heard before. */
  readonly found: Load | null;
}

/** How far a run goes before it pauses; without limits to its end. */
export interface NestTurn {
  /** What another run of the same job told since the last turn. */
  readonly heard?: NestNews | null;
  /** Parts to move. */
  readonly steps?: number;
  readonly milliseconds?: number;
}

/** A search that works in turns, so that two of them can tell each other what they find. */
export interface NestingRun {
  /** Takes what was heard, works, tells what it has. A turn may take a little longer than asked. */
  readonly work: (turn: NestTurn) => NestNews;
  readonly finish: () => NestPlan;
}

/** Once this share of the time asked for is spent before the search begins, the figures of the rest are coarse. */
const hurry = 0.4;

/** Starts a search with a first load. A job that `checkNestJob` refuses is settled at once: an empty plan with those findings. */
export function startNestingRun(job: NestJob, tools: NestTools): NestingRun {
  const start = tools.clock();
  const wrong = checkNestJob(job);
  if (wrong.length > 0) {
    const plan = refuseNest(job.parts, wrong);
    return { work: () => ({ state: 'settled', found: null }), finish: () => plan };
  }
  const time = (tools.seconds ?? (tools.work === undefined ? 10 : Infinity)) * 1000;
  const model = buildNestModel(job, () => time < Infinity && tools.clock() - start > hurry * time);
  const areas = takenAreas(model);
  const bound = model.strip === null ? boundCost(model, areas) : boundLength(model, areas, model.strip);
  const emit = (load: Load) => emitNest(model, load, bound, (tools.clock() - start) / 1000);
  const seed = tools.seed ?? 1;
  const engine = startEngine({
    model,
    areas,
    bound,
    random: makeRandom(tools.isMate ? (seed + 0x9e3779b9) >>> 0 : seed),
    work: tools.work ?? Infinity,
    isTimeUp: makeTimer(tools.clock, start + time),
    tell: (load) => {
      if (!tools.onProgress) return;
      const plan = emit(load);
      tools.onProgress({ cost: plan.cost, bound: plan.bound, plan });
    },
  });
  return { work: makeWork(engine, tools.clock), finish: () => emit(engine.best) };
}

function makeWork(engine: Engine, clock: () => number): NestingRun['work'] {
  const work = engine.model.strip === null ? runSheets(engine) : runStrip(engine);
  let isDone = false;
  let told: Load | null = null;
  return (turn) => {
    if (turn.heard?.found && adopt(engine, turn.heard.found)) told = turn.heard.found;
    if (!isDone && turn.steps !== 0) isDone = workFor(engine, work, turn, clock);
    const found = engine.best === told ? null : engine.best;
    told = engine.best;
    return { state: isDone ? stateOf(engine) : 'working', found };
  };
}

/** Works until the turn is over; true when there is nothing more to do. */
function workFor(engine: Engine, work: Pausing<void>, turn: NestTurn, clock: () => number): boolean {
  const { steps = Infinity, milliseconds = Infinity } = turn;
  const end = milliseconds === Infinity ? Infinity : clock() + milliseconds;
  let from: number | null = null;
  for (;;) {
    const { done, value } = work.next();
    if (done) return true;
    // where a nest of the search ends its moves go to the engine's
    const moves = engine.moves + value;
    from ??= moves;
    if (moves - from >= steps || (end < Infinity && clock() > end)) return false;
  }
}

function stateOf(engine: Engine): NestNews['state'] {
  if (engine.model.strip === null ? isProven(engine) : engine.best.reach <= engine.bound * (1 + 1e-9))
    return 'settled';
  return isOver(engine) ? 'out' : 'idle';
}

/** Asking the clock costs as much as weighing some places, so it is asked now and then. */
function makeTimer(clock: () => number, end: number): () => boolean {
  let asked = 0;
  let isUp = false;
  return () => {
    if (!isUp && asked++ % 8 === 0) isUp = clock() > end;
    return isUp;
  };
}
