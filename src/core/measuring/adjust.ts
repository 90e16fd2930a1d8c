import type { Shape, ShapeEdge } from '#core/geometry';
import type { Problem } from '#core/problems';
import { adviseReading } from './advice.ts';
import { findAside, summariseAside } from './aside.ts';
import { openingEdges, pointWords } from './opening.ts';
import { adjustNetwork } from './adjust-network.ts';
import { findToConfirm, isAside } from './confirm.ts';
import { checkSurvey, usableFixed, usableReadings } from './check-survey.ts';
import { datumOf, firstOffAxis, mirrorPosition, openingCorners } from './datum.ts';
import { findAll } from './findings.ts';
import { hangShape } from './hang-shape.ts';
import { sigmaOf } from './methods.ts';
import { edgeKey, isSided, namesOf, tellsPoints, unitOf } from './network.ts';
import type { Observation, Position } from './network.ts';
import { covarianceOf } from './solve.ts';
import type { AnalysedFit } from './solve.ts';
import { findRepeats } from './repeats.ts';
import { networkOf } from './study.ts';
import type { Study } from './study.ts';
import { findSuspects, smallestSlip } from './suspects.ts';
import type { AdjustedNumber, AdjustedReading, Adjustment, Survey } from './types.ts';
import { freeCovariance } from './uncertainty.ts';
import { findLoosePoints, tellUndetermined } from './undetermined.ts';

/** What a survey comes to: the answer of `measure`, and the shape for the pieces. */
export interface SurveyOutcome {
  readonly adjustment: Adjustment;
  /** An opening with all four corners begins at BL with its sill along x. Null when the readings do not fix it. */
  readonly shape: Shape | null;
}

/**
 * The shape that fits the readings best, its uncertainty, and what to doubt. Nothing is corrected: a suspected slip stays
 * in. Weighted least squares with Baarda's tests, joinery A2 to A5.
 */
export function adjustSurvey(survey: Survey): SurveyOutcome {
  const problems = checkSurvey(survey);
  const usable = usableReadings(survey);
  const counted = usable.filter((reading) => !isAside(reading));
  const readings = counted.filter(tellsPoints);
  const aside = summariseAside(counted);
  const fixed = usableFixed(survey, readings);
  const datum = fixed.length > 0 ? null : datumOf(readings);
  const remarks = [
    ...findToConfirm(usable),
    ...findAside(aside),
    ...counted.flatMap((r) => (tellsPoints(r) ? [] : findRepeats(r, sigmaOf(r)))),
  ];
  if (datum === null && fixed.length === 0)
    return { adjustment: { ...emptyAdjustment(survey, [...problems, ...remarks]), ...aside }, shape: null };
  const found = adjustNetwork({ network: networkOf(readings, datum ?? fixed, survey.corners), datum });
  const doubt = { fit: found.fit, datum, readings };
  const loose = findLoosePoints(found.fit);
  const verdict = findSuspects(doubt);
  const known = { survey, readings, found, datum, loose, verdict };
  const study: Study = { ...known, advice: adviseReading(known) };
  const adjustment: Adjustment = {
    seenFrom: survey.seenFrom,
    points: tellPoints(found.fit, loose.points, survey),
    tilt: tellTilt(found.fit, loose.tilt),
    readings: tellReadings(found.fit),
    dof: found.fit.dof,
    chi2: found.fit.chi2,
    suspects: verdict.suspects,
    undetermined: tellUndetermined(found.fit, readings, loose),
    advice: study.advice,
    findings: [...problems, ...findAll(study), ...remarks],
    ...aside,
  };
  return { adjustment, shape: loose.points.length > 0 ? null : makeShape(survey, found.fit) };
}

function emptyAdjustment(survey: Survey, findings: readonly Problem[]): Adjustment {
  const [name] = usableReadings(survey).filter(tellsPoints).flatMap(namesOf);
  const why = name === undefined ? 'no reading can be used' : `only the ${pointWords(name)} is named`;
  const undetermined =
    survey.readings.length === 0 ? [] : [`Nothing is fixed yet: ${why}.`.replace('the point', 'point')];
  const advice = 'Measure the bottom width first.';
  const none = { points: [], readings: [], suspects: [], tilt: null, dof: 0, chi2: 0 };
  return { seenFrom: survey.seenFrom, ...none, undetermined, advice, findings };
}

/** Position as the contract shows it: the first point named off the axis has y above 0, unless readings tell left from right. */
function shownPosition(fit: AnalysedFit): Position {
  const origin = Object.values(fit.network.held).filter(({ x }) => x !== undefined);
  if (origin.length > 1 || fit.network.corners || fit.network.observations.some(isSided)) return fit.position;
  const first = firstOffAxis(fit.position, fit.network.points);
  return first !== undefined && (fit.position.points[first]?.y ?? 0) < 0
    ? mirrorPosition(fit.position)
    : fit.position;
}

