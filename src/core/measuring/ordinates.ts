import { fitSpline, splineLength } from '#core/numerics';
import type { Spline, SplineEnds } from '#core/numerics';
import { fail, succeed } from '#core/problems';
import type { Problem, Result } from '#core/problems';
import { methods } from './methods.ts';
import { findOrdinateSlips } from './ordinate-slips.ts';
import type { OrdinateDoubt } from './ordinate-slips.ts';
import { isEven } from './ordinate-spacing.ts';
import { showMm } from './words.ts';

/** Ordinates square to a straight batten, at stations along it; mm. */
export interface OrdinateSet {
  readonly stations: readonly number[];
  readonly ordinates: readonly number[];
  /** One standard deviation of an ordinate; left out: 0.7 (joinery A1, M9). */
  readonly sigma?: number;
  /** `curved` unless said: a hull does not straighten at the last station, as a free batten would. */
  readonly ends?: SplineEnds;
  /** How often the eye sees the curve change from hollow to round; left out: once. */
  readonly turns?: number;
}

/** A measured curve: its spline with a knot at every station, and what to doubt of it. */
export interface OrdinateCurve {
  readonly spline: Spline;
  /** Along the curve, mm. */
  readonly length: number;
  readonly doubts: readonly OrdinateDoubt[];
  /** How often the second difference changes its sign by more than the ordinates scatter. */
  readonly turns: number;
  readonly findings: readonly Problem[];
}

const source = 'joinery A6';
/** Ordinates below this many do not make a curve. */
const fewest = 2;
const usualTurns = 1; // common practice, no source

/**
 * The curve through measured ordinates: a cubic spline with its knots at the stations; read it with `readSpline`. Fails when
 * the stations do not rise or a number lacks. Source: joinery A6.
 */
export function fitOrdinates(set: OrdinateSet): Result<OrdinateCurve> {
  const fault = checkSet(set);
  if (fault) return fail(fault);
  const { stations, ordinates, sigma = methods.M9.sigma(0), ends = 'curved' } = set;
  const spline = fitSpline(stations, ordinates, ends);
  const doubts = findOrdinateSlips({ stations, ordinates, sigma });
  const turns = countTurns(stations, ordinates, sigma);
  const findings = [
    ...doubts.map(({ problem }) => problem),
    ...findSpacing(stations),
    ...findSteep(set, spline),
    ...(doubts.length === 0 ? findUnfair(turns, set.turns ?? usualTurns) : []),
  ];
  return succeed({ spline, length: splineLength(spline), doubts, turns, findings });
}

function checkSet({ stations, ordinates, sigma }: OrdinateSet): Problem | null {
  const stop = (code: string, message: string, remedy: string): Problem => ({
    ...{ severity: 'stop', code, message, remedy, source },
  });
  if (stations.length !== ordinates.length)
    return stop(
      'ordinates-uneven',
      `There are ${stations.length} stations but ${ordinates.length} ordinates.`,
      'Give one ordinate for each station.',
    );
  if (stations.length < fewest)
    return stop('ordinates-few', `${stations.length} ordinates make no curve.`, 'Take five at least.');
  const odd = [...stations, ...ordinates, sigma ?? 1].find((value) => !Number.isFinite(value));
  if (odd !== undefined || (sigma ?? 1) <= 0)
    return stop(
      'ordinate-not-a-number',
      'A station, an ordinate or the standard deviation is not a number that can be used.',
      'Type what the rule said, in mm; a standard deviation is more than 0.',
    );
  const back = stations.findIndex((station, i) => i > 0 && station <= (stations[i - 1] ?? -Infinity));
  if (back < 0) return null;
  return stop(
    'stations-not-rising',
    `Station ${back + 1} at ${showMm(stations[back] ?? 0)} does not lie beyond station ${back} at ${showMm(stations[back - 1] ?? 0)}.`,
    'List the stations from one end of the batten to the other, each once.',
  );
}

/** Least stations and widest spacing for a spline, mm (joinery A6). */
const wanted = { stations: 5, spacing: 150 } as const;

function findSpacing(stations: readonly number[]): readonly Problem[] {
  const gaps = stations.slice(1).map((station, i) => station - (stations[i] ?? 0));
  const widest = Math.max(...gaps);
  const findings: Problem[] = [];
  if (stations.length < wanted.stations)
    findings.push({
      ...{ severity: 'warn', code: 'stations-few', source },
      message: `${stations.length} ordinates are too few to know a curve or to find a slip; ${wanted.stations} are the least.`,
      remedy: 'Take more, one every 100 mm and at both ends.',
    });
  if (widest > wanted.spacing)
    findings.push({
      ...{ severity: 'warn', code: 'stations-far-apart', source },
      message: `Between the stations at ${showMm(stations[gaps.indexOf(widest)] ?? 0)} and ${showMm(stations[gaps.indexOf(widest) + 1] ?? 0)} the curve is guessed over ${showMm(widest)} mm.`,
      remedy: 'Take ordinates every 100 mm; up to 150 mm on an easy curve.',
    });
  if (stations.length >= wanted.stations && !isEven(stations))
    findings.push({
      ...{ severity: 'note', code: 'stations-not-even', source },
      message:
        'The stations are not evenly spaced, so each ordinate is tested by the curve through the others.',
      remedy: 'Nothing need be done; even spacing finds smaller slips.',
    });
  return findings;
}

/** Steeper than 45 degrees an error along the batten counts more than one along the ordinate (joinery A6). */
function findSteep({ stations }: OrdinateSet, { pieces }: Spline): readonly Problem[] {
  const at = pieces.findIndex(([, slope]) => Math.abs(slope) > 1);
  const degrees = (Math.atan(Math.abs(pieces[at]?.[1] ?? 0)) * 180) / Math.PI;
  if (at < 0) return [];
  return [
    {
      ...{ severity: 'warn', code: 'curve-steep', source },
      message: `At the station at ${showMm(stations[at] ?? 0)} the curve stands ${showMm(degrees)}° to the batten.`,
      remedy: 'Measure that part from a batten along the other axis.',
    },
  ];
}

function findUnfair(turns: number, expected: number): readonly Problem[] {
  if (turns <= expected) return [];
  return [
    {
      ...{ severity: 'warn', code: 'curve-not-fair', source },
      message: `The curve is not fair: it changes between hollow and round ${turns} times, where ${expected} ${expected === 1 ? 'is' : 'are'} expected. A frame, a stringer or a slip?`,
      remedy: 'Lay a batten along the ordinates; measure those where it does not touch again.',
    },
  ];
}

/** Second differences smaller than this many of their own standard deviations say nothing about hollow or round. */
const clear = 2;

function countTurns(stations: readonly number[], ordinates: readonly number[], sigma: number): number {
  const at = (list: readonly number[], i: number) => list[i] ?? 0;
  const signs = ordinates.slice(2).flatMap((_, i) => {
    const [h, k] = [at(stations, i + 1) - at(stations, i), at(stations, i + 2) - at(stations, i + 1)];
    const weights = [1 / h, -1 / h - 1 / k, 1 / k];
    const bend = weights.reduce((sum, weight, j) => sum + weight * at(ordinates, i + j), 0);
    return Math.abs(bend) > clear * sigma * Math.hypot(...weights) ? [Math.sign(bend)] : [];
  });
  return signs.slice(1).filter((sign, i) => sign !== signs[i]).length;
}
