import { analyseRows, covarianceTable, descend, orderUnknowns, solveDampedRows } from '#core/numerics';
import type { RowAnalysis, SparseRow } from '#core/numerics';
import { columnsOf, weightedRow } from './columns.ts';
import type { Columns } from './columns.ts';
import type { Network, Position, Unknown } from './network.ts';
import { missOf } from './predict.ts';

/** A position that fits, with what the readings say about it. */
export interface Fit {
  readonly network: Network;
  readonly position: Position;
  /** Observed minus predicted, in the order of the observations. */
  readonly residuals: readonly number[];
  /** Sum of squares of residuals over sigmas. */
  readonly chi2: number;
}

export interface AnalysedFit extends Fit {
  readonly unknowns: readonly Unknown[];
  /** One for each observation, divided by its sigma. */
  readonly rows: readonly SparseRow[];
  readonly analysis: RowAnalysis;
  /** Readings less what they determine. */
  readonly dof: number;
  /** Share of a slip that shows in the reading's own residual. */
  readonly redundancy: readonly number[];
  /** Residual over its own standard deviation; null when nothing checks the reading. */
  readonly normalised: readonly (number | null)[];
}

/** As much of an analysed fit as tells how well its readings guard it. */
export type Weighed = Pick<AnalysedFit, 'network' | 'unknowns' | 'redundancy'> & {
  readonly analysis: Pick<RowAnalysis, 'variances' | 'nullSpace'>;
};

const mostSteps = 60;
/** A step that changes chi-square by less than this share has arrived. */
const arrived = 1e-13;
/** Chi-square below this is rounding of exact readings. */
const still = 1e-18;
/** Redundancy below this is rounding, not a check. */
export const unchecked = 1e-6;

/**
 * The nearest position that fits the observations best, by Gauss-Newton steps damped as by Levenberg and Marquardt
 * (joinery A4). Always comes back, with the best position met.
 */
export function fitFrom(network: Network, start: Position, steps = mostSteps): Fit {
  const columns = columnsOf(network);
  const known = { columns, place: placeOf(network, columns, start) };
  const from = evaluate(network, start);
  if (columns.unknowns.length === 0) return from;
  const limits = { steps, arrived, still };
  return descend(
    { sum: from.chi2, fit: from },
    ({ fit }, damping) => {
      const place = takeStep(fit, known, damping);
      if (place === null) return null;
      const next = evaluate(network, place);
      return { sum: next.chi2, fit: next };
    },
    limits,
  ).fit;
}

/** A narrow order of the unknowns, made once for all steps. */
function placeOf(network: Network, columns: Columns, start: Position): Int32Array {
  return orderUnknowns(rowsOf(network, start, columns), columns.unknowns.length);
}

function rowsOf(network: Network, position: Position, columns: Columns): readonly SparseRow[] {
  return network.observations.map((seen) => weightedRow(seen, position, columns));
}

/** Residuals and chi-square of a network at a position. */
export function evaluate(network: Network, position: Position): Fit {
  const residuals = network.observations.map((seen) => missOf(seen, position));
  const chi2 = residuals.reduce((sum, v, i) => sum + (v / sigmaAt(network, i)) ** 2, 0);
  return { network, position, residuals, chi2 };
}

/** Least damping: an undetermined unknown must stay put. */
const leastDamping = 1e-13;

/** The position after one damped step; null when more damping is needed. */
function takeStep(
  { network, position, residuals }: Fit,
  { columns, place }: { readonly columns: Columns; readonly place: Int32Array },
  damping: number,
): Position | null {
  const { unknowns } = columns;
  const rows = rowsOf(network, position, columns);
  const right = residuals.map((v, i) => v / sigmaAt(network, i));
  const options = { count: unknowns.length, damping: Math.max(damping, leastDamping), place };
  const step = solveDampedRows(rows, right, options);
  return step === null ? null : moveBy(position, unknowns, step);
}

function sigmaAt(network: Network, at: number): number {
  return network.observations[at]?.sigma ?? 1;
}

function moveBy(position: Position, unknowns: readonly Unknown[], change: readonly number[]): Position {
  const points: Record<string, { x: number; y: number }> = {};
  for (const [name, point] of Object.entries(position.points)) points[name] = { ...point };
  const bows: Record<string, number> = { ...position.bows };
  const boards = { ...position.boards };
  let tilt = position.tilt;
  unknowns.forEach((unknown, k) => {
    const amount = change[k] ?? 0;
    if ('tilt' in unknown) {
      tilt += amount;
      return;
    }
    if ('bow' in unknown) {
      bows[unknown.bow] = (bows[unknown.bow] ?? 0) + amount;
      return;
    }
    if ('board' in unknown) {
      const place = boards[unknown.board] ?? { x: 0, y: 0, turn: 0 };
      boards[unknown.board] = { ...place, [unknown.part]: place[unknown.part] + amount };
      return;
    }
    const point = points[unknown.point];
    if (point) point[unknown.axis] += amount;
  });
  return { points, tilt, bows, boards };
}

/** Rank, covariance and redundancy of a fit at its position; `quick` for the many fits that are only compared. */
export function analyseFit(fit: Fit, style: 'sure' | 'quick' = 'sure'): AnalysedFit {
  const columns = columnsOf(fit.network);
  const rows = rowsOf(fit.network, fit.position, columns);
  const analysis = analyseRows(rows, columns.unknowns.length, style);
  const redundancy = analysis.redundancy.map(clampShare);
  return {
    ...fit,
    unknowns: columns.unknowns,
    rows,
    analysis,
    dof: fit.residuals.length - analysis.rank,
    redundancy,
    normalised: fit.residuals.map((v, i) => {
      const share = redundancy[i] ?? 0;
      return share < unchecked ? null : v / (sigmaAt(fit.network, i) * Math.sqrt(share));
    }),
  };
}

/** A share below this is rounding. */
const noShare = 1e-12;

function clampShare(share: number): number {
  return share < noShare ? 0 : Math.min(1, share);
}

/** The covariance of all unknowns of a fit, in the order of its columns. */
export function covarianceOf({ analysis }: AnalysedFit): readonly (readonly number[])[] {
  return covarianceTable(analysis);
}
