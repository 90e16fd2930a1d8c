/** All there is to know to list the ways to cut a board that a plan of so many boards can hold. */
export interface RowList {
  readonly length: number;
  readonly lengths: Int32Array;
  readonly counts: ArrayLike<number>;
  /** What each part is worth in boards; no board holds more than 1. */
  readonly worths: Float64Array;
  /** Less worth than 1 by so much at the most. */
  readonly gap: number;
  /** More rows than this are too many. */
  readonly most: number;
  /** More choices than this are too many. */
  readonly mostTries: number;
}

/** Which kinds are in a row and how often: two lists of one length. */
export interface ListedRow {
  readonly rows: readonly number[];
  readonly counts: readonly number[];
}

interface Listing {
  readonly list: RowList;
  /** Kinds, longest first. */
  readonly order: readonly number[];
  /** The most worth that kinds from a rank on bring into each length. */
  readonly reach: readonly Float64Array[];
  readonly taken: Int32Array;
  readonly found: ListedRow[];
  tries: number;
}

/**
 * Every row of parts to which none can be added and that is worth at most `gap` less than a board. Where all losses of a
 * plan come to no more than that, it is made of such rows, some parts more than once. Null when they are too many.
 */
export function enumerateRows(list: RowList): readonly ListedRow[] | null {
  const { lengths } = list;
  const order = Array.from(lengths.keys()).sort((a, b) => (lengths[b] as number) - (lengths[a] as number));
  const listing: Listing = {
    ...{ list, order, reach: reachByRank(list, order), found: [] },
    ...{ taken: new Int32Array(lengths.length), tries: list.mostTries },
  };
  return goOn(listing, 0, { space: list.length, worth: 0 }) ? listing.found : null;
}

/** Chooses how many of the kind at a rank; false when it became too much. */
function goOn(listing: Listing, rank: number, { space, worth }: { space: number; worth: number }): boolean {
  const { list, order, reach, taken, found } = listing;
  if (--listing.tries < 0) return false;
  if (worth + ((reach[rank] as Float64Array)[space] as number) < 1 - list.gap) return true;
  if (rank === order.length) {
    if (isFull(listing, space)) found.push(readTaken(taken));
    return found.length <= list.most;
  }
  const row = order[rank] as number;
  const length = list.lengths[row] as number;
  let count = Math.min(list.counts[row] as number, Math.floor(space / length));
  let isFine = true;
  for (; count >= 0 && isFine; count--) {
    taken[row] = count;
    const rest = { space: space - count * length, worth: worth + count * (list.worths[row] as number) };
    isFine = goOn(listing, rank + 1, rest);
  }
  taken[row] = 0;
  return isFine;
}

function isFull({ list, taken }: Listing, space: number): boolean {
  return list.lengths.every(
    (length, row) => length > space || (taken[row] as number) >= (list.counts[row] as number),
  );
}

function readTaken(taken: Int32Array): ListedRow {
  const rows = Array.from(taken.keys()).filter((row) => (taken[row] as number) > 0);
  return { rows, counts: rows.map((row) => taken[row] as number) };
}

function reachByRank({ length, lengths, counts, worths }: RowList, order: readonly number[]): Float64Array[] {
  const reach = [new Float64Array(length + 1)];
  for (const row of [...order].reverse()) {
    const best = (reach.at(-1) as Float64Array).slice();
    const size = lengths[row] as number;
    const copies = Math.min(counts[row] as number, Math.floor(length / size));
    for (let c = 0; c < copies; c++) takeOne(best, size, worths[row] as number);
    reach.push(best);
  }
  return reach.reverse();
}

function takeOne(best: Float64Array, size: number, worth: number): void {
  for (let x = best.length - 1; x >= size; x--) {
    const value = (best[x - size] as number) + worth;
    if (value > (best[x] as number)) best[x] = value;
  }
}
