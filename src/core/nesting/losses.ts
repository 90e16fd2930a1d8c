import { layDown } from './nest.ts';
import type { Nest, Place } from './nest.ts';
import { gatherWithin, noOthers } from './weigh-place.ts';

/** Lays a part down and measures its clashes. */
export function putPart(nest: Nest, i: number, place: Readonly<Place>): void {
  layDown(nest, i, place);
  if (nest.where) measurePart(nest, i);
}

/** Measures every clash anew. */
export function measureAll(nest: Nest): void {
  if (!nest.where) return;
  for (let i = 0; i < nest.all; i++) forget(nest, i);
  for (let i = 0; i < nest.count; i++) measure(nest, i, i);
}

/** Measures the clashes of one part with all others anew. */
function measurePart(nest: Nest, i: number): void {
  forget(nest, i);
  measure(nest, i, -1);
}

/** No clash of a part is known any more. */
function forget({ all, words, clashing, loss }: Nest, i: number): void {
  const own = i * words;
  const bit = ~(1 << (i & 31));
  const word = i >> 5;
  for (let w = 0; w < words; w++) {
    for (let bits = clashing[own + w]!; bits !== 0; bits &= bits - 1) {
      const j = 32 * w + 31 - Math.clz32(bits & -bits);
      loss[i * all + j] = 0;
      loss[j * all + i] = 0;
      clashing[j * words + word]! &= bit;
    }
    clashing[own + w] = 0;
  }
}

const near = noOthers();

/** Measures the clashes of a part with those of a number above one. */
function measure(nest: Nest, i: number, above: number): void {
  const { all, words, clash, clashing, pose, sheet, x, y, lies, loss } = nest;
  if (sheet[i]! < 0) return;
  const patch = {
    ...{ sheet: sheet[i]!, left: lies[4 * i]!, low: lies[4 * i + 1]! },
    ...{ right: lies[4 * i + 2]!, high: lies[4 * i + 3]! },
  };
  gatherWithin(nest, i, patch, near);
  clash.cap[0] = Infinity;
  for (let k = 0; k < near.count; k++) {
    const j = near.list[k]!;
    if (j <= above) continue;
    const found = clash.measure(pose[i]!, pose[j]!, x[j]! - x[i]!, y[j]! - y[i]!);
    if (found === 0) continue;
    loss[i * all + j] = found;
    loss[j * all + i] = found;
    clashing[i * words + (j >> 5)]! |= 1 << (j & 31);
    clashing[j * words + (i >> 5)]! |= 1 << (i & 31);
  }
}

/** Whether a part clashes with any. */
export function isClashing({ words, clashing }: Nest, i: number): boolean {
  for (let w = i * words; w < (i + 1) * words; w++) if (clashing[w] !== 0) return true;
  return false;
}

/** All clashes of a part, weighted. */
export function weightedLossOf({ all, words, clashing, loss, weight }: Nest, i: number): number {
  let sum = 0;
  for (let w = 0; w < words; w++) {
    for (let bits = clashing[i * words + w]!; bits !== 0; bits &= bits - 1) {
      const k = i * all + 32 * w + 31 - Math.clz32(bits & -bits);
      sum += loss[k]! * weight[k]!;
    }
  }
  return sum;
}

/** The pairs that clash, each once: i * all + j, i below j. */
export function listClashing({ count, all, words, clashing }: Nest): readonly number[] {
  const pairs: number[] = [];
  for (let at = 0; at < count * words; at++) {
    const i = Math.floor(at / words);
    const from = 32 * (at - i * words);
    for (let bits = clashing[at]!; bits !== 0; bits &= bits - 1) {
      const j = from + 31 - Math.clz32(bits & -bits);
      if (j > i) pairs.push(i * all + j);
    }
  }
  return pairs;
}

/** All clashes, unweighted, each pair once (those with keep-outs included). */
export function totalLoss(nest: Nest): number {
  return listClashing(nest).reduce((sum, k) => sum + nest.loss[k]!, 0);
}
