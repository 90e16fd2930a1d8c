import type { AnalysedFit, Weighed } from './solve.ts';
import { fitWith, standardCandidates } from './candidates.ts';
import { pointWords } from './opening.ts';
import { namesOf } from './network.ts';
import type { Unknown } from './network.ts';
import { joinWords, startSentence } from './words.ts';
import type { Reading } from './types.ts';

/** What the readings leave open. */
export interface Loose {
  readonly points: readonly string[];
  readonly tilt: boolean;
}

/** A share of a free movement below this is rounding. */
const still = 1e-4;

/** Points, and upright, that can move without any reading noticing: the null space of the design. */
export function findLoosePoints(fit: Weighed): Loose {
  const reach = Math.max(1, ...fit.network.observations.map((seen) => Math.abs(seen.value)));
  const loose = new Set<string>();
  let tilt = false;
  for (const direction of fit.analysis.nullSpace) {
    const moves = direction.map((part, k) => Math.abs(part) * (isTurn(fit.unknowns[k]) ? reach : 1));
    const most = Math.max(...moves);
    moves.forEach((move, k) => {
      const unknown = fit.unknowns[k];
      if (!unknown || move <= still * most) return;
      if ('tilt' in unknown) tilt = true;
      else if ('point' in unknown) loose.add(unknown.point);
    });
  }
  for (const { point, sigma } of pointSigmas(fit)) if (sigma > hardlyKnown) loose.add(point);
  return { points: fit.network.points.filter((name) => loose.has(name)), tilt };
}

function isTurn(unknown: Unknown | undefined): boolean {
  if (!unknown) return false;
  return 'tilt' in unknown || ('board' in unknown && unknown.part === 'turn');
}

/** A point known no better than this is as good as loose, mm: no packing or scribing swallows it. */
const hardlyKnown = 50;

function pointSigmas(fit: Weighed): readonly { readonly point: string; readonly sigma: number }[] {
  return fit.unknowns.flatMap((unknown, k) => {
    if (!('point' in unknown)) return [];
    return [{ point: unknown.point, sigma: Math.sqrt(Math.max(0, fit.analysis.variances[k] ?? 0)) }];
  });
}

/** The determined point that is known worst, with two sigma of its worse coordinate in mm; null when none is free. */
export function worstPoint(
  fit: AnalysedFit,
  loose: readonly string[],
): { readonly name: string; readonly twoSigma: number } | null {
  const fixed = pointSigmas(fit).filter(({ point }) => !loose.includes(point));
  const worst = fixed.reduce((a, b) => (b.sigma > a.sigma ? b : a), { point: '', sigma: 0 });
  return worst.point === '' ? null : { name: worst.point, twoSigma: 2 * worst.sigma };
}

/** Each of this many open points gets a sentence of its own. */
const mostTold = 12;

/** What is left open, a sentence each, with the reading that would close it. */
export function tellUndetermined(
  fit: AnalysedFit,
  readings: readonly Reading[],
  loose: Loose,
): readonly string[] {
  const rest = loose.points.slice(mostTold);
  const points = [
    ...loose.points.slice(0, mostTold).map((point) => tellPoint(fit, readings, point)),
    ...(rest.length > 0 ? [`Still open as well: ${joinWords(rest)}.`] : []),
  ];
  const missing = missingCorners(fit).map((corner) => `The ${pointWords(corner)} is not measured yet.`);
  if (!loose.tilt || points.length > 0) return [...points, ...missing];
  return [
    ...points,
    ...missing,
    'Upright is not fixed: measure the lean of one jamb with plumb line or level.',
  ];
}

/** Corners of an opening that no reading mentions. */
function missingCorners(fit: AnalysedFit): readonly string[] {
  const names = fit.network.points;
  const corners = ['BL', 'BR', 'TR', 'TL'];
  return names.every((name) => corners.includes(name))
    ? corners.filter((corner) => !names.includes(corner))
    : [];
}

/** True when no free movement, and no great doubt, is left at a point. */
function isSettled(fit: Weighed, point: string): boolean {
  return !findLoosePoints(fit).points.includes(point);
}

function tellPoint(fit: AnalysedFit, readings: readonly Reading[], point: string): string {
  const ties = readings.filter(
    (r) => namesOf(r).includes(point) && r.kind !== 'plumb' && r.kind !== 'level' && r.kind !== 'bow',
  );
  const motion = ties.length === 0 ? 'move anywhere' : 'swing';
  const distances = standardCandidates(fit, readings).filter(
    ({ reading }) => reading.kind === 'distance' && namesOf(reading).includes(point),
  );
  const helpers = distances.filter(({ reading }) => isSettled(fitWith(fit, reading), point));
  const remedy =
    helpers.length > 0
      ? `measure the ${joinWords(
          helpers.slice(0, 2).map(({ words }) => words),
          'or',
        )}`
      : `measure ${joinWords(distances.slice(0, 2).map(({ words }) => `the ${words}`)) || 'it from another point'}`;
  return startSentence(
    `the ${pointWords(point)} can still ${motion}: ${remedy}.`.replace('the point', 'point'),
  );
}
