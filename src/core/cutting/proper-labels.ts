import { layOutCounts } from './count-words.ts';
import type { CountWords } from './count-words.ts';
import type { PlateValues } from './plate-values.ts';
import type { Positions } from './positions.ts';
import { findRelevant } from './relevant-plates.ts';
import type { RelevantPlates } from './relevant-plates.ts';

/** A filling of the whole: its worth and how often it holds each kind. */
export interface ProperFilling {
  readonly value: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** What is asked of the fillings of a plate. */
export interface ProperWish {
  readonly plates: PlateValues;
  readonly length: number;
  readonly width: number;
  /** A filling worth less is not looked for. */
  readonly least: number;
  /** How often each kind may be in a filling; below 1: as often as it fits. */
  readonly limits: ArrayLike<number>;
  /** Sums to make at most. */
  readonly work: number;
}

/** Fillings of plates found so far, one after the other. */
interface Labels {
  readonly words: CountWords;
  readonly value: number[];
  /** The two labels it is made of; below zero the kind of its only part. */
  readonly low: number[];
  readonly high: number[];
  /** How often it holds the kinds that are counted. */
  readonly use: number[];
  /** The same for a filling in the making. */
  readonly making: Int32Array;
  readonly mostWork: number;
  work: number;
}

/**
 * The best fillings of a plate that hold no counted kind more often than its limit, the best first: none is worth more
 * than the first, or than `least` where there is none. Null when it is too much work. Labels with counts over a dynamic
 * program of plates, bounded by what can lie around (state-space relaxation, Christofides and Hadjiconstantinou 1995, and
 * bounding by the relaxed program, from memory).
 */
export function fillProperly(wish: ProperWish): readonly ProperFilling[] | null {
  const { plates, least } = wish;
  const relevant = findRelevant(plates, wish, least);
  const words = layOutCounts(wish.limits);
  const making = new Int32Array(words.words);
  const labels: Labels = {
    words,
    value: [],
    low: [],
    high: [],
    use: [],
    making,
    mostWork: wish.work,
    work: 0,
  };
  const singles = listSingles(plates);
  const lists: (number[] | undefined)[] = [];
  const { columns } = plates;
  for (let k = 0; k < relevant.plates.length; k++) {
    const at = relevant.plates[k] as number;
    const floor = least - (relevant.outside[at] as number);
    const list: number[] = [];
    lists[at] = list;
    if (at >= columns) takeOver(labels, list, lists[at - columns], floor);
    if (at % columns > 0) takeOver(labels, list, lists[at - 1], floor);
    for (const n of singles.get(at) ?? []) addSingle(labels, list, plates.sizes[n] as Single, floor);
    cutInTwo(labels, { list, lists, relevant, k, floor });
    if (labels.work > wish.work) return null;
  }
  return (lists[relevant.whole] ?? []).slice(0, mostFillings).map((label) => readLabel(labels, label));
}

/** More of the best than this are too alike. */
const mostFillings = 4;

interface Single {
  readonly kind: number;
  readonly value: number;
}

/** Which sizes of parts, by number, begin to fit at which plate. */
function listSingles({ xs, ys, columns, sizes }: PlateValues): ReadonlyMap<number, readonly number[]> {
  const singles = new Map<number, number[]>();
  sizes.forEach(({ length, width }, n) => {
    const [i, j] = [ceilIndex(xs, length), ceilIndex(ys, width)];
    if (i < 0 || j < 0) return;
    const at = i * columns + j;
    const there = singles.get(at);
    if (there) there.push(n);
    else singles.set(at, [n]);
  });
  return singles;
}

/** First position not below a size; -1 when there is none. */
function ceilIndex({ at, floor }: Positions, size: number): number {
  if (size >= floor.length) return -1;
  const below = floor[size] as number;
  if (at[below] === size) return below;
  return below + 1 < at.length ? below + 1 : -1;
}

/** What fills a smaller plate fills a larger one. */
function takeOver(labels: Labels, list: number[], from: readonly number[] | undefined, floor: number): void {
  if (!from) return;
  const { words, use, making, value } = labels;
  for (const label of from) {
    if ((value[label] as number) < floor) return;
    for (let w = 0; w < words.words; w++) making[w] = use[label * words.words + w] as number;
    const n = findPlace(labels, list, value[label] as number);
    if (n >= 0) list.splice(n, 0, label);
  }
}

function addSingle(labels: Labels, list: number[], { kind, value }: Single, floor: number): void {
  if (value < floor) return;
  const { words, making } = labels;
  for (let w = 0; w < words.words; w++) making[w] = words.ones[kind * words.words + w] as number;
  addLabel(labels, list, value, [-1 - kind, 0]);
}

interface Plate {
  readonly list: number[];
  readonly lists: readonly (number[] | undefined)[];
  readonly relevant: RelevantPlates;
  /** Which of the relevant plates it is. */
  readonly k: number;
  readonly floor: number;
}

/** Joins the fillings of both sides of every cut. */
function cutInTwo(labels: Labels, { list, lists, relevant, k, floor }: Plate): void {
  const end = relevant.start[k + 1] as number;
  for (let cut = relevant.start[k] as number; cut < end && labels.work <= labels.mostWork; cut += 2) {
    const lows = lists[relevant.halves[cut] as number];
    const highs = lists[relevant.halves[cut + 1] as number];
    if (!lows || !highs || highs.length === 0) continue;
    joinAll(labels, list, { lows, highs, floor });
  }
}

function joinAll(
  labels: Labels,
  list: number[],
  { lows, highs, floor }: { lows: readonly number[]; highs: readonly number[]; floor: number },
): void {
  const { value } = labels;
  const most = value[highs[0] as number] as number;
  for (const low of lows) {
    const own = value[low] as number;
    if (own + most < floor) return;
    for (const high of highs) {
      const sum = own + (value[high] as number);
      if (sum < floor) break;
      labels.work++;
      if (joins(labels, low, high)) addLabel(labels, list, sum, [low, high]);
    }
  }
}

/** Counts two fillings together; false when a kind is used too often. */
function joins({ words, use, making }: Labels, low: number, high: number): boolean {
  const { words: n, spare, guards } = words;
  for (let w = 0; w < n; w++) {
    const sum = (use[low * n + w] as number) + (use[high * n + w] as number);
    if (((sum + (spare[w] as number)) & (guards[w] as number)) !== 0) return false;
    making[w] = sum;
  }
  return true;
}

function addLabel(
  labels: Labels,
  list: number[],
  value: number,
  [low, high]: readonly [number, number],
): void {
  const n = findPlace(labels, list, value);
  if (n < 0) return;
  list.splice(n, 0, labels.value.length);
  labels.value.push(value);
  labels.low.push(low);
  labels.high.push(high);
  for (let w = 0; w < labels.words.words; w++) labels.use.push(labels.making[w] as number);
}

/** Where the filling in the making belongs in a list by worth; -1 when another one is no worse. Takes out what is no better than it. */
function findPlace(labels: Labels, list: number[], worth: number): number {
  const { value } = labels;
  let n = 0;
  for (; n < list.length && (value[list[n] as number] as number) >= worth; n++) {
    labels.work++;
    if (usesNoMore(labels, list[n] as number)) return -1;
  }
  let kept = n;
  for (let m = n; m < list.length; m++) {
    labels.work++;
    const label = list[m] as number;
    if (!usesAsMuch(labels, label)) list[kept++] = label;
  }
  list.length = kept;
  return n;
}

/** Whether a label uses no counted kind more often than the filling in the making. */
function usesNoMore({ words, use, making }: Labels, label: number): boolean {
  const { words: n, guards } = words;
  for (let w = 0; w < n; w++) {
    const guard = guards[w] as number;
    if (((((making[w] as number) | guard) - (use[label * n + w] as number)) & guard) !== guard) return false;
  }
  return true;
}

function usesAsMuch({ words, use, making }: Labels, label: number): boolean {
  const { words: n, guards } = words;
  for (let w = 0; w < n; w++) {
    const guard = guards[w] as number;
    if (((((use[label * n + w] as number) | guard) - (making[w] as number)) & guard) !== guard) return false;
  }
  return true;
}

function readLabel(labels: Labels, label: number): ProperFilling {
  const found = new Map<number, number>();
  countParts(labels, label, found);
  const kinds = [...found.keys()].sort((a, b) => a - b);
  return {
    value: labels.value[label] as number,
    kinds,
    counts: kinds.map((kind) => found.get(kind) as number),
  };
}

function countParts(labels: Labels, label: number, found: Map<number, number>): void {
  const low = labels.low[label] as number;
  if (low < 0) {
    found.set(-1 - low, (found.get(-1 - low) ?? 0) + 1);
    return;
  }
  countParts(labels, low, found);
  countParts(labels, labels.high[label] as number, found);
}
