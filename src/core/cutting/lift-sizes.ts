import type { Repeated } from './positions.ts';

/**
 * Sizes of one side on a grid of `cells`, each as large as can be while every row of parts that fits the whole still
 * does: down to the grid first, then up one after the other. A dual feasible function made for the sizes of the job
 * (Fekete & Schepers 2001, from memory); a row holds no size more often than it is wanted.
 */
export function liftSizes(sizes: readonly Repeated[], whole: number, cells: number): Int32Array {
  const lifted = Int32Array.from(sizes, ({ size }) => Math.floor((size * cells) / whole));
  const fitting = sizes.map((_, i) => i).filter((i) => (sizes[i] as Repeated).size <= whole);
  liftAmong({ sizes, lifted, cells }, fitting, new Int32Array(whole + 1));
  return lifted;
}

interface Side {
  readonly sizes: readonly Repeated[];
  readonly lifted: Int32Array;
  readonly cells: number;
}

/** Lifts some sizes beside all others: of every length `beside` holds the largest lifted sum of a row of those others. */
function liftAmong(side: Side, some: readonly number[], beside: Int32Array): void {
  if (some.length <= 1) {
    for (const i of some) liftOne(side, i, beside);
    return;
  }
  const half = some.length >> 1;
  const [first, second] = [some.slice(0, half), some.slice(half)];
  liftAmong(side, first, withRows(side, second, beside));
  liftAmong(side, second, withRows(side, first, beside));
}

function liftOne({ sizes, lifted, cells }: Side, i: number, beside: Int32Array): void {
  const { size, count } = sizes[i] as Repeated;
  const whole = beside.length - 1;
  const most = Math.min(count, Math.floor(whole / size));
  let limit = cells;
  for (let m = 1; m <= most; m++) {
    limit = Math.min(limit, Math.floor((cells - (beside[whole - m * size] as number)) / m));
  }
  lifted[i] = Math.max(lifted[i] as number, limit);
}

/** The same sums where some more sizes may be in the row. */
function withRows({ sizes, lifted }: Side, some: readonly number[], beside: Int32Array): Int32Array {
  const best = beside.slice();
  for (const i of some) {
    const { size, count } = sizes[i] as Repeated;
    const gain = lifted[i] as number;
    if (gain === 0) continue;
    if (count >= Math.floor((best.length - 1) / size)) addFreely(best, size, gain);
    else addLots(best, { size, count }, gain);
  }
  return best;
}

function addFreely(best: Int32Array, size: number, gain: number): void {
  for (let x = size; x < best.length; x++) {
    const sum = (best[x - size] as number) + gain;
    if (sum > (best[x] as number)) best[x] = sum;
  }
}

/** Up to `count` of one size, in lots of which every number is a sum. */
function addLots(best: Int32Array, { size, count }: Repeated, gain: number): void {
  let rest = count;
  for (let copies = 1; rest > 0; copies *= 2) {
    const take = Math.min(copies, rest);
    rest -= take;
    for (let x = best.length - 1; x >= take * size; x--) {
      const sum = (best[x - take * size] as number) + take * gain;
      if (sum > (best[x] as number)) best[x] = sum;
    }
  }
}
