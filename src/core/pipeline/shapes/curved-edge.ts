import type { Point } from '#core/geometry';
import { fitOrdinates, methods } from '#core/measuring';
import { readSpline } from '#core/numerics';
import type { Problem } from '#core/problems';
import type { MeasuredCurve } from '#core/project';
import { formatNumber } from '#core/units';

import type { OrdinateSlip } from '../types.ts';
import { saidOf, shapeFinding } from './shape-findings.ts';

/** A curved edge between two corners, and what to doubt of it. */
export interface CurvedEdge {
  /** Null when the ordinates make no curve. */
  readonly curve: readonly Point[] | null;
  readonly sigma: number;
  readonly slips: readonly OrdinateSlip[];
  readonly findings: readonly Problem[];
}

/** Steps along a curve, mm: on a radius of 300 a chord of 10 strays by 0.04. */
const step = 10;
const mostSteps = 400;
/** Nearer to a corner than this an ordinate is the corner's own, mm. */
const atCorner = 1;

/** The curve through the ordinates of an edge from one corner to the next, both on it; outwards is right of the way. Joinery A6. */
export function curveEdge(curve: MeasuredCurve, from: Point, to: Point): CurvedEdge {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const sigma = curve.sigma ?? methods.M9.sigma(0);
  const inner = curve.ordinates.filter(({ at }) => at > atCorner && at < chord - atCorner);
  const knots = [{ at: 0, value: 0 }, ...inner, { at: chord, value: 0 }];
  const fitted = fitOrdinates({
    stations: knots.map(({ at }) => at),
    ordinates: knots.map(({ value }) => value),
    sigma,
  });
  const subject = `Curve ${curve.from}–${curve.to}, its first corner counted as ordinate 1`;
  const ends = findOffEnds(curve, chord, sigma);
  if (!fitted.ok)
    return {
      curve: null,
      sigma,
      slips: [],
      findings: [...ends, ...saidOf(subject, curve.id, fitted.problems)],
    };
  const { spline, doubts, findings } = fitted.value;
  const along = { x: (to.x - from.x) / chord, y: (to.y - from.y) / chord };
  const count = Math.min(mostSteps, Math.max(2, Math.ceil(chord / step)));
  const points = Array.from({ length: count + 1 }, (_, k): Point => {
    const at = (k / count) * chord;
    const out = k === 0 || k === count ? 0 : readSpline(spline, at).value;
    return { x: from.x + along.x * at + along.y * out, y: from.y + along.y * at - along.x * out };
  });
  const places = inner.map((ordinate) => curve.ordinates.indexOf(ordinate));
  return {
    curve: points,
    sigma,
    slips: doubts.map((doubt) => ({
      item: curve.id,
      at: doubt.at.flatMap((k) => places[k - 1] ?? []),
      slip: doubt.slip,
    })),
    findings: [...ends, ...saidOf(subject, curve.id, findings)],
  };
}

/** Ordinates that belong to no place on the edge: beyond its ends, or at a corner but not on it. */
function findOffEnds(
  { id, from, to, ordinates }: MeasuredCurve,
  chord: number,
  sigma: number,
): readonly Problem[] {
  return ordinates.flatMap(({ at, value }): Problem[] => {
    const isEnd = Math.abs(at) <= atCorner || Math.abs(at - chord) <= atCorner;
    if (isEnd && Math.abs(value) > 3 * sigma)
      return [
        shapeFinding('warn', 'curve-misses-corner', id, {
          message: `Curve ${from}–${to}: the ordinate at ${formatNumber(at)} is ${formatNumber(value)}, but the corner there is on the straight line.`,
          remedy:
            'Count the ordinates from the straight line between the two corners, or name the corner where the curve begins.',
          source: 'joinery A6',
        }),
      ];
    if (isEnd || (at > 0 && at < chord)) return [];
    return [
      shapeFinding('stop', 'station-beyond-corner', id, {
        message: `Curve ${from}–${to}: the station at ${formatNumber(at)} lies beyond the corner, which is ${formatNumber(chord)} away.`,
        remedy:
          'Look from which corner the stations were counted, and whether the two corners are the right ones.',
        source: 'joinery A6',
      }),
    ];
  });
}
