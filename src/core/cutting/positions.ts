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
