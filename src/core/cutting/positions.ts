/** A size that may repeat, up to a count. */
export interface Repeated {
  readonly size: number;
  readonly count: number;
}

/** Places where a cut may lie: sums of sizes up to a limit, and for each whole number the last place not beyond it. */
export interface Positions {
  readonly at: Int32Array;
  readonly floor: Int32Array;
}

/**
 * Sums of the sizes, each used at most its count, from 0 to the limit. Any guillotine pattern can be pushed to the low
 * corner until all its cuts lie there (Herz 1972; Christofides & Whitlock 1977, from memory).
 */
export function findPositions(sizes: readonly Repeated[], limit: number): Positions {
  const reached = new Uint8Array(limit + 1);
  reached[0] = 1;
  for (const { size, count } of sizes) if (size <= limit) addSums(reached, size, count);
  let n = 0;
  for (let x = 0; x <= limit; x++) n += reached[x] as number;
  const at = new Int32Array(n);
  const floor = new Int32Array(limit + 1);
  let last = -1;
  for (let x = 0; x <= limit; x++) {
    if (reached[x]) at[++last] = x;
    floor[x] = last;
  }
  return { at, floor };
}

/** Marks what becomes reachable with up to `count` more of one size. */
function addSums(reached: Uint8Array, size: number, count: number): void {
  const limit = reached.length - 1;
  if (count * size >= limit) {
    for (let x = size; x <= limit; x++) if (reached[x - size]) reached[x] = 1;
    return;
  }
  // how many of this size the sum at x needs; the fewest along each residue
  const needs = new Int32Array(limit + 1);
  for (let x = size; x <= limit; x++) {
    if (reached[x] || !reached[x - size]) continue;
    const uses = (needs[x - size] as number) + 1;
    if (uses > count) continue;
    reached[x] = 1;
    needs[x] = uses;
  }
}

/**
 * Some of the places only, those that the fewest sizes sum to: patterns cut there can be cut, though not every pattern
 * is among them. All of them when there are no more than `most`.
 */
export function thinPositions(sizes: readonly number[], limit: number, most: number): Positions {
  const fewest = new Int32Array(limit + 1).fill(limit + 1);
  fewest[0] = 0;
  for (const size of new Set(sizes)) {
    for (let x = size; x <= limit; x++) {
      fewest[x] = Math.min(fewest[x] as number, (fewest[x - size] as number) + 1);
    }
  }
  const all = Array.from(fewest.keys()).filter((x) => (fewest[x] as number) <= limit);
  all.sort((a, b) => (fewest[a] as number) - (fewest[b] as number) || a - b);
  const last = fewest[all[Math.min(most, all.length) - 1] as number] as number;
  const sure = all.filter((x) => (fewest[x] as number) < last);
  const next = all.filter((x) => (fewest[x] as number) === last);
  const stride = next.length / Math.max(1, Math.min(next.length, most - sure.length));
  for (let i = 0; i < next.length; i += stride) sure.push(next[Math.floor(i)] as number);
  return placesAt(sure, limit);
}

function placesAt(places: readonly number[], limit: number): Positions {
  const at = Int32Array.from(new Set(places)).sort();
  const floor = new Int32Array(limit + 1);
  let last = 0;
  for (let x = 0; x <= limit; x++) {
    if (at[last + 1] === x) last++;
    floor[x] = last;
  }
  return { at, floor };
}
