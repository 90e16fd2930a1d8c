import { makePlacer } from './find-place.ts';
import type { Seeking } from './find-place.ts';
import { isClashing, totalLoss } from './losses.ts';
import type { Nest } from './nest.ts';
import { restore, takeSnapshot } from './snapshot.ts';
import type { Snapshot } from './snapshot.ts';
import { levelWeights, reweigh } from './weights.ts';

/** How long clashes are worked at before giving up. */
export interface Patience {
  /** Rounds without a better total before a new start from the best. */
  readonly rounds: number;
  /** New starts without a better total before giving up. */
  readonly strikes: number;
  readonly seeking: Seeking;
}

export interface Separation {
  /** True when nothing clashes any more. */
  readonly free: boolean;
  /** The least total, where the nest was left. */
  readonly loss: number;
}

/** A total below this share of the best is worth more patience. */
const notable = 0.98;

/**
 * Moves clashing parts to where they clash least, weighing stubborn pairs more each round (guided local search), until
 * nothing clashes, patience ends or time does. The nest is left at the least total found.
 */
export function separate(nest: Nest, patience: Patience, isOver: () => boolean): Separation {
  const move = makePlacer(nest, patience.seeking);
  levelWeights(nest);
  for (let i = 0; i < nest.count; i++) if (nest.sheet[i]! < 0) move(i);
  let best: Snapshot = takeSnapshot(nest);
  let bestLoss = totalLoss(nest);
  for (let strikes = 0; strikes < patience.strikes && bestLoss > 0 && !isOver(); strikes++) {
    const before = bestLoss;
    for (let idle = 0; idle < patience.rounds && bestLoss > 0 && !isOver(); idle++) {
      moveClashing(nest, move, isOver);
      const loss = totalLoss(nest);
      reweigh(nest);
      if (loss >= bestLoss) continue;
      if (loss < notable * bestLoss) idle = 0;
      bestLoss = loss;
      best = takeSnapshot(nest);
    }
    if (bestLoss < notable * before) strikes = -1;
    restore(nest, best);
  }
  return {
    free: bestLoss === 0 && nest.sheet.every((sheet, i) => i >= nest.count || sheet >= 0),
    loss: bestLoss,
  };
}

function moveClashing(nest: Nest, move: (i: number) => void, isOver: () => boolean): void {
  const clashing: number[] = [];
  for (let i = 0; i < nest.count; i++) if (nest.sheet[i]! < 0 || isClashing(nest, i)) clashing.push(i);
  for (let k = clashing.length - 1; k > 0; k--) {
    const other = nest.random.whole(0, k);
    [clashing[k], clashing[other]] = [clashing[other]!, clashing[k]!];
  }
  for (const i of clashing) {
    if (isOver()) return;
    if (nest.sheet[i]! < 0 || isClashing(nest, i)) move(i);
  }
}
