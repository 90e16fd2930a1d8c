import { analyseDesign, solveDamped } from '#core/numerics';
import type { DesignAnalysis } from '#core/numerics';
import { unknownsOf } from './network.ts';
import type { Network, Observation, Position, Unknown } from './network.ts';
import { designRow, missOf } from './predict.ts';

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
  readonly analysis: DesignAnalysis;
  /** Readings less what they determine. */
  readonly dof: number;
  /** Share of a slip that shows in the reading's own residual. */
  readonly redundancy: readonly number[];
  /** Residual over its own standard deviation; null when nothing checks the reading. */
  readonly normalised: readonly (number | null)[];
}

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
  const unknowns = unknownsOf(network);
  let best = evaluate(network, start);
  let damping = 1e-3;
  for (let step = 0; step < steps && damping < 1e12 && unknowns.length > 0; step += 1) {
    const place = takeStep(best, unknowns, damping);
    const next = place === null ? null : evaluate(network, place);
    if (next === null || !(next.chi2 < best.chi2)) {
      if (next !== null && next.chi2 - best.chi2 <= arrived * best.chi2 + still) break;
      damping = damping < 1e-6 ? 1e-3 : damping * 10;
      continue;
    }
    const gain = best.chi2 - next.chi2;
    best = next;
    damping = damping < 1e-9 ? 0 : damping / 30;
    if (gain <= arrived * best.chi2 + still) break;
  }
  return best;
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
function takeStep(fit: Fit, unknowns: readonly Unknown[], damping: number): Position | null {
  const { network, position, residuals } = fit;
  const design = weightedDesign(network, position, unknowns);
  const right = residuals.map((v, i) => v / sigmaAt(network, i));
  const step = solveDamped(design, right, Math.max(damping, leastDamping));
  return step === null ? null : moveBy(position, unknowns, step);
}

function sigmaAt(network: Network, at: number): number {
  return network.observations[at]?.sigma ?? 1;
}

/** Design rows divided by the sigma of their reading. */
export function weightedDesign(
  network: Network,
  position: Position,
  unknowns: readonly Unknown[],
): readonly (readonly number[])[] {
  return network.observations.map((seen) => weightedRow(seen, position, unknowns));
}

/** One design row divided by the sigma of its reading. */
export function weightedRow(
  seen: Observation,
  position: Position,
  unknowns: readonly Unknown[],
): readonly number[] {
  return designRow(seen, position, unknowns).map((value) => value / seen.sigma);
}

function moveBy(position: Position, unknowns: readonly Unknown[], change: readonly number[]): Position {
  const points: Record<string, { x: number; y: number }> = {};
  for (const [name, point] of Object.entries(position.points)) points[name] = { ...point };
  const bows: Record<string, number> = { ...position.bows };
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
    const point = points[unknown.point];
    if (point) point[unknown.axis] += amount;
  });
  return { points, tilt, bows };
}

/** Rank, covariance and redundancy of a fit at its position. */
export function analyseFit(fit: Fit): AnalysedFit {
  const unknowns = unknownsOf(fit.network);
  const design = weightedDesign(fit.network, fit.position, unknowns);
  const analysis = analyseDesign(design, unknowns.length);
  const redundancy = fit.residuals.map((_, i) => clampShare(analysis.residualCovariance[i]?.[i] ?? 0));
  return {
    ...fit,
    unknowns,
    analysis,
    dof: fit.residuals.length - analysis.rank,
    redundancy,
    normalised: fit.residuals.map((v, i) => {
      const share = redundancy[i] ?? 0;
      return share < unchecked ? null : v / (sigmaAt(fit.network, i) * Math.sqrt(share));
    }),
  };
}

function clampShare(share: number): number {
  return Math.min(1, Math.max(0, share));
}
