import { emptyPlace, layDown, lossOf, measureAll, restore, takeSnapshot } from './nest.ts';
import type { Nest, Snapshot } from './nest.ts';
import { separate } from './separate.ts';
import type { Patience } from './separate.ts';
import { swapTwo } from './shake.ts';
import { usedLength } from './used-length.ts';
import { holdInside } from './weigh-place.ts';

/** A search for the shortest strip; on sheets the last of the nest counts as the strip and the others as they are. */
export interface StripSearch {
  readonly nest: Nest;
  /** No strip can be shorter. */
  readonly bound: number;
  readonly isOver: () => boolean;
  readonly tell: (search: StripSearch) => void;
  best: Snapshot;
  length: number;
}

/** Work that stops now and then, telling the parts moved in its nest so far, and goes on when asked. */
export type Pausing<Result> = Generator<number, Result, void>;

/** How much shorter the next try is, as a share of the length, and how patient it is. */
const exploring = { shrink: 0.01, least: 0.0015 } as const;
const squeezing = { shrink: 0.0005, leastShrink: 0.00001 } as const;
export const patience: Readonly<Record<'exploring' | 'relaxing' | 'squeezing', Patience>> = {
  exploring: { rounds: 100, strikes: 3, seeking: { wide: 24, near: 15, matched: 10, kept: 3 } },
  relaxing: { rounds: 60, strikes: 1, seeking: { wide: 24, near: 15, matched: 10, kept: 3 } },
  squeezing: { rounds: 60, strikes: 2, seeking: { wide: 24, near: 15, matched: 10, kept: 3 } },
};

/** A search from a nest without clashes. */
export function startStrip(setup: Omit<StripSearch, 'best' | 'length'>): StripSearch {
  const { nest } = setup;
  return {
    ...setup,
    best: takeSnapshot(nest),
    length: usedLength(nest, nest.sheets - 1),
  };
}

export function isStripDone(search: StripSearch): boolean {
  return search.isOver() || search.length <= search.bound * (1 + 1e-9);
}

/**
 * Far shorter tries from one nest to the next. One that fails is given back half of what was taken, where it clashes, and
 * tried again; when nothing is gained so, a slightly shorter one is shaken until it succeeds.
 */
export function* explore(search: StripSearch, moves: number): Pausing<void> {
  const { nest } = search;
  const end = nest.moves + moves;
  // a shorter one may have come from elsewhere meanwhile
  const isOver = () => nest.moves >= end || isStripDone(search) || search.length <= lastLength(nest);
  let shrink: number = exploring.shrink;
  while (nest.moves < end && !isStripDone(search)) {
    yield nest.moves;
    restore(nest, search.best);
    const before = search.length;
    shorten(search, shrink);
    if (shrink <= exploring.least) {
      if ((yield* workAtClashes(nest, isOver)) !== null) record(search);
    } else if (yield* relax(search, isOver)) record(search);
    const gained = 1 - search.length / before;
    shrink = Math.max(exploring.least, gained > 0.9 * shrink ? shrink : shrink / 2);
  }
}

/** Separates, giving back length where that fails; false when there is nothing more to give back, or it is over. */
function* relax(search: StripSearch, isOver: () => boolean): Pausing<boolean> {
  const { nest } = search;
  const last = nest.sheets - 1;
  while (!isOver()) {
    if (separate(nest, patience.relaxing, isOver).free) return true;
    yield nest.moves;
    const spare = search.length - nest.sheetLength[last]!;
    if (spare < exploring.least * search.length) return false;
    widen(nest, spare / 2);
  }
  return false;
}

/** Makes the last sheet longer by moving all beyond some clashing part. */
function widen(nest: Nest, by: number): void {
  const last = nest.sheets - 1;
  const middle = (i: number) => nest.x[i]! + nest.shapes.width[nest.pose[i]!]! / 2;
  const clashing = Array.from({ length: nest.count }, (_, i) => i).filter(
    (i) => nest.sheet[i] === last && lossOf(nest, i) > 0,
  );
  nest.sheetLength[last] = nest.sheetLength[last]! + by;
  if (clashing.length === 0) return;
  const from = middle(clashing[nest.random.whole(0, clashing.length - 1)]!);
  for (let i = 0; i < nest.count; i++) {
    if (nest.sheet[i] !== last || middle(i) <= from) continue;
    layDown(nest, i, { pose: nest.pose[i]!, sheet: last, x: nest.x[i]! + by, y: nest.y[i]!, loss: 0 });
  }
  measureAll(nest);
}

/** Separates, shakes and separates again until nothing clashes: after how many shakes; null when it is over before. */
export function* workAtClashes(nest: Nest, isOver: () => boolean): Pausing<number | null> {
  const pool: { readonly loss: number; readonly snapshot: Snapshot }[] = [];
  for (let shakes = 0; !isOver(); shakes++) {
    const { free, loss } = separate(nest, patience.exploring, isOver);
    if (free) return shakes;
    yield nest.moves;
    pool.push({ loss, snapshot: takeSnapshot(nest) });
    pool.sort((a, b) => a.loss - b.loss);
    const rank = Math.floor(Math.abs(nest.random.normal()) * pool.length * 0.25);
    restore(nest, pool[Math.min(pool.length - 1, rank)]!.snapshot);
    swapTwo(nest);
  }
  return null;
}

/** Slightly shorter tries from the best. */
export function* squeeze(search: StripSearch, moves: number): Pausing<void> {
  const { nest } = search;
  const start = nest.moves;
  const isOver = () => nest.moves >= start + moves || isStripDone(search);
  while (!isOver()) {
    yield nest.moves;
    const spent = (nest.moves - start) / moves;
    const shrink = squeezing.shrink * (squeezing.leastShrink / squeezing.shrink) ** spent;
    restore(nest, search.best);
    shorten(search, shrink);
    if (separate(nest, patience.squeezing, isOver).free) record(search);
  }
}

/** Takes a shorter strip of the same parts that was found elsewhere; the try at hand ends. */
export function takeStrip(search: StripSearch, found: Nest): void {
  search.best = takeSnapshot(found);
  search.length = usedLength(found, found.sheets - 1);
}

function lastLength(nest: Nest): number {
  return nest.sheetLength[nest.sheets - 1]!;
}

function record(search: StripSearch): void {
  const length = usedLength(search.nest, search.nest.sheets - 1);
  if (length >= search.length) return;
  search.length = length;
  search.best = takeSnapshot(search.nest);
  search.tell(search);
}

/** Takes a piece out of the length at a place chosen by chance: what lies beyond moves back, what no longer fits is lifted. */
function shorten(search: StripSearch, share: number): void {
  const { nest } = search;
  const { shapes, random } = nest;
  const last = nest.sheets - 1;
  const next = Math.max(search.bound, search.length * (1 - share));
  const from = random.next() * search.length;
  nest.sheetLength[last] = next;
  const place = emptyPlace();
  for (let i = 0; i < nest.count; i++) {
    if (nest.sheet[i] !== last) continue;
    place.pose = nest.pose[i]!;
    place.sheet = last;
    place.x = nest.x[i]!;
    place.y = nest.y[i]!;
    if (place.x + shapes.width[place.pose]! / 2 > from) place.x -= search.length - next;
    if (!holdInside(nest, place)) place.sheet = -1;
    layDown(nest, i, place);
  }
  measureAll(nest);
}
