import { isClashing, measureAll } from './losses.ts';
import { emptyPlace, layDown } from './nest.ts';
import type { Nest } from './nest.ts';
import { separate } from './separate.ts';
import type { Patience } from './separate.ts';
import { swapTwo } from './shake.ts';
import { restore, takeSnapshot } from './snapshot.ts';
import type { Snapshot } from './snapshot.ts';
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
  /** How much shorter the next try of exploring is, as a share of the length. */
  shrink: number;
}

/** Work that stops now and then, telling the parts moved in its nest so far, and goes on when asked. */
export type Pausing<Result> = Generator<number, Result, void>;

const seeking = { wide: 14, near: 10, matched: 6, kept: 2 } as const;
const patience: Readonly<Record<'exploring' | 'relaxing' | 'squeezing' | 'mending', Patience>> = {
  exploring: { rounds: 100, strikes: 2, seeking },
  relaxing: { rounds: 60, strikes: 1, seeking },
  squeezing: { rounds: 60, strikes: 2, seeking },
  mending: { rounds: 30, strikes: 1, seeking },
};

/** How much shorter a try is, as a share of the length: at first and at most, and at least. */
const exploring = { first: 0.01, least: 0.0015 } as const;

interface Squeezing {
  readonly first: number;
  readonly most: number;
  /** A try shorter by less than this is not worth it. */
  readonly least: number;
  readonly patience: Patience;
}

const toTheLast: Squeezing = { first: 0.0005, most: 0.004, least: 0.00001, patience: patience.squeezing };
const roughly: Squeezing = { first: 0.002, most: 0.016, least: 0.0004, patience: patience.mending };

/** Room given at a time to a nest that clashes, as a share of the length, and at most. */
const mending = { room: 0.004, most: 0.015 } as const;

/** A search from a nest without clashes. */
export function startStrip(setup: Omit<StripSearch, 'best' | 'length' | 'shrink'>): StripSearch {
  const { nest } = setup;
  return {
    ...setup,
    best: takeSnapshot(nest),
    length: usedLength(nest, nest.sheets - 1),
    shrink: exploring.first,
  };
}

export function isStripDone(search: StripSearch): boolean {
  return search.isOver() || search.length <= search.bound * (1 + 1e-9);
}

/**
 * Shorter tries from one nest to the next, by more where that comes easily. One that fails is given back half of what was
 * taken, where it clashes, and tried again; when nothing is gained so, a slightly shorter one is shaken until it succeeds.
 */
export function* explore(search: StripSearch, moves: number): Pausing<void> {
  const { nest } = search;
  const end = nest.moves + moves;
  // a shorter one may have come from elsewhere meanwhile
  const isOver = () => nest.moves >= end || isStripDone(search) || search.length <= lastLength(nest);
  while (nest.moves < end && !isStripDone(search)) {
    yield nest.moves;
    const { shrink, length } = search;
    const start = nest.moves;
    restore(nest, search.best);
    shorten(search, shrink);
    const isLeast = shrink <= exploring.least;
    const work = isLeast ? workAtClashes(nest, isOver, () => mend(search)) : relax(search, isOver);
    const isFree = yield* work;
    if (isFree) record(search);
    const isWhole = 1 - search.length / length > 0.9 * shrink;
    const next = isWhole ? shrink * paceOf(nest, start) : shrink / 2;
    search.shrink = Math.min(exploring.first, Math.max(exploring.least, next));
  }
}

/** How much larger the next step is after one that succeeded: the fewer moves a part it took, the larger. */
function paceOf(nest: Nest, start: number): number {
  const spent = (nest.moves - start) / nest.count;
  return spent < 1 ? 1.4 : spent > 4 ? 0.7 : 1;
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
    (i) => nest.sheet[i] === last && isClashing(nest, i),
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

/**
 * Separates, shakes and separates again until nothing clashes, or what `mend` makes of a failure is free of clashes; false
 * when it is over before.
 */
export function* workAtClashes(
  nest: Nest,
  isOver: () => boolean,
  mend?: () => Pausing<boolean>,
): Pausing<boolean> {
  const pool: { readonly loss: number; readonly snapshot: Snapshot }[] = [];
  while (!isOver()) {
    const { free, loss } = separate(nest, patience.exploring, isOver);
    if (free) return true;
    yield nest.moves;
    pool.push({ loss, snapshot: takeSnapshot(nest) });
    pool.sort((a, b) => a.loss - b.loss);
    if (mend && (yield* mend())) return true;
    const rank = Math.floor(Math.abs(nest.random.normal()) * pool.length * 0.25);
    restore(nest, pool[Math.min(pool.length - 1, rank)]!.snapshot);
    swapTwo(nest);
  }
  return false;
}

/**
 * Gives a nest that clashes some room, even more than the best takes, and squeezes it out again; true when it is shorter
 * than the best then. Another arrangement often ends shorter than it began.
 */
function* mend(search: StripSearch): Pausing<boolean> {
  const { nest } = search;
  const last = nest.sheets - 1;
  const asked = nest.sheetLength[last]!;
  const most = search.length * (1 + mending.most);
  const hasRoom = () => nest.sheetLength[last]! <= most && !search.isOver();
  let isFree = false;
  while (!isFree && hasRoom()) {
    widen(nest, mending.room * search.length);
    isFree = hasRoom() && separate(nest, patience.mending, search.isOver).free;
    yield nest.moves;
  }
  const found = isFree ? startStrip({ ...search, tell: () => undefined }) : null;
  if (found) yield* squeezeBy(found, Infinity, roughly);
  nest.sheetLength[last] = asked;
  if (!found || found.length >= search.length) return false;
  restore(nest, found.best);
  return true;
}

/** Slightly shorter tries from the best, until they gain next to nothing. */
export function* squeeze(search: StripSearch, moves: number): Pausing<void> {
  yield* squeezeBy(search, moves, toTheLast);
}

function* squeezeBy(search: StripSearch, moves: number, by: Squeezing): Pausing<void> {
  const { nest } = search;
  const end = nest.moves + moves;
  const isOver = () => nest.moves >= end || isStripDone(search);
  let shrink = by.first;
  while (!isOver() && shrink >= by.least) {
    yield nest.moves;
    const start = nest.moves;
    restore(nest, search.best);
    shorten(search, shrink);
    const { free } = separate(nest, by.patience, isOver);
    if (free) record(search);
    shrink = free ? Math.min(by.most, shrink * paceOf(nest, start)) : shrink / 2;
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
