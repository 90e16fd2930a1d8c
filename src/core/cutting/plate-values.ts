import { across, along } from './direction.ts';
import type { Positions } from './positions.ts';
import { makeFree } from './tree.ts';
import type { Node, PartSize } from './tree.ts';

/** A part as it may lie, with what it is worth. */
export interface PricedSize extends PartSize {
  readonly value: number;
}

/** Best value of every rectangle whose sides are positions: row by x, `columns` numbers each. */
export interface PlateValues {
  readonly xs: Positions;
  readonly ys: Positions;
  readonly columns: number;
  readonly values: Float64Array;
  readonly sizes: readonly PricedSize[];
}

/** How many sums `valuePlates` will make: its cost. */
export function plateWork(xs: Positions, ys: Positions): number {
  const [p, q] = [xs.at.length, ys.at.length];
  return (p * q * (p + q)) / 4;
}

/**
 * The most valuable guillotine pattern in every rectangle, any number of cuts and copies (Gilmore & Gomory 1966;
 * Beasley 1985; from memory). Exact for sides that are positions; others have the value of the positions below them.
 */
export function valuePlates(xs: Positions, ys: Positions, sizes: readonly PricedSize[]): PlateValues {
  const [p, q] = [xs.at.length, ys.at.length];
  const values = new Float64Array(p * q);
  setSingles({ xs, ys, columns: q, values, sizes });
  const pairsY = pairUp(ys);
  for (let i = 0; i < p; i++) {
    cutAcross(values, xs, q, i);
    cutAlong(values, pairsY, q, i);
  }
  return { xs, ys, columns: q, values, sizes };
}

/** Each rectangle starts with the best single part that fits it. */
function setSingles(plates: PlateValues): void {
  const { xs, ys, columns, values, sizes } = plates;
  for (const { length, width, value } of sizes) {
    const i = ceilIndex(xs, length);
    const j = ceilIndex(ys, width);
    if (i < 0 || j < 0) continue;
    const at = i * columns + j;
    values[at] = Math.max(values[at] as number, value);
  }
  for (let i = 0; i < xs.at.length; i++) {
    for (let j = 0; j < columns; j++) {
      const at = i * columns + j;
      const left = i > 0 ? (values[at - columns] as number) : 0;
      const below = j > 0 ? (values[at - 1] as number) : 0;
      values[at] = Math.max(values[at] as number, left, below);
    }
  }
}

/** First position not below a size; -1 when there is none. */
function ceilIndex(positions: Positions, size: number): number {
  if (size >= positions.floor.length) return -1;
  const at = positions.floor[size] as number;
  if (positions.at[at] === size) return at;
  return at + 1 < positions.at.length ? at + 1 : -1;
}

function cutAcross(values: Float64Array, xs: Positions, q: number, i: number): void {
  const size = xs.at[i] as number;
  const row = i * q;
  for (let a = 1; a < i && 2 * (xs.at[a] as number) <= size; a++) {
    const low = a * q;
    const high = (xs.floor[size - (xs.at[a] as number)] as number) * q;
    for (let j = 1; j < q; j++) {
      const sum = (values[low + j] as number) + (values[high + j] as number);
      if (sum > (values[row + j] as number)) values[row + j] = sum;
    }
  }
}

/** For each position the partner of each lower half: one list after the other. */
interface Pairs {
  readonly start: Int32Array;
  readonly high: Int32Array;
}

function pairUp(ys: Positions): Pairs {
  const q = ys.at.length;
  const start = new Int32Array(q + 1);
  const high: number[] = [];
  for (let j = 0; j < q; j++) {
    start[j] = high.length;
    for (let c = 1; c < j && 2 * (ys.at[c] as number) <= (ys.at[j] as number); c++) {
      high.push(ys.floor[(ys.at[j] as number) - (ys.at[c] as number)] as number);
    }
  }
  start[q] = high.length;
  return { start, high: Int32Array.from(high) };
}

function cutAlong(values: Float64Array, pairs: Pairs, q: number, i: number): void {
  const row = i * q;
  for (let j = 1; j < q; j++) {
    let best = values[row + j] as number;
    const from = pairs.start[j] as number;
    const to = pairs.start[j + 1] as number;
    for (let k = from; k < to; k++) {
      const sum =
        (values[row + k - from + 1] as number) + (values[row + (pairs.high[k] as number)] as number);
      if (sum > best) best = sum;
    }
    values[row + j] = best;
  }
}

/** Value of the best pattern in a rectangle. */
export function plateValue(plates: PlateValues, length: number, width: number): number {
  const i = plates.xs.floor[length] as number;
  const j = plates.ys.floor[width] as number;
  return plates.values[i * plates.columns + j] as number;
}

/** The tree of a best pattern in a rectangle, without what stays free. */
export function tracePlate(plates: PlateValues, length: number, width: number): Node {
  return trace(plates, plates.xs.floor[length] as number, plates.ys.floor[width] as number);
}

function trace(plates: PlateValues, i: number, j: number): Node {
  const { xs, ys, columns, values, sizes } = plates;
  const value = values[i * columns + j] as number;
  const node = makeFree(xs.at[i] as number, ys.at[j] as number, 0, 0);
  if (value <= 0) return node;
  const part = sizes.find((s) => s.value === value && s.length <= node.length && s.width <= node.width);
  if (part) {
    node.kind = part.kind;
    node.turned = part.turned;
    node.length = part.length;
    node.width = part.width;
    return node;
  }
  for (let a = 1; a < i && 2 * (xs.at[a] as number) <= node.length; a++) {
    const b = xs.floor[node.length - (xs.at[a] as number)] as number;
    if ((values[a * columns + j] as number) + (values[b * columns + j] as number) !== value) continue;
    node.direction = across;
    node.kids = [trace(plates, a, j), trace(plates, b, j)];
    return node;
  }
  for (let c = 1; c < j && 2 * (ys.at[c] as number) <= node.width; c++) {
    const d = ys.floor[node.width - (ys.at[c] as number)] as number;
    if ((values[i * columns + c] as number) + (values[i * columns + d] as number) !== value) continue;
    node.direction = along;
    node.kids = [trace(plates, i, c), trace(plates, i, d)];
    return node;
  }
  return node;
}
