import type { Model } from './model.ts';

/** The most valuable row of parts in a length, each kind at most as often as wanted. */
export interface Row {
  readonly value: number;
  readonly kinds: readonly number[];
}

/** Several parts of one kind taken together, so that every number of them is a sum of such lots. */
interface Lot {
  readonly kind: number;
  readonly copies: number;
  readonly size: number;
  readonly value: number;
}

/** Bounded knapsack over the length; exact in grid units. */
export function fillBoard(model: Model, prices: Float64Array, length: number): Row {
  const lots = model.kinds.flatMap((kind) => {
    const price = prices[kind.index] as number;
    const most = Math.min(kind.count, Math.floor(length / kind.length));
    return price > 1e-12 ? splitLots(kind.index, kind.length, price, most) : [];
  });
  const best = new Float64Array(length + 1);
  const taken = lots.map((lot) => takeLot(best, lot));
  const kinds: number[] = [];
  let room = length;
  for (let i = lots.length - 1; i >= 0; i--) {
    const lot = lots[i] as Lot;
    if (room < lot.size || !hasBit(taken[i] as Uint8Array, room)) continue;
    for (let c = 0; c < lot.copies; c++) kinds.push(lot.kind);
    room -= lot.size;
  }
  return { value: best[length] as number, kinds };
}

function splitLots(kind: number, size: number, price: number, most: number): readonly Lot[] {
  const lots: Lot[] = [];
  let rest = most;
  for (let copies = 1; rest > 0; copies *= 2) {
    const take = Math.min(copies, rest);
    lots.push({ kind, copies: take, size: take * size, value: take * price });
    rest -= take;
  }
  return lots;
}

/** Offers a lot to every length; answers one bit per length: taken or not. */
function takeLot(best: Float64Array, lot: Lot): Uint8Array {
  const bits = new Uint8Array((best.length >> 3) + 1);
  for (let x = best.length - 1; x >= lot.size; x--) {
    const value = (best[x - lot.size] as number) + lot.value;
    if (value <= (best[x] as number) + 1e-13) continue;
    best[x] = value;
    bits[x >> 3] = (bits[x >> 3] as number) | (1 << (x & 7));
  }
  return bits;
}

function hasBit(bits: Uint8Array, x: number): boolean {
  return (((bits[x >> 3] as number) >> (x & 7)) & 1) === 1;
}
