import { roundBound } from './bounds.ts';
import { combine, shelve } from './combine.ts';
import { dive } from './dive.ts';
import { isProven, isRepeating, mostKinds, partsOf, poolLoad } from './engine.ts';
import type { Engine } from './engine.ts';
import { aimFreely, freeLoadOf, runFreeSearch, startFreeSearch } from './free-search.ts';
import { generateOnce, refineGeneration } from './generate.ts';
import { adoptLoad, isBetterLoad, runSearch, tryLoad } from './search.ts';
import { tightenOnce } from './tighten.ts';
import { searchWindows } from './window-search.ts';

/** A load of more sheets than this is searched a few sheets at a time. */
const mostWhole = 40;

export function searchFor(engine: Engine, steps: number): void {
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

/** Some steps among plans that no saw can follow from edge to edge; they must cost less than the best one it can. */
export function searchFreely(engine: Engine, steps: number): void {
  const { model, search, random } = engine;
  if (isProven(engine) || search.best.leftCount > 0 || engine.stepsLeft <= 0) return;
  const free = (engine.free ??= startFreeSearch(model, random, search.best));
  if (search.best.cost <= free.budget) {
    free.best = null;
    aimFreely(free, freeLoadOf(model, search.best));
  }
  engine.stepsLeft -= steps;
  if (!runFreeSearch(free, steps, engine.isOver)) return;
  engine.idle = 0;
  engine.tell('free search');
}

/** A first time when the patterns are there, then ever rarer while the search finds nothing. */
export function wantsCombining(engine: Engine): boolean {
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
export function combineOnce(engine: Engine): void {
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

export function generateFor(engine: Engine): void {
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

/** At once as long as its patterns are quickly found, later beside the rest. */
export function wantsTightening({ model, tightening, seconds, secondsLeft }: Engine): boolean {
  if (tightening.done || !tightening.counts) return !tightening.done;
  // where parts come often, sheets seldom hold too many, and rounding gets further with the time
  if (isRepeating(model)) return false;
  return tightening.spent <= countingShare * (seconds - secondsLeft());
}

/** The share of the time so far that patterns with counts may have taken. */
const countingShare = 0.2;

/** Some rounds of the program for the bound alone. */
export function tightenFor(engine: Engine): void {
  const { tightening, model, effort, secondsLeft } = engine;
  const before = secondsLeft();
  for (let i = 0; i < 4 && !tightening.done && !engine.isOver(); i++) tightenOnce(tightening, engine.bound);
  if (tightening.counts) tightening.spent += before - secondsLeft();
  if (tightening.rounds >= effort.rounds) tightening.done = true;
  const bound = roundBound(model, tightening.bound);
  if (bound <= engine.bound) return;
  engine.bound = bound;
  engine.tell('bound');
}

/** After a first rounding the bound, and the patterns with it, may be worth a finer pricing. */
export function refines({ model, generation, effort }: Engine): boolean {
  return model.kinds.length <= mostKinds && refineGeneration(generation, effort.finePricing);
}

/** Boards and large orders gain by rounding again and again, a few sheets by searching on. */
export function wantsDive(engine: Engine): boolean {
  const { model, dives, effort, idle } = engine;
  if (dives >= effort.dives || model.kinds.length > mostKinds) return false;
  const large = model.style === 'length' || partsOf(model) > 300;
  return large ? dives < 60 : dives < 1 + Math.floor(idle / 50_000);
}

export function diveOnce(engine: Engine): void {
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
