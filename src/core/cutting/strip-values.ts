import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import { makeFree, other } from './tree.ts';
import type { Node } from './tree.ts';
import type { PricedSize } from './plate-values.ts';

/**
 * The most valuable two-stage pattern in a rectangle, strips cut in one direction and parts out of the strips, trimmed
 * where they are narrower: one knapsack per strip width, one over the strips (Gilmore & Gomory 1965, from memory).
 */
export function valueStrips(
  sizes: readonly PricedSize[],
  room: { readonly length: number; readonly width: number },
  direction: Direction,
): { readonly value: number; readonly tree: Node } {
  // on a fine grid parts go up and room down to a coarser one: the pattern can still be cut
  const coarse = Math.ceil(Math.max(room.length, room.width) / finestTable);
  const alongStrip = (s: Size) => Math.ceil((direction === along ? s.length : s.width) / coarse);
  const acrossStrip = (s: Size) => Math.ceil((direction === along ? s.width : s.length) / coarse);
  const roomAlong = Math.floor((direction === along ? room.length : room.width) / coarse);
  const roomAcross = Math.floor((direction === along ? room.width : room.length) / coarse);
  const useful = sizes
    .filter((s) => s.value > 0 && s.length <= room.length && s.width <= room.width)
    .sort((a, b) => acrossStrip(a) - acrossStrip(b));
  const lineup = fillStrips(useful, alongStrip, acrossStrip, roomAlong);
  const stack = knapsack(
    lineup.map((strip) => ({ size: strip.width, value: strip.value })),
    roomAcross,
  );
  const root = makeFree(room.length, room.width, 0, 0);
  root.direction = direction;
  root.kids = stack.chosen.map((at) => {
    const strip = lineup[at] as Strip;
    const node = makeFree(0, 0, direction, 1);
    node.direction = other(direction);
    node.kids = strip.parts().map((part) => partNode(useful[part] as PricedSize));
    return node;
  });
  return { value: stack.value, tree: root };
}

/** Entries of one knapsack table at most. */
const finestTable = 6000;

interface Size {
  readonly length: number;
  readonly width: number;
}

function partNode(size: PricedSize): Node {
  const node = makeFree(size.length, size.width, across, 2);
  node.kind = size.kind;
  node.turned = size.turned;
  return node;
}

interface Strip {
  readonly width: number;
  readonly value: number;
  readonly parts: () => readonly number[];
}

type Measure = (size: Size) => number;

/** The best strip of each width: parts join in order of width, so one table serves all. */
function fillStrips(
  useful: readonly PricedSize[],
  alongStrip: Measure,
  acrossStrip: Measure,
  room: number,
): readonly Strip[] {
  const best = new Float64Array(room + 1);
  const choice = new Int32Array(room + 1).fill(-1);
  const strips: Strip[] = [];
  useful.forEach((size, at) => {
    const take = alongStrip(size);
    for (let x = take; x <= room; x++) {
      const value = (best[x - take] as number) + size.value;
      if (value <= (best[x] as number) + 1e-12) continue;
      best[x] = value;
      choice[x] = at;
    }
    const next = useful[at + 1];
    if (next && acrossStrip(next) === acrossStrip(size)) return;
    const chosen = choice.slice();
    strips.push({
      width: acrossStrip(size),
      value: best[room] as number,
      parts: () => walkBack(chosen, room, (part) => alongStrip(useful[part] as PricedSize)),
    });
  });
  return strips;
}

/** Reads a filled table backwards: a place without a choice of its own lies beyond the last part. */
function walkBack(choice: Int32Array, room: number, take: (item: number) => number): readonly number[] {
  const chosen: number[] = [];
  let x = room;
  while (x > 0) {
    const item = choice[x] as number;
    if (item < 0) break;
    chosen.push(item);
    x -= take(item);
  }
  return chosen;
}

function knapsack(items: readonly { size: number; value: number }[], room: number) {
  const best = new Float64Array(room + 1);
  const choice = new Int32Array(room + 1).fill(-1);
  items.forEach(({ size, value }, at) => {
    for (let x = size; x <= room; x++) {
      const sum = (best[x - size] as number) + value;
      if (sum <= (best[x] as number) + 1e-12) continue;
      best[x] = sum;
      choice[x] = at;
    }
  });
  const chosen = walkBack(choice, room, (at) => (items[at] as { size: number }).size);
  return { value: best[room] as number, chosen };
}
