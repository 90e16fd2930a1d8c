import type { Random } from '#core/numerics';
import { isBetterLoad, makeLoad, openNest, readNest } from './load.ts';
import type { Load, Lying } from './load.ts';
import type { Model } from './model.ts';
import { layColumns } from './lay-columns.ts';
import { layOneByOne } from './start-load.ts';
import type { Nest } from './nest.ts';
import { explore, isStripDone, squeeze, startStrip, takeStrip } from './strip-search.ts';
import type { Pausing, StripSearch } from './strip-search.ts';

/** The search for one job: the best load, its bound (cost on sheets, length on a strip), and the work done. */
export interface Engine {
  readonly model: Model;
  readonly random: Random;
  readonly bound: number;
  /** Area each kind takes with half the gap round it. */
  readonly areas: readonly number[];
  /** Parts moved that are still allowed; Infinity when only the clock ends the run. */
  readonly work: number;
  readonly isTimeUp: () => boolean;
  readonly tell: (load: Load) => void;
  best: Load;
  moves: number;
}

export type EngineSetup = Pick<Engine, 'model' | 'random' | 'bound' | 'areas' | 'work' | 'isTimeUp' | 'tell'>;

/** More parts than this are searched some sheets at a time; a strip of more is left as it was first laid. */
export const mostSearched = 150;
const mostOnStrip = 2500;

/** A first load: parts in columns by their boxes, at once; then one by one where they fit, if time allows. */
export function startEngine(setup: EngineSetup): Engine {
  const best = layColumns(setup.model);
  const engine = { ...setup, best, moves: 0 };
  engine.tell(best);
  const fitted = layOneByOne(setup.model, setup.random, setup.isTimeUp);
  if (fitted) adopt(engine, fitted);
  return engine;
}

export function isOver(engine: Engine): boolean {
  return engine.moves >= engine.work || engine.isTimeUp();
}

export function adopt(engine: Engine, load: Load): boolean {
  if (!isBetterLoad(load, engine.best)) return false;
  engine.best = load;
  engine.tell(load);
  return true;
}

/** Parts moved in the first round; each round has twice as many. */
const firstRound = 4000;

/** Shortens the strip in rounds of exploring and squeezing, each twice as long, until proven or over. */
export function* runStrip(engine: Engine): Pausing<void> {
  const { model, best } = engine;
  if (best.parts.length === 0 || best.parts.length > mostOnStrip) return;
  const nest = openNest(model, engine.random, best.bins, best.parts);
  const search = startStrip({
    nest,
    bound: engine.bound,
    isOver: () => nest.moves >= engine.work || engine.isTimeUp(),
    tell: () => adopt(engine, makeLoad(model, best.bins, readNest(nest), best.left)),
  });
  for (let round = firstRound; !isStripDone(search); round *= 2) {
    yield* hearingOf(engine, search, explore(search, round));
    yield* hearingOf(engine, search, squeeze(search, round / 4));
  }
  engine.moves = nest.moves;
}

/** Two searches stay apart, for what each may find, until one is this share behind. */
const farBehind = 0.002;

/** Work at a strip that takes a much shorter one heard of in a pause, if it is of the same parts. */
function* hearingOf(engine: Engine, search: StripSearch, work: Pausing<void>): Pausing<void> {
  const { model, random } = engine;
  const { nest } = search;
  for (const moves of work) {
    yield moves;
    const { best } = engine;
    if (best.parts.length !== nest.count || best.reach > search.length * (1 - farBehind)) continue;
    takeStrip(search, openNest(model, random, best.bins, inOrderOf(nest, best.parts)));
  }
}

/** The same parts in the order of a nest. */
function inOrderOf(nest: Nest, parts: readonly Lying[]): readonly Lying[] {
  const rest = [...parts];
  return Array.from({ length: nest.count }, (_, i) => {
    const at = rest.findIndex((part) => part.source === nest.source[i]);
    return rest.splice(at, 1)[0]!;
  });
}

/** Takes some sheets of the best load to be searched: their parts renumbered, and the rest as it stays. */
export function splitLoad(load: Load, sheets: readonly number[]): { taken: Lying[]; rest: Lying[] } {
  const taken: Lying[] = [];
  const rest: Lying[] = [];
  for (const part of load.parts) {
    const at = sheets.indexOf(part.sheet);
    if (at >= 0) taken.push({ ...part, sheet: at });
    else rest.push(part);
  }
  return { taken, rest };
}

/** The load with some sheets as a nest now has them; parts of the nest on no sheet count as left. */
export function mergeNest(
  engine: Engine,
  sheets: { readonly bins: readonly number[]; readonly parts: readonly Lying[] },
  kept: { readonly rest: readonly Lying[]; readonly load: Load; readonly left: readonly number[] },
): Load {
  const offset = kept.load.bins.length;
  const moved = sheets.parts.map((part) => ({ ...part, sheet: part.sheet + offset }));
  const all = [...kept.rest, ...moved];
  return makeLoad(engine.model, [...kept.load.bins, ...sheets.bins], all, kept.left);
}