function tellPoints(fit: AnalysedFit, loose: readonly string[], { datum }: Survey): Adjustment['points'] {
  const shown = shownPosition(fit);
  const spread = datum === 'free' && loose.length === 0 ? freeVariances(fit) : variancesOf(fit);
  return fit.network.points
    .filter((id) => !loose.includes(id))
    .map((id) => {
      const { x, y } = shown.points[id] ?? { x: 0, y: 0 };
      const deviation = (axis: 'x' | 'y') => Math.sqrt(Math.max(0, spread.get(`${id}.${axis}`) ?? 0));
      return { id, x, y, sx: deviation('x'), sy: deviation('y') };
    });
}

/** Variances of all coordinates against the shape as a whole, by `point.axis`. */
function freeVariances(fit: AnalysedFit): ReadonlyMap<string, number> {
  const table = tableOf(fit);
  const free = freeCovariance({ ...table, points: fit.position.points });
  return new Map(table.order.map((name, k) => [name, free[k]?.[k] ?? 0]));
}

/** The covariance of all coordinates, 0 where the datum holds one. */
function tableOf(fit: AnalysedFit): Pick<Shape, 'order' | 'covariance'> {
  const axes = ['x', 'y'] as const;
  const order = fit.network.points.flatMap((name) => axes.map((axis) => `${name}.${axis}`));
  const columns = new Map(
    fit.unknowns.flatMap((u, k) => ('point' in u ? [[`${u.point}.${u.axis}`, k]] : [])),
  );
  const table = covarianceOf(fit);
  const at = order.map((name) => columns.get(name) ?? -1);
  return { order, covariance: at.map((i) => at.map((j) => table[i]?.[j] ?? 0)) };
}

/** Variances of all coordinates that are not held, by `point.axis`. */
function variancesOf(fit: AnalysedFit): ReadonlyMap<string, number> {
  return new Map(
    fit.unknowns.flatMap((u, k) =>
      'point' in u ? [[`${u.point}.${u.axis}`, fit.analysis.variances[k] ?? 0] as const] : [],
    ),
  );
}

function tellTilt(fit: AnalysedFit, loose: boolean): number | null {
  return fit.network.tiltFree && !loose ? angleInDegrees(shownPosition(fit).tilt) : null;
}

/** Rounding of the last step is not an angle. */
function angleInDegrees(radians: number): number {
  return Math.abs(radians) < 1e-15 ? 0 : (radians * 180) / Math.PI;
}

/** One answer a reading, with its station where it has one. */
function tellReadings(fit: AnalysedFit): readonly AdjustedReading[] {
  const numbers = fit.network.observations.map((seen, at) => ({ seen, told: tellNumber(fit, seen, at) }));
  return numbers.flatMap(({ seen, told }) => {
    if (seen.part !== undefined) return [];
    const station = numbers.find((other) => other.seen.id === seen.id && other.seen.part === 'station')?.told;
    return [{ id: seen.id, ...told, ...(station && { station }) }];
  });
}

function tellNumber(fit: AnalysedFit, seen: Observation, at: number): AdjustedNumber {
  const unit = unitOf(seen);
  const residual = (fit.residuals[at] ?? 0) / unit;
  const redundancy = fit.redundancy[at] ?? 0;
  const [value, sigma] = [seen.value / unit, seen.sigma / unit];
  const normalised = fit.normalised[at] ?? null;
  const found = smallestSlip(sigma, redundancy);
  const adjusted = value - residual;
  return { value, sigma, adjusted, residual, redundancy, normalised, smallestSlip: found };
}

/** An opening is hung on its sill whatever was measured first, so that left stays left for the pieces. */
function makeShape(survey: Survey, fit: AnalysedFit): Shape {
  const names = fit.network.points;
  const shape: Shape = {
    seenFrom: survey.seenFrom,
    points: Object.fromEntries(names.map((name) => [name, fit.position.points[name] ?? { x: 0, y: 0 }])),
    edges: edgesOf(names).map((edge) => bowed(edge, fit.position.bows?.[edgeKey(edge)])),
    ...tableOf(fit),
    tilt: fit.network.tiltFree ? fit.position.tilt : 0,
  };
  const whole = openingCorners.every((corner) => names.includes(corner));
  const hung = fit.network.held['BL']?.x === 0 && fit.network.held['BR']?.y === 0;
  return whole && !hung ? hangShape(shape, 'BL', 'BR') : shape;
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
