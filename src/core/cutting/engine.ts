import { makeRandom } from '#core/numerics';
import type { Random, SolveLp } from '#core/numerics';
import { areaBound, roundBound } from './bounds.ts';
import { scaledAreaBound } from './conservative-scale.ts';
import { addColumn, makePool } from './columns.ts';
import type { Pool } from './columns.ts';
import { dive } from './dive.ts';
import { generateOnce, refineGeneration, startGeneration } from './generate.ts';
import type { Generation } from './generate.ts';
import { makePricer } from './pricing.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { searchWindows } from './window-search.ts';
import { combine, shelve, startCombiner } from './combine.ts';
import type { Combiner } from './combine.ts';
import { adoptLoad, isBetterLoad, polishSearch, runSearch, startSearch, tryLoad } from './search.ts';
import type { Search } from './search.ts';

/** Both engines at work on one job, each feeding the other: search finds loads, generation patterns and the bound. */
export interface Engine {
  readonly model: Model;
  readonly random: Random;
  readonly pool: Pool;
  readonly search: Search;
  readonly generation: Generation;
  readonly isOver: () => boolean;
  readonly tell: (phase: string) => void;
  readonly combiner: Combiner;
  /** Seconds still free for work that the clock must end; 0 when a run must not depend on the clock. */
  readonly secondsLeft: () => number;
  /** Seconds left at the start. */
  readonly seconds: number;
  /** The cost that is all that is asked for; null: as little as can be. */
  readonly enough: number | null;
  bound: number;
  dives: number;
  /** How much a run may do besides searching: rounds of generation, dives, sums of one pricing at first and at last. */
  readonly effort: Effort;
  /** Search steps still allowed; Infinity when only the clock ends the run. */
  stepsLeft: number;
  /** Search steps since something last got better. */
  idle: number;
}

export interface Effort {
  readonly rounds: number;
  readonly dives: number;
  readonly pricing: number;
  readonly finePricing: number;
  readonly polish: number;
}

export interface EngineSetup {
  readonly effort: Effort;
  readonly solveLp: SolveLp;
  readonly seed: number;
  readonly steps: number;
  readonly isOver: () => boolean;
  readonly secondsLeft: () => number;
  readonly enough: number | null;
  readonly tell: (engine: Engine, phase: string) => void;
}

/** Lays a first load and takes the area bound: a plan within milliseconds. */
export function startEngine(model: Model, setup: EngineSetup): Engine {
  const random = makeRandom(setup.seed);
  const pool = makePool();
  const search = startSearch(model, random, partsOf(model) > 300 ? 1 : 4);
  const engine: Engine = {
    model,
    random,
    pool,
    search,
    generation: startGeneration(
      model,
      pool,
      setup.solveLp,
      model.style === 'length' ? null : makePricer(model, setup.effort.pricing),
    ),
    effort: setup.effort,
    isOver: setup.isOver,
    combiner: startCombiner({
      ...{ model, random, solveLp: setup.solveLp, isOver: setup.isOver },
      shelf: makePool(),
    }),
    secondsLeft: setup.secondsLeft,
    seconds: setup.secondsLeft(),
    enough: setup.enough,
    tell: (phase) => setup.tell(engine, phase),
    bound: Math.max(areaBound(model), scaledAreaBound(model)),
    dives: 0,
    stepsLeft: setup.steps,
    idle: 0,
  };
  if (model.kinds.length > mostKinds) engine.generation.done = true;
  poolLoad(engine, search.best);
  engine.tell('first plan');
  return engine;
}

/** With more kinds than this one master program takes longer than the search would need. */
const mostKinds = 600;

function partsOf(model: Model): number {
  return model.kinds.reduce((sum, kind) => sum + kind.count, 0);
}

/** True when the best load costs no more than any plan must. */
export function isProven(engine: Engine): boolean {
  const { best } = engine.search;
  return best.leftCount === 0 && best.cost <= engine.bound + 1e-6 * Math.max(1, engine.bound);
}

/** Runs until proven, out of time or steps, or without hope of more. */
export function runEngine(engine: Engine): void {
  // a portion of search costs about as much as one round of generation on a job of usual size
  const portion = Math.max(400, Math.ceil(60000 / (20 + partsOf(engine.model))));
  searchFor(engine, 2 * portion);
  while (!isStopped(engine)) {
    if (!engine.generation.done) generateFor(engine);
    else if (engine.dives > 0 && refines(engine)) continue;
    else if (wantsDive(engine)) diveOnce(engine);
    else if (wantsCombining(engine)) combineOnce(engine);
    else searchFor(engine, 4 * portion);
    searchFor(engine, portion);
  }
}

/** At the end: the same cost, better leftovers. A fixed amount of steps, so that proven plans are always the same. */
export function polishEngine(engine: Engine): void {
  const { search, model } = engine;
  const parts = partsOf(model);
  if (search.best.leftCount > 0 || parts > 400) return;
  const steps = Math.ceil(150_000 / (20 + parts));
  polishSearch(search, Math.min(steps, engine.effort.polish), engine.isOver);
  engine.tell('leftovers');
}

