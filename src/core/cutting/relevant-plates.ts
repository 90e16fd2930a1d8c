import type { PlateValues } from './plate-values.ts';
import type { Positions } from './positions.ts';

/** What of a plate may lie in a filling of the whole that is worth so much. */
export interface RelevantPlates {
  /** Plate of the whole. */
  readonly whole: number;
  /** Plates that may be in such a filling, small before large. */
  readonly plates: Int32Array;
  /** What lies around each plate is worth at most this much; below zero without end where it is in no such filling. */
  readonly outside: Float64Array;
  /** Where the cuts of each of `plates` begin in `halves`, and after the last of all. */
  readonly start: Int32Array;
  /** Both plates of a cut, one after the other. */
  readonly halves: Int32Array;
}

/**
 * Keeps of all plates and cuts those that may be in a filling of the whole worth at least `least`: what a plate holds
 * and what lies around it come to that much at most (fixing by reduced costs; Irnich and others 2010, from memory).
 */
export function findRelevant(
  plates: PlateValues,
  whole: { readonly length: number; readonly width: number },
  least: number,
): RelevantPlates {
  const { xs, ys, columns, values } = plates;
  const root = (xs.floor[whole.length] as number) * columns + (ys.floor[whole.width] as number);
  const outside = new Float64Array(values.length).fill(-Infinity);
  outside[root] = 0;
  const found: Found = { values, outside, least, halves: [] };
  const list: number[] = [];
  const start: number[] = [];
  for (let at = root; at >= 0; at--) {
    if ((outside[at] as number) + (values[at] as number) < least) continue;
    list.push(at);
    start.push(found.halves.length);
    const i = Math.floor(at / columns);
    const j = at - i * columns;
    if (i > 0) raise(outside, at - columns, outside[at] as number);
    if (j > 0) raise(outside, at - 1, outside[at] as number);
    addCuts(found, at, { side: xs, index: i, stride: columns, base: j });
    addCuts(found, at, { side: ys, index: j, stride: 1, base: i * columns });
  }
  return { whole: root, outside, ...turnRound(list, start, found.halves) };
}

interface Found {
  readonly values: Float64Array;
  readonly outside: Float64Array;
  readonly least: number;
  readonly halves: number[];
}

function raise(outside: Float64Array, at: number, worth: number): void {
  if (worth > (outside[at] as number)) outside[at] = worth;
}

/** One side of a plate: its position and how plates are counted along it. */
interface Side {
  readonly side: Positions;
  readonly index: number;
  readonly stride: number;
  readonly base: number;
}

function addCuts({ values, outside, least, halves }: Found, at: number, across: Side): void {
  const { side, index, stride, base } = across;
  const size = side.at[index] as number;
  const around = outside[at] as number;
  for (let a = 1; a < index && 2 * (side.at[a] as number) <= size; a++) {
    const low = base + a * stride;
    const high = base + (side.floor[size - (side.at[a] as number)] as number) * stride;
    const [worthLow, worthHigh] = [values[low] as number, values[high] as number];
    if (worthLow === 0 || worthHigh === 0 || worthLow + worthHigh + around < least) continue;
    halves.push(low, high);
    raise(outside, low, around + worthHigh);
    raise(outside, high, around + worthLow);
  }
}

/** The lists with the small plates first; the cuts of a plate stay together. */
function turnRound(list: readonly number[], start: readonly number[], halves: readonly number[]) {
  const n = list.length;
  const starts = new Int32Array(n + 1);
  const turned = new Int32Array(halves.length);
  let to = 0;
  for (let k = n - 1; k >= 0; k--) {
    starts[n - 1 - k] = to;
    const end = start[k + 1] ?? halves.length;
    for (let h = start[k] as number; h < end; h++) turned[to++] = halves[h] as number;
  }
  starts[n] = to;
  return { plates: Int32Array.from(list).reverse(), start: starts, halves: turned };
}
