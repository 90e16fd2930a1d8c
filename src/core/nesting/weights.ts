import { listClashing } from './losses.ts';
import type { Nest } from './nest.ts';

/** Weights of clashing pairs grow by these factors, the worst by the larger; those of free pairs shrink back to 1. */
const growth = { least: 1.2, most: 1.6 } as const;
const fading = 0.97;
/** A pair weighs no more than this, so that weights stay finite and fade in reasonable time. */
const heaviest = 1e6;

/** Every pair weighs the same again. */
export function levelWeights({ weight, heavy, all }: Nest): void {
  for (const k of heavy) {
    weight[k] = 1;
    weight[mirrored(k, all)] = 1;
  }
  heavy.length = 0;
}

/** Makes clashing pairs weigh more and the others less. */
export function reweigh(nest: Nest): void {
  fade(nest);
  const { all, loss, weight, heavy } = nest;
  const pairs = listClashing(nest);
  let worst = 0;
  for (const k of pairs) if (loss[k]! > worst) worst = loss[k]!;
  for (const k of pairs) {
    const before = weight[k]!;
    if (before === 1) heavy.push(k);
    const factor = growth.least + ((growth.most - growth.least) * loss[k]!) / worst;
    weight[k] = Math.min(heaviest, before * factor);
    weight[mirrored(k, all)] = weight[k];
  }
}

/** The same pair the other way round. */
function mirrored(k: number, all: number): number {
  return (k % all) * all + Math.floor(k / all);
}

function fade({ all, loss, weight, heavy }: Nest): void {
  let kept = 0;
  for (const k of heavy) {
    if (loss[k] === 0) {
      const next = Math.max(1, weight[k]! * fading);
      weight[k] = next;
      weight[mirrored(k, all)] = next;
      if (next === 1) continue;
    }
    heavy[kept++] = k;
  }
  heavy.length = kept;
}
