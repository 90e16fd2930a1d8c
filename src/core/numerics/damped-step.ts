import { factorProfile, solveProfile } from './profile-factor.ts';
import { columnLengths, sparseRow } from './sparse-rows.ts';
import type { SparseRow } from './sparse-rows.ts';
import { orderUnknowns } from './unknown-order.ts';

/** As `solveDampedRows`, of a design given with all its entries. */
export function solveDamped(
  design: readonly (readonly number[])[],
  right: readonly number[],
  damping: number,
): readonly number[] | null {
  const count = design[0]?.length ?? 0;
  return solveDampedRows(design.map(sparseRow), right, { count, damping });
}

/**
 * The step x that makes |rows x - right|² + damping |scaled x|² least, with each unknown scaled by the length of its
 * column: one step of Levenberg and Marquardt. Null when rounding leaves no positive pivot: more damping is needed.
 * Normal equations by Cholesky within their profile: quick, and exact enough for a step that is taken again. `place` as
 * `orderUnknowns` gives it, where the same rows are solved again and again.
 */
export function solveDampedRows(
  rows: readonly SparseRow[],
  right: readonly number[],
  {
    count,
    damping,
    place,
  }: { readonly count: number; readonly damping: number; readonly place?: Int32Array },
): readonly number[] | null {
  const lengths = columnLengths(rows, count);
  const largest = lengths.reduce((most, length) => Math.max(most, length), 0);
  if (!(largest > 0)) return null;
  // A column of almost nothing is held still rather than thrown far.
  const scales = lengths.map((length) => Math.max(length, 1e-6 * largest));
  const order = place ?? orderUnknowns(rows, count);
  const factor = factorProfile(rows, { place: order, scales, damping, least: 0, hold: false });
  if (factor === null) return null;
  const slope = new Float64Array(count);
  rows.forEach(({ columns, values }, r) =>
    columns.forEach((k, p) => {
      const i = order[k] ?? 0;
      slope[i] = (slope[i] ?? 0) + ((values[p] ?? 0) * (right[r] ?? 0)) / (scales[k] ?? 1);
    }),
  );
  const step = solveProfile(factor, slope);
  return Array.from(scales, (scale, k) => (step[order[k] ?? 0] ?? 0) / scale);
}
