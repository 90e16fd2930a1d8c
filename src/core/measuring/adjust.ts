import type { Shape, ShapeEdge } from '#core/geometry';
import type { Problem } from '#core/problems';
import { adviseReading } from './advice.ts';
import { openingEdges } from './opening.ts';
import { adjustNetwork } from './adjust-network.ts';
import type { Found } from './adjust-network.ts';
import { checkSurvey, usableReadings } from './check-survey.ts';
import { alignToDatum, datumOf, firstOffAxis, mirrorPosition, openingCorners } from './datum.ts';
import type { Datum } from './datum.ts';
import { findAll } from './findings.ts';
import { edgeKey, unitOf } from './network.ts';
import type { Position } from './network.ts';
import type { AnalysedFit } from './solve.ts';
import { networkOf } from './study.ts';
import type { Study } from './study.ts';
import { findSuspects, smallestSlip } from './suspects.ts';
import type { AdjustedReading, Adjustment, Reading, Survey } from './types.ts';
import { findLoosePoints, tellUndetermined } from './undetermined.ts';

/** What a survey comes to: the answer of `measure`, and the shape for the pieces. */
export interface SurveyOutcome {
  readonly adjustment: Adjustment;
  /** An opening with all four corners begins at BL with its sill along x. Null when the readings do not fix it. */
  readonly shape: Shape | null;
}

const opening = { origin: 'BL', along: 'BR' } as const satisfies Datum;

/**
 * The shape that fits the readings best, its uncertainty, and what to doubt. Nothing is corrected: a suspected slip stays
 * in. Weighted least squares with Baarda's tests, joinery A2 to A5.
 */
export function adjustSurvey(survey: Survey): SurveyOutcome {
  const problems = checkSurvey(survey);
  const readings = usableReadings(survey);
  const datum = datumOf(readings);
  if (datum === null) return { adjustment: emptyAdjustment(survey, problems), shape: null };
  const found = adjustNetwork({ network: networkOf(readings, datum), datum });
  const doubt = { fit: found.fit, datum, readings };
  const loose = findLoosePoints(found.fit);
  const verdict = findSuspects(doubt);
  const known = { survey, readings, found, datum, loose, verdict };
  const study: Study = { ...known, advice: adviseReading(known) };
  const adjustment: Adjustment = {
    seenFrom: survey.seenFrom,
    points: tellPoints(found.fit, loose.points),
    tilt: tellTilt(found.fit, loose.tilt),
    readings: found.fit.residuals.map((_, at) => tellReading(found.fit, at)),
    dof: found.fit.dof,
    chi2: found.fit.chi2,
    suspects: verdict.suspects,
    undetermined: tellUndetermined(found.fit, readings, loose),
    advice: study.advice,
    findings: [...problems, ...findAll(study)],
  };
  return { adjustment, shape: loose.points.length > 0 ? null : makeShape(survey, readings, found) };
}

function emptyAdjustment(survey: Survey, findings: readonly Problem[]): Adjustment {
  const undetermined = survey.readings.length === 0 ? [] : ['Nothing is fixed yet: no reading can be used.'];
  const advice = 'Measure the bottom width first.';
  const none = { points: [], readings: [], suspects: [], tilt: null, dof: 0, chi2: 0 };
  return { seenFrom: survey.seenFrom, ...none, undetermined, advice, findings };
}

/** Position as the contract shows it: the first point named off the axis has y above 0, unless readings tell left from right. */
function shownPosition(fit: AnalysedFit): Position {
  if (fit.network.observations.some(({ measure }) => measure === 'offset' || measure === 'angle'))
    return fit.position;
  const first = firstOffAxis(fit.position, fit.network.points);
  return first !== undefined && (fit.position.points[first]?.y ?? 0) < 0
    ? mirrorPosition(fit.position)
    : fit.position;
}

function tellPoints(fit: AnalysedFit, loose: readonly string[]): Adjustment['points'] {
  const shown = shownPosition(fit);
  return fit.network.points
    .filter((id) => !loose.includes(id))
    .map((id) => {
      const { x, y } = shown.points[id] ?? { x: 0, y: 0 };
      return { id, x, y, sx: deviationOf(fit, id, 'x'), sy: deviationOf(fit, id, 'y') };
    });
}

