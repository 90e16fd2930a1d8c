import type { SparseRow } from './sparse-rows.ts';

/**
 * The lower triangle L with L Lᵀ = N, N the normal equations in the order of `place`; of each row only what lies between its
 * first entry and the diagonal. Unknowns in `held` had no pivot of their own: they are held at 0.
 */
export interface ProfileFactor {
  readonly place: Int32Array;
  readonly first: Int32Array;
  readonly lines: readonly Float64Array[];
  /** By place. */
  readonly held: readonly number[];
}

/** What is added to N, and which pivots count as none. */
export interface FactorOptions {
  readonly place: Int32Array;
  /** Each unknown counts in this unit. */
  readonly scales: Float64Array;
  /** Added to the diagonal of the scaled N. */
  readonly damping: number;
  /** A pivot not above this is none. */
  readonly least: number;
  /** Hold unknowns without a pivot; otherwise the first one ends the work. */
  readonly hold: boolean;
}

/** A pivot that lets its unknown move nowhere. */
const firm = 1e150;

/** Factor of the normal equations of some rows, by their profile; null when an unknown without a pivot may not be held. */
export function factorProfile(rows: readonly SparseRow[], options: FactorOptions): ProfileFactor | null {
  const { place } = options;
  const profile = sumProfile(rows, options);
  const { first, lines } = profile;
  const held: number[] = [];
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i] as Float64Array;
    const pivot = eliminate(profile, i);
    if (pivot > options.least) {
      line[line.length - 1] = Math.sqrt(pivot);
      continue;
    }
    if (!options.hold) return null;
    line.fill(0);
    line[line.length - 1] = firm;
    held.push(i);
  }
  return { place, first, lines, held };
}

interface Profile {
  readonly first: Int32Array;
  readonly lines: readonly Float64Array[];
}

/** AᵀA in the unit of each unknown, with the damping, as far as its profile reaches. */
function sumProfile(rows: readonly SparseRow[], { place, scales, damping }: FactorOptions): Profile {
  const first = Int32Array.from(place, (_, i) => i);
  const at = (k: number) => place[k] ?? 0;
  for (const { columns } of rows) {
    const lowest = columns.reduce((low, k) => Math.min(low, at(k)), place.length);
    for (const k of columns) first[at(k)] = Math.min(first[at(k)] ?? 0, lowest);
  }
  const lines = Array.from(first, (from, i) => new Float64Array(i - from + 1));
  lines.forEach((line) => (line[line.length - 1] = damping));
  for (const row of rows) addProducts({ first, lines }, row, { place, scales });
  return { first, lines };
}

/** Adds the products of the entries of one row. */
function addProducts(
  { first, lines }: Profile,
  { columns, values }: SparseRow,
  { place, scales }: Pick<FactorOptions, 'place' | 'scales'>,
): void {
  const at = Int32Array.from(columns, (k) => place[k] ?? 0);
  const scaled = Float64Array.from(values, (value, p) => value / (scales[columns[p] ?? 0] ?? 1));
  for (let p = 0; p < at.length; p += 1) {
    const i = at[p] as number;
    const line = lines[i] as Float64Array;
    const shift = first[i] ?? 0;
    for (let q = 0; q < at.length; q += 1) {
      const j = at[q] as number;
      if (j <= i)
        line[j - shift] = (line[j - shift] as number) + (scaled[p] as number) * (scaled[q] as number);
    }
  }
}

/** Makes row `i` of L from row `i` of N, all but its diagonal; what is left there. */
function eliminate({ first, lines }: Profile, i: number): number {
  const line = lines[i] as Float64Array;
  const from = first[i] ?? 0;
  let left = line[line.length - 1] ?? 0;
  for (let j = from; j < i; j += 1) {
    const other = lines[j] as Float64Array;
    const start = Math.max(from, first[j] ?? 0);
    const [a, b] = [start - from, start - (first[j] ?? 0)];
    let sum = line[j - from] ?? 0;
    for (let k = 0; k < j - start; k += 1) sum -= (line[a + k] as number) * (other[b + k] as number);
    const entry = sum / (other[other.length - 1] as number);
    line[j - from] = entry;
    left -= entry * entry;
  }
  return left;
}

/** x with L Lᵀ x = right, both in the order of the places; `right` is overwritten and comes back. */
export function solveProfile({ first, lines }: ProfileFactor, right: Float64Array): Float64Array {
  for (let i = 0; i < lines.length; i += 1) {
    const line = lines[i] as Float64Array;
    const from = first[i] ?? 0;
    let sum = right[i] as number;
    for (let k = 0; k < line.length - 1; k += 1) sum -= (line[k] as number) * (right[from + k] as number);
    right[i] = sum / (line[line.length - 1] as number);
  }
  for (let i = lines.length - 1; i >= 0; i -= 1) {
    const line = lines[i] as Float64Array;
    const from = first[i] ?? 0;
    const value = (right[i] as number) / (line[line.length - 1] as number);
    right[i] = value;
    for (let k = 0; k < line.length - 1; k += 1)
      right[from + k] = (right[from + k] as number) - value * (line[k] as number);
  }
  return right;
}

/**
 * The entries of N⁻¹ that lie within the profile, row by row as the factor has them, without the rest of it (Takahashi, Fagan
 * and Chin 1973, from memory).
 */
export function invertWithin({ first, lines }: ProfileFactor): readonly Float64Array[] {
  const inverse = lines.map((line) => new Float64Array(line.length));
  const below = rowsBelow(first);
  const entry = (i: number, j: number): number => {
    const [low, high] = i < j ? [i, j] : [j, i];
    return (inverse[high] as Float64Array)[low - (first[high] ?? 0)] ?? 0;
  };
  for (let j = lines.length - 1; j >= 0; j -= 1) {
    const line = lines[j] as Float64Array;
    const pivot = line[line.length - 1] as number;
    const rows = below[j] ?? [];
    const column = rows.map((k) => (lines[k] as Float64Array)[j - (first[k] ?? 0)] as number);
    for (const i of rows) {
      let sum = 0;
      for (let r = 0; r < rows.length; r += 1) sum -= (column[r] as number) * entry(i, rows[r] as number);
      (inverse[i] as Float64Array)[j - (first[i] ?? 0)] = sum / pivot;
    }
    let own = 1 / pivot;
    for (let r = 0; r < rows.length; r += 1) own -= (column[r] as number) * entry(rows[r] as number, j);
    (inverse[j] as Float64Array)[line.length - 1] = own / pivot;
  }
  return inverse;
}

/** For each place the rows below whose profile reaches it. */
function rowsBelow(first: Int32Array): readonly (readonly number[])[] {
  const below: number[][] = Array.from(first, () => []);
  first.forEach((from, i) => {
    for (let j = from; j < i; j += 1) below[j]?.push(i);
  });
  return below;
}