function isStopped(engine: Engine): boolean {
  if (isProven(engine) || isSettled(engine) || engine.isOver()) return true;
  if (engine.search.best.leftCount > 0 && engine.idle > 3000) return true;
  return engine.generation.done && (engine.stepsLeft <= 0 || engine.idle > idleLimit);
}

/** A load of more sheets than this is searched a few sheets at a time. */
const mostWhole = 40;

/** The question for a certain cost is answered: it is reached, or cannot be. */
function isSettled({ enough, bound, search }: Engine): boolean {
  if (enough === null) return false;
  const slack = 1e-6 * Math.max(1, enough);
  return bound > enough + slack || (search.best.leftCount === 0 && search.best.cost <= enough + slack);
}

/** Search steps without progress after which a small job is left as it is. */
const idleLimit = 1_200_000;

function searchFor(engine: Engine, steps: number): void {
  const { search } = engine;
  const allowed = Math.min(steps, engine.stepsLeft);
  if (allowed <= 0 || isProven(engine)) return;
  const before = search.step;
  const found =
    search.current.sheets.length > mostWhole && search.best.leftCount === 0
      ? searchWindows(search, allowed, engine.isOver)
      : runSearch(search, allowed, engine.isOver);
  // no fewer than one, so that a run by work always ends
  engine.stepsLeft -= Math.max(1, search.step - before);
  shelve(engine.combiner, search.current, engine.bound);
  engine.idle = found ? 0 : engine.idle + allowed;
  if (!found) return;
  poolLoad(engine, search.best);
  engine.tell('search');
}

/** A first time when the patterns are there, then ever rarer while the search finds nothing. */
function wantsCombining(engine: Engine): boolean {
  const { model, combiner, idle, stepsLeft, search, generation, seconds, secondsLeft } = engine;
  const ready = generation.last !== null && search.best.leftCount === 0;
  if (model.style === 'length' || !ready || stepsLeft < combiningSteps) return false;
  const share = search.best.sheets.length > 15 ? combiningShare / 2 : combiningShare;
  if (combiner.spent > share * (seconds - secondsLeft())) return false;
  // many sheets have many ways to be combined: there the search alone gets further at first
  const patience = 3000 * Math.max(1, (search.best.sheets.length / 10) ** 2);
  return idle >= Math.min(150_000, patience * 2 ** combiner.rounds - 3000);
}

/** What one combining counts as, in steps of search. */
const combiningSteps = 20_000;

/** The share of the time so far that combining may have taken. */
const combiningShare = 0.3;

/** Looks for a cheaper plan among all sheets known, and lets the search mend what it leaves. */
function combineOnce(engine: Engine): void {
  const { pool, search, secondsLeft, combiner } = engine;
  const before = secondsLeft();
  const seconds = Math.max(0, Math.min(4, 0.1 * before));
  const load = combine(combiner, pool, { budget: search.budget, seconds });
  combiner.spent += before - secondsLeft();
  engine.stepsLeft -= combiningSteps;
  if (!load) return;
  const old = search.best;
  tryLoad(search, load, engine.isOver);
  if (search.best === old) return;
  poolLoad(engine, search.best);
  engine.idle = 0;
  engine.tell('combining');
}

/** The sheets of a load are patterns too. */
function poolLoad(engine: Engine, load: Load): void {
  if (engine.model.kinds.length > mostKinds) return;
  for (const sheet of load.sheets) addColumn(engine.model, engine.pool, sheet);
}

function generateFor(engine: Engine): void {
  const { generation, model } = engine;
  for (let i = 0; i < 4 && !generation.done && !engine.isOver(); i++) generateOnce(generation);
  if (generation.rounds >= engine.effort.rounds) generation.done = true;
  // what no guillotine can do, a freer plan may
  if (model.style === 'free') return;
  const bound = roundBound(model, generation.bound);
  if (bound <= engine.bound) return;
  engine.bound = bound;
  engine.tell('bound');
}

/** After a first rounding the bound, and the patterns with it, may be worth a finer pricing. */
function refines({ model, generation, effort }: Engine): boolean {
  return model.kinds.length <= mostKinds && refineGeneration(generation, effort.finePricing);
}

/** Boards and large orders gain by rounding again and again, a few sheets by searching on. */
function wantsDive(engine: Engine): boolean {
  const { model, dives, effort, idle } = engine;
  if (dives >= effort.dives || model.kinds.length > mostKinds) return false;
  const large = model.style === 'length' || partsOf(model) > 300;
  return large ? dives < 60 : dives < 1 + Math.floor(idle / 50_000);
}

function diveOnce(engine: Engine): void {
  const { generation, random, isOver } = engine;
  engine.dives++;
  const load = dive({
    generation,
    random,
    isOver,
    restParts: 20 + 15 * ((engine.dives - 1) % 3),
    restSteps: 3000,
    rounds: 10,
    boldness: engine.dives === 1 ? 0.25 : 0.05 + 0.45 * random.next(),
  });
  if (!load || !isBetterLoad(load, engine.search.best)) return;
  adoptLoad(engine.search, load);
  poolLoad(engine, load);
  engine.idle = 0;
  engine.tell('rounding');
}
