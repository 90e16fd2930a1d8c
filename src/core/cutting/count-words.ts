/** How often each of some kinds is used, packed into words: a field for each kind, with a bit above it that stays clear. */
export interface CountWords {
  /** Words that one tally takes. */
  readonly words: number;
  /** The bits above the fields. */
  readonly guards: Int32Array;
  /** What makes a field reach the bit above it as soon as it is beyond its limit. */
  readonly spare: Int32Array;
  /** One of each kind, word after word; zeros for a kind that is not counted. */
  readonly ones: Int32Array;
}

/** A word stays clear of its sign. */
const bitsInWord = 30;

/** Lays out fields for the kinds with a limit of at least 1; the others are not counted. */
export function layOutCounts(limits: ArrayLike<number>): CountWords {
  const places: { readonly kind: number; readonly word: number; readonly shift: number }[] = [];
  let word = 0;
  let shift = 0;
  for (let kind = 0; kind < limits.length; kind++) {
    const limit = limits[kind] as number;
    if (limit < 1) continue;
    const room = bitsFor(limit) + 1;
    if (shift + room > bitsInWord) [word, shift] = [word + 1, 0];
    places.push({ kind, word, shift });
    shift += room;
  }
  const words = places.length === 0 ? 0 : word + 1;
  const guards = new Int32Array(words);
  const spare = new Int32Array(words);
  const ones = new Int32Array(limits.length * words);
  for (const { kind, word: at, shift: by } of places) {
    const limit = limits[kind] as number;
    const bits = bitsFor(limit);
    guards[at] = (guards[at] as number) | (1 << (by + bits));
    spare[at] = (spare[at] as number) | ((2 ** bits - 1 - limit) << by);
    ones[kind * words + at] = 1 << by;
  }
  return { words, guards, spare, ones };
}

function bitsFor(limit: number): number {
  return 32 - Math.clz32(limit);
}
