import type { SparseRow } from './sparse-rows.ts';

/** An unknown that meets this many times more others than is usual is a hub: it goes last, where it costs one long row. */
const hub = 6;

/**
 * The place of each unknown in an order that keeps those that meet in a row near each other, so that the triangle of the
 * normal equations stays narrow. Reverse Cuthill-McKee, begun at an unknown far from the middle (George and Liu 1981,
 * Computer Solution of Large Sparse Positive Definite Systems, ch. 4, from memory).
 */
export function orderUnknowns(rows: readonly SparseRow[], count: number): Int32Array {
  const neighbours = neighboursOf(rows, count);
  const usual = neighbours.reduce((sum, set) => sum + set.length, 0) / Math.max(1, count);
  const isHub = neighbours.map((set) => set.length > hub * (usual + 1));
  const taken = new Uint8Array(count);
  isHub.forEach((is, k) => (taken[k] = Number(is)));
  const order: number[] = [];
  for (let k = 0; k < count; k += 1)
    if (taken[k] === 0) order.push(...walkFrom(farEnd(k, neighbours, isHub), neighbours, taken));
  order.reverse();
  isHub.forEach((is, k) => is && order.push(k));
  const place = new Int32Array(count);
  order.forEach((k, at) => (place[k] = at));
  return place;
}

type Neighbours = readonly (readonly number[])[];

function neighboursOf(rows: readonly SparseRow[], count: number): Neighbours {
  const sets = Array.from({ length: count }, () => new Set<number>());
  for (const { columns } of rows) for (const a of columns) columns.forEach((b) => a !== b && sets[a]?.add(b));
  return sets.map((set) => [...set]);
}

/** Breadth first, those with few neighbours before those with many; marks what it takes. */
function walkFrom(start: number, neighbours: Neighbours, taken: Uint8Array): readonly number[] {
  const walk = [start];
  taken[start] = 1;
  for (let at = 0; at < walk.length; at += 1) {
    const next = (neighbours[walk[at] ?? 0] ?? []).filter((k) => taken[k] === 0);
    next.sort((a, b) => (neighbours[a]?.length ?? 0) - (neighbours[b]?.length ?? 0) || a - b);
    for (const k of next) {
      taken[k] = 1;
      walk.push(k);
    }
  }
  return walk;
}

/** An unknown as far as can be from where one begins: the end of two walks. */
function farEnd(start: number, neighbours: Neighbours, isHub: readonly boolean[]): number {
  let end = start;
  for (let walks = 0; walks < 2; walks += 1) {
    const walk = walkFrom(
      end,
      neighbours,
      Uint8Array.from(isHub, (is) => Number(is)),
    );
    end = walk[walk.length - 1] ?? end;
  }
  return end;
}
