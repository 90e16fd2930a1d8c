import { diveForBoards, generateBoards, wantsBoardDive } from './boards/board-engine.ts';
import { costSoFar, isProven, isRepeating, partsOf } from './engine.ts';
import type { Engine } from './engine.ts';
import {
  combineOnce,
  diveOnce,
  generateFor,
  refines,
  searchFor,
  searchFreely,
  tightenFor,
  wantsCombining,
  wantsDive,
  wantsTightening,
} from './engine-turns.ts';
import type { Model } from './model.ts';
import { polishSearch } from './polish.ts';
import type { PlanAim } from './types.ts';

/** Runs until proven, out of time or steps, or without hope of more; or until `pauses`, to be gone on with later. */
export function runEngine(engine: Engine, pauses: () => boolean): void {
  // a portion of search costs about as much as one round of generation on a job of usual size
  const portion = Math.max(400, Math.ceil(60000 / (20 + partsOf(engine.model))));
  if (!engine.begun) searchFor(engine, Math.min(2 * portion, Math.ceil(engine.stepsLeft / 4)));
  engine.begun = true;
  while (!isStopped(engine) && !pauses()) {
    if (engine.model.style === 'free') searchFreely(engine, Math.ceil(portion / 8));
    if (!mayTurn(engine) || !takeTurn(engine)) searchFor(engine, 4 * portion);
    // by the clock the others go on until they had their share, else all take turns
    if (engine.seconds === 0 || !mayTurn(engine)) searchFor(engine, portion);
  }
}

/** Whether the search has had its share of the time so far. */
function mayTurn({ model, seconds, secondsLeft, spent }: Engine): boolean {
  return spent <= shareOfTurns(model) * (seconds - secondsLeft());
}

/** Patterns do for boards and large orders what the search does for few parts of many sizes. */
function shareOfTurns(model: Model): number {
  if (model.style === 'length') return 1;
  return isRepeating(model) ? 0.8 : 0.5;
}

/**
 * Makes the engine a second one beside the first: where the search gets furthest it does nothing else, elsewhere its
 * roundings are bolder from the first.
 */
export function leanToSearch(engine: Engine): void {
  const { model } = engine;
  if (model.style !== 'length' && !isRepeating(model)) engine.generation.done = engine.tightening.done = true;
  else engine.dives = 1;
}

/** Lets one of the others work for a while; false when none has anything to do. */
function takeTurn(engine: Engine): boolean {
  const before = engine.secondsLeft();
  const turn = chooseTurn(engine);
  turn?.(engine);
  engine.spent += before - engine.secondsLeft();
  return turn !== null;
}

function chooseTurn(engine: Engine): ((engine: Engine) => void) | null {
  const { boards } = engine;
  if (boards) {
    if (!engine.generation.done) return () => generateBoards(engine, boards);
    return wantsBoardDive(engine, boards) ? () => diveForBoards(engine, boards) : null;
  }
  if (!engine.generation.done) return generateFor;
  if (wantsTightening(engine)) return tightenFor;
  if (engine.dives > 0 && refines(engine)) return generateFor;
  if (wantsDive(engine)) return diveOnce;
  return wantsCombining(engine) ? combineOnce : null;
}

/**
 * At the end: the same cost, better leftovers, fewer settings. A fixed amount of steps, so that proven plans are always
 * the same, `patience` times the usual.
 */
export function polishEngine(engine: Engine, aim: PlanAim, patience: number): void {
  const { search, model, effort } = engine;
  const parts = partsOf(model);
  if (search.best.leftCount > 0 || parts > 400 || engine.free?.best) return;
  const steps = Math.ceil((patience * polishing) / (40 + parts));
  polishSearch(search, aim, Math.min(steps, effort.polish), engine.isOver);
  engine.tell('leftovers');
}

/** Steps of polishing times parts: less than a tenth of a second. */
const polishing = 240_000;

/** Whether there is nothing more to do: unless something better comes from elsewhere. */
export function isStopped(engine: Engine): boolean {
  if (isProven(engine) || isSettled(engine) || engine.isOver()) return true;
  if (engine.search.best.leftCount > 0 && engine.idle > 3000 && !hasRoomForAll(engine.model)) return true;
  return engine.generation.done && (engine.stepsLeft <= 0 || engine.idle > idleLimit);
}

/** Whether the stock is as large as the parts: else some are left out whatever is tried. */
function hasRoomForAll({ kinds, bins }: Model): boolean {
  const wanted = kinds.reduce((sum, kind) => sum + kind.count * kind.area, 0);
  const room = bins.reduce((sum, bin) => sum + (bin.count > 0 ? bin.count * bin.area : 0), 0);
  return wanted <= room;
}

/** The question for a certain cost is answered: it is reached, or cannot be. */
export function isSettled(engine: Engine): boolean {
  const { enough, bound, search } = engine;
  if (enough === null) return false;
  const slack = 1e-6 * Math.max(1, enough);
  return bound > enough + slack || (search.best.leftCount === 0 && costSoFar(engine) <= enough + slack);
}

/** Search steps without progress after which a small job is left as it is. */
const idleLimit = 1_200_000;