function deviationOf(fit: AnalysedFit, point: string, axis: 'x' | 'y'): number {
  return Math.sqrt(Math.max(0, covarianceOf(fit, [point, axis], [point, axis])));
}

/** Covariance of two coordinates, 0 where one is held. */
function covarianceOf(fit: AnalysedFit, a: Coordinate, b: Coordinate): number {
  const [i, j] = [rowOf(fit, a), rowOf(fit, b)];
  return i < 0 || j < 0 ? 0 : (fit.analysis.covariance[i]?.[j] ?? 0);
}

type Coordinate = readonly [point: string, axis: 'x' | 'y'];

function rowOf(fit: AnalysedFit, [point, axis]: Coordinate): number {
  return fit.unknowns.findIndex((u) => 'point' in u && u.point === point && u.axis === axis);
}

function tellTilt(fit: AnalysedFit, loose: boolean): number | null {
  return fit.network.tiltFree && !loose ? angleInDegrees(shownPosition(fit).tilt) : null;
}

/** Rounding of the last step is not an angle. */
function angleInDegrees(radians: number): number {
  return Math.abs(radians) < 1e-15 ? 0 : (radians * 180) / Math.PI;
}

function tellReading(fit: AnalysedFit, at: number): AdjustedReading {
  const seen = fit.network.observations[at];
  if (!seen) throw new Error(`no observation ${at}`);
  const unit = unitOf(seen);
  const residual = (fit.residuals[at] ?? 0) / unit;
  const redundancy = fit.redundancy[at] ?? 0;
  const { id } = seen;
  const [value, sigma] = [seen.value / unit, seen.sigma / unit];
  const normalised = fit.normalised[at] ?? null;
  const found = smallestSlip(sigma, redundancy);
  return {
    id,
    value,
    sigma,
    adjusted: value - residual,
    residual,
    redundancy,
    normalised,
    smallestSlip: found,
  };
}

function makeShape(survey: Survey, readings: readonly Reading[], found: Found): Shape {
  const fit = fitForShape(readings, found);
  const names = fit.network.points;
  const coordinates = names.flatMap((name): Coordinate[] => [
    [name, 'x'],
    [name, 'y'],
  ]);
  return {
    seenFrom: survey.seenFrom,
    points: Object.fromEntries(names.map((name) => [name, fit.position.points[name] ?? { x: 0, y: 0 }])),
    edges: edgesOf(names).map((edge) => bowed(edge, fit.position.bows?.[edgeKey(edge)])),
    order: coordinates.map((coordinate) => coordinate.join('.')),
    covariance: coordinates.map((a) => coordinates.map((b) => covarianceOf(fit, a, b))),
    tilt: fit.network.tiltFree ? fit.position.tilt : 0,
  };
}

/** An opening is hung on its sill whatever was measured first, so that left stays left for the pieces. */
function fitForShape(readings: readonly Reading[], found: Found): AnalysedFit {
  const { fit } = found;
  const whole = openingCorners.every((corner) => fit.network.points.includes(corner));
  const hung = fit.network.held['BL']?.x === 0 && fit.network.held['BR']?.y === 0;
  if (!whole || hung) return fit;
  const start = alignToDatum(fit.position, opening);
  return adjustNetwork({ network: networkOf(readings, opening), datum: opening, start }).fit;
}

function bowed(edge: ShapeEdge, bow: number | undefined): ShapeEdge {
  return bow === undefined ? edge : { ...edge, bow };
}

function edgesOf(names: readonly string[]): readonly ShapeEdge[] {
  if (openingCorners.every((corner) => names.includes(corner))) return openingEdges;
  if (names.length === 2) return [{ name: names.join('–'), from: names[0] ?? '', to: names[1] ?? '' }];
  return names.map((from, k) => {
    const to = names[(k + 1) % names.length] ?? from;
    return { name: `${from}–${to}`, from, to };
  });
}
