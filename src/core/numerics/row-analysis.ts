import { analyseBySingularValues } from './design-analysis.ts';
import { factorProfile, invertWithin, solveProfile } from './profile-factor.ts';
import type { ProfileFactor } from './profile-factor.ts';
import { columnLengths, denseRow } from './sparse-rows.ts';
import type { SparseRow } from './sparse-rows.ts';
import { orderUnknowns } from './unknown-order.ts';

/** What sparse rows, each divided by its sigma, can and cannot tell about their unknowns. */
export interface RowAnalysis {
  readonly rank: number;
  /** Variance of each unknown; of one that is not determined it says nothing. */
  readonly variances: readonly number[];
  /** Of each row: share of an error in it that shows in its own residual. */
  readonly redundancy: readonly number[];
  /** Directions in which the unknowns can move unnoticed, each of unit length in scaled unknowns. */
  readonly nullSpace: readonly (readonly number[])[];
  /** What `spreadOf` and `covarianceTable` work on. */
  readonly inverse:
    | { readonly kind: 'factor'; readonly factor: ProfileFactor; readonly scales: Float64Array }
    | { readonly kind: 'table'; readonly covariance: readonly (readonly number[])[] };
}

/** A column that those before it leave less of than this share (of its square) is hardly determined. */
const plain = 1e-6; // squares lose half the digits: ten are left
/** With more unknowns than this singular values take too long; below it they say best what is open. */
const few = 80;
/** A column left with less than this share counts as dependent on those before it. */
const nothing = 1e-11; // a direction some hundred thousand times less certain than the best one

/**
 * Rank, variances, redundancy and free directions of sparse rows. The cost grows with the width of the profile. Where unknowns
 * are open, `sure` asks singular values, as long as there are not too many; `quick` holds those without a pivot.
 */
export function analyseRows(
  rows: readonly SparseRow[],
  count: number,
  style: 'sure' | 'quick' = 'sure',
): RowAnalysis {
  const scales = columnLengths(rows, count).map((length) => (length > 0 ? length : 1));
  const options = { place: orderUnknowns(rows, count), scales, damping: 0 };
  const sure = factorProfile(rows, { ...options, least: plain, hold: false });
  if (sure !== null) return describe(rows, sure, scales);
  if (count > few || style === 'quick') {
    const factor = factorProfile(rows, { ...options, least: nothing, hold: true });
    if (factor !== null) return describe(rows, factor, scales);
  }
  const { rank, covariance, nullSpace, residualCovariance } = analyseBySingularValues(
    rows.map((row) => denseRow(row, count)),
    count,
  );
  const variances = covariance.map((line, k) => line[k] ?? 0);
  const redundancy = residualCovariance.map((line, k) => line[k] ?? 0);
  return { rank, variances, redundancy, nullSpace, inverse: { kind: 'table', covariance } };
}

function describe(rows: readonly SparseRow[], factor: ProfileFactor, scales: Float64Array): RowAnalysis {
  const { place, first, held } = factor;
  const within = invertWithin(factor);
  const entry = (a: number, b: number): number => {
    const [i, j] = [place[a] ?? 0, place[b] ?? 0];
    const high = Math.max(i, j);
    const value = within[high]?.[Math.min(i, j) - (first[high] ?? 0)] ?? 0;
    return value / ((scales[a] ?? 1) * (scales[b] ?? 1));
  };
  const variances = Array.from(scales, (_, k) => entry(k, k));
  const redundancy = rows.map(({ columns, values }) => {
    let explained = 0;
    columns.forEach((a, p) =>
      columns.forEach((b, q) => (explained += (values[p] ?? 0) * (values[q] ?? 0) * entry(a, b))),
    );
    return 1 - explained;
  });
  const rank = scales.length - held.length;
  const nullSpace = held.map((at) => freeDirection(rows, { factor, scales }, at));
  return { rank, variances, redundancy, nullSpace, inverse: { kind: 'factor', factor, scales } };
}

interface Factored {
  readonly factor: ProfileFactor;
  readonly scales: Float64Array;
}

/** How the other unknowns follow when one that is held moves: all rows then stay as they are. */
function freeDirection(
  rows: readonly SparseRow[],
  { factor, scales }: Factored,
  at: number,
): readonly number[] {
  const { place } = factor;
  const unknown = place.indexOf(at);
  const pull = new Float64Array(place.length);
  for (const { columns, values } of rows) {
    const own = values[columns.indexOf(unknown)] ?? 0;
    if (own === 0) continue;
    columns.forEach((k, p) => {
      const i = place[k] ?? 0;
      const share = ((values[p] ?? 0) / (scales[k] ?? 1)) * (own / (scales[unknown] ?? 1));
      pull[i] = (pull[i] ?? 0) - share;
    });
  }
  for (const i of factor.held) pull[i] = 0;
  const follow = solveProfile(factor, pull);
  follow[at] = 1;
  const length = Math.hypot(...follow);
  return Array.from(scales, (scale, k) => (follow[place[k] ?? 0] ?? 0) / length / scale);
}

/** The covariance of all unknowns with a sum of them, given by its row. */
export function spreadOf({ inverse }: RowAnalysis, { columns, values }: SparseRow): readonly number[] {
  if (inverse.kind === 'table')
    return inverse.covariance.map((line) =>
      columns.reduce((sum, k, p) => sum + (line[k] ?? 0) * (values[p] ?? 0), 0),
    );
  const { factor, scales } = inverse;
  const { place } = factor;
  const right = new Float64Array(place.length);
  columns.forEach((k, p) => (right[place[k] ?? 0] = (values[p] ?? 0) / (scales[k] ?? 1)));
  const solved = solveProfile(factor, right);
  return Array.from(scales, (scale, k) => (solved[place[k] ?? 0] ?? 0) / scale);
}

/** The covariance of all unknowns, as far as they are determined. */
export function covarianceTable(analysis: RowAnalysis): readonly (readonly number[])[] {
  if (analysis.inverse.kind === 'table') return analysis.inverse.covariance;
  return analysis.variances.map((_, k) => spreadOf(analysis, { columns: [k], values: [1] }));
}
