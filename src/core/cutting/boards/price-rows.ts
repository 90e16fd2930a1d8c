/** Parts to fill boards with: lengths in grid units, how many of each, what each is worth. */
export interface RowParts {
  readonly lengths: Int32Array;
  readonly counts: ArrayLike<number>;
  readonly worths: ArrayLike<number>;
}

export interface FilledRow {
  readonly worth: number;
  /** Which parts and how often, two lists of one length. */
  readonly rows: Int32Array;
  readonly counts: Float64Array;
}

/** Lots of one kind, so that every number of copies is a sum of some. */
interface Lots {
  readonly kinds: number[];
  readonly copies: number[];
}

/** Tables of the bounded knapsack over the length, made once and used again and again. */
export interface RowTables {
  readonly longest: number;
  readonly best: Float64Array;
  bits: Uint32Array;
  lots: Lots;
}

export function makeRowTables(longest: number): RowTables {
  return {
    longest,
    best: new Float64Array(longest + 1),
    bits: new Uint32Array(0),
    lots: { kinds: [], copies: [] },
  };
}

/** Fills the tables: afterwards `readRow` answers the worthiest row for any length. Exact. */
export function priceRows(tables: RowTables, parts: RowParts): void {
  const { longest, best } = tables;
  const lots = splitAll(parts, longest);
  tables.lots = lots;
  const words = (longest >> 5) + 1;
  const size = words * lots.kinds.length;
  if (tables.bits.length < size) tables.bits = new Uint32Array(size + words * 16);
  else tables.bits.fill(0, 0, size);
  best.fill(0);
  for (let l = 0; l < lots.kinds.length; l++) {
    const kind = lots.kinds[l] as number;
    const copies = lots.copies[l] as number;
    const length = (parts.lengths[kind] as number) * copies;
    takeLot(tables, { length, worth: (parts.worths[kind] as number) * copies, from: l * words });
  }
}

/** Offers a lot to every length; one bit per length: taken or not. */
function takeLot(
  { best, bits, longest }: RowTables,
  { length, worth, from }: { readonly length: number; readonly worth: number; readonly from: number },
): void {
  for (let x = longest; x >= length; x--) {
    const value = (best[x - length] as number) + worth;
    if (value <= (best[x] as number) + 1e-13) continue;
    best[x] = value;
    const at = from + (x >> 5);
    bits[at] = (bits[at] as number) | (1 << (x & 31));
  }
}

function splitAll({ lengths, counts, worths }: RowParts, longest: number): Lots {
  const lots: Lots = { kinds: [], copies: [] };
  for (let kind = 0; kind < lengths.length; kind++) {
    const length = lengths[kind] as number;
    if ((worths[kind] as number) <= 1e-12 || length > longest) continue;
    let rest = Math.min(counts[kind] as number, Math.floor(longest / length));
    for (let copies = 1; rest > 0; copies *= 2) {
      lots.kinds.push(kind);
      lots.copies.push(Math.min(copies, rest));
      rest -= copies;
    }
  }
  return lots;
}

/** The worthiest row of a length not above the longest. */
export function readRow(
  { best, bits, lots, longest }: RowTables,
  parts: RowParts,
  length: number,
): FilledRow {
  const words = (longest >> 5) + 1;
  const rows: number[] = [];
  const counts: number[] = [];
  let room = length;
  for (let l = lots.kinds.length - 1; l >= 0; l--) {
    if ((((bits[l * words + (room >> 5)] as number) >>> (room & 31)) & 1) === 0) continue;
    const kind = lots.kinds[l] as number;
    const copies = lots.copies[l] as number;
    room -= (parts.lengths[kind] as number) * copies;
    if (rows.at(-1) === kind) counts[counts.length - 1] = (counts.at(-1) as number) + copies;
    else {
      rows.push(kind);
      counts.push(copies);
    }
  }
  return { worth: best[length] as number, rows: Int32Array.from(rows), counts: Float64Array.from(counts) };
}
