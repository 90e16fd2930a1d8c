import { makeRandom } from '#core/numerics';
import type { Random, SolveLp } from '#core/numerics';
import { areaBound } from './bounds.ts';
import { scaledAreaBound } from './conservative-scale.ts';
import { addColumn, makePool } from './columns.ts';
import type { Pool } from './columns.ts';
import { startGeneration } from './generate.ts';
import type { Generation } from './generate.ts';
import { makePricer } from './pricing.ts';
import type { FreeSearch } from './free-search.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { startBoards } from './boards/start-boards.ts';
import type { BoardEngine } from './boards/start-boards.ts';
import { startCombiner } from './combine.ts';
import type { Combiner } from './combine.ts';
import { startSearch } from './search.ts';
import { startTightening } from './tighten.ts';
import type { Tightening } from './tighten.ts';
import type { Search } from './search.ts';

/** Both engines at work on one job, each feeding the other: search finds loads, generation patterns and the bound. */
export interface Engine {
  readonly model: Model;
  readonly random: Random;
  readonly pool: Pool;
  readonly search: Search;
  readonly generation: Generation;
  readonly tightening: Tightening;
  readonly isOver: () => boolean;
  readonly tell: (phase: string) => void;
  readonly combiner: Combiner;
  /** The search among plans without a tree of cuts, where the job allows them. */
  free: FreeSearch | null;
  /** The engine of boards and battens. */
  boards: BoardEngine | null;
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
  /** Seconds taken by all but the search; 0 when a run must not depend on the clock. */
  spent: number;
  /** Whether its first portion of search is done. */
  begun: boolean;
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
  /** A load to go on from. */
  readonly start: Load | null;
  readonly tell: (engine: Engine, phase: string) => void;
}

/** Lays a first load and takes the area bound: a plan within milliseconds. */
export function startEngine(model: Model, setup: EngineSetup): Engine {
  const random = makeRandom(setup.seed);
  const pool = makePool();
  const search = startSearch(model, random, partsOf(model) > 300 ? 1 : 4, setup.start);
  const isTooMany = model.kinds.length > mostKinds;
  const engine: Engine = {
    model,
    random,
    pool,
    search,
    generation: startGeneration(
      model,
      pool,
      setup.solveLp,
      model.style === 'length' || isTooMany ? null : makePricer(model, setup.effort.pricing),
    ),
    // without a clock nothing ends a long pricing
    tightening: startTightening(
      model,
      pool,
      setup.secondsLeft() > 0 ? setup.effort.finePricing : setup.effort.pricing / 2,
    ),
    effort: setup.effort,
    isOver: setup.isOver,
    combiner: startCombiner({
      ...{ model, random, solveLp: setup.solveLp, isOver: setup.isOver },
      shelf: makePool(),
    }),
    free: null,
    boards: null,
    secondsLeft: setup.secondsLeft,
    seconds: setup.secondsLeft(),
    enough: setup.enough,
    tell: (phase) => setup.tell(engine, phase),
    bound: Math.max(areaBound(model), scaledAreaBound(model)),
    dives: 0,
    stepsLeft: setup.steps,
    idle: 0,
    spent: 0,
    begun: false,
  };
  if (isTooMany) engine.generation.done = true;
  if (isTooMany || model.style !== 'guillotine') engine.tightening.done = true;
  if (model.style === 'length' && !isTooMany) engine.boards = startBoards(model, search.best);
  poolLoad(engine, search.best);
  engine.tell('first plan');
  return engine;
}

/** With more kinds than this one master program takes longer than the search would need. */
export const mostKinds = 600;

/** How many parts a job wants in all. */
export function partsOf(model: Model): number {
  return model.kinds.reduce((sum, kind) => sum + kind.count, 0);
}

/** Whether parts come so often that patterns do for them what the search does for others. */
export function isRepeating(model: Model): boolean {
  return partsOf(model) > 4 * model.kinds.filter((kind) => kind.count > 0).length;
}

/** True when the best load costs no more than any plan must. */
export function isProven(engine: Engine): boolean {
  const { best } = engine.search;
  return best.leftCount === 0 && costSoFar(engine) <= engine.bound + 1e-6 * Math.max(1, engine.bound);
}

/** The cost of the cheapest load of either search. */
export function costSoFar({ search, free }: Engine): number {
  return free?.best?.cost ?? search.best.cost;
}

/** The sheets of a load are patterns too. */
export function poolLoad(engine: Engine, load: Load): void {
  if (engine.model.kinds.length > mostKinds) return;
  for (const sheet of load.sheets) addColumn(engine.model, engine.pool, sheet);
}
