import { spreadOf } from '#core/numerics';
import type { SparseRow } from '#core/numerics';
import { columnsOf, weightedRow } from './columns.ts';
import { isOpening } from './datum.ts';
import { sigmaOf } from './methods.ts';
import { namesOf, observe } from './network.ts';
import { makeOpeningReading, openingChecklist, openingKeyOf } from './opening.ts';
import { predict } from './predict.ts';
import { analyseFit, evaluate, unchecked } from './solve.ts';
import type { AnalysedFit, Weighed } from './solve.ts';
import type { Reading } from './types.ts';

/** A reading that could be taken next. */
export interface Candidate {
  readonly reading: Reading;
  readonly words: string;
  /** Id of the reading it would repeat. */
  readonly repeats?: string;
}

/** With more points than this only the pairs nearest in order are offered. */
const mostPairs = 30;

/** Readings not yet taken: of an opening the rest of the twelve, else the distances between its points. */
export function standardCandidates(fit: AnalysedFit, readings: readonly Reading[]): readonly Candidate[] {
  const names = fit.network.points;
  if (!isOpening(names)) return missingPairs(names, readings);
  const taken = readings.map(openingKeyOf);
  return openingChecklist
    .filter(({ key }) => !taken.includes(key))
    .map((line) => ({ reading: withSigma(makeOpeningReading(line.key, 1000), readings), words: line.words }))
    .filter(({ reading }) => namesOf(reading).every((name) => names.includes(name)));
}

function missingPairs(names: readonly string[], readings: readonly Reading[]): readonly Candidate[] {
  const taken = new Set(
    readings.flatMap((r) => (r.kind === 'distance' ? [`${r.from} ${r.to}`, `${r.to} ${r.from}`] : [])),
  );
  const pairs = names.flatMap((from, k) => names.slice(k + 1).map((to) => ({ from, to })));
  return pairs
    .filter(({ from, to }) => !taken.has(`${from} ${to}`))
    .slice(0, mostPairs)
    .map(({ from, to }) => ({
      reading: withSigma({ id: `${from}–${to}`, kind: 'distance', from, to, value: 1000 }, readings),
      words: `distance ${from}–${to}`,
    }));
}

/** As precise as the readings of its kind already taken; by method where there is none. */
function withSigma(reading: Reading, readings: readonly Reading[]): Reading {
  const tape = (r: Reading) => r.kind === 'distance' || r.kind === 'width';
  const same = readings.filter((r) => r.kind === reading.kind || (tape(r) && tape(reading)));
  const sigmas = same.map((r) => sigmaOf(r)).sort((a, b) => a - b);
  return { ...reading, sigma: sigmas[Math.floor(sigmas.length / 2)] ?? sigmaOf(reading) };
}

/** Only the weakest readings are worth a second look. */
const mostRepeats = 6;

/** Readings taken that could be taken once more, the least checked first. */
export function repeatCandidates(fit: AnalysedFit, readings: readonly Reading[]): readonly Candidate[] {
  const weakness = fit.network.observations.map((seen, at) => ({
    id: seen.id,
    slip: seen.sigma / Math.sqrt(Math.max(unchecked, fit.redundancy[at] ?? 0)),
  }));
  const weakest = weakness.sort((a, b) => b.slip - a.slip).slice(0, mostRepeats);
  return weakest.flatMap(({ id }) => {
    const reading = readings.find((candidate) => candidate.id === id);
    return reading ? [{ reading, words: 'once more', repeats: id }] : [];
  });
}

/** What the set would be worth with one more reading of this kind, at the value it would then show. */
export function fitWith(fit: AnalysedFit, reading: Reading): Weighed {
  const added = observe({ ...reading, repeats: [] }).map((seen) => ({
    ...seen,
    value: predict(seen, fit.position).value,
  }));
  const tiltFree = fit.network.tiltFree || reading.kind === 'plumb' || reading.kind === 'level';
  const network = {
    ...fit.network,
    tiltFree,
    observations: [...fit.network.observations, ...added],
  };
  const [only] = added;
  if (added.length !== 1 || !only || tiltFree !== fit.network.tiltFree || fit.analysis.nullSpace.length > 0)
    return analyseFit(evaluate(network, fit.position), 'quick');
  const row = weightedRow(only, fit.position, columnsOf(network));
  const { weighed, own } = addRow(fit, row);
  return { ...weighed, network, redundancy: [...weighed.redundancy, 1 - own] };
}

/** What the set would be worth if a reading were the mean of one more look. */
export function fitRepeated(fit: AnalysedFit, reading: Reading): Weighed {
  const count = 1 + (reading.repeats?.length ?? 0);
  const at = fit.network.observations.findIndex((seen) => seen.id === reading.id && seen.part === undefined);
  const row = fit.rows[at];
  const observations = fit.network.observations.map((seen, k) =>
    k === at ? { ...seen, sigma: seen.sigma * Math.sqrt(count / (count + 1)) } : seen,
  );
  const network = { ...fit.network, observations };
  if (!row || fit.analysis.nullSpace.length > 0) return analyseFit(evaluate(network, fit.position), 'quick');
  const { weighed, own } = addRow(fit, scaleRow(row, 1 / Math.sqrt(count)));
  // The row of the mean is longer than the one added by the root of count + 1.
  const redundancy = weighed.redundancy.map((share, k) => (k === at ? 1 - own * (count + 1) : share));
  return { ...weighed, network, redundancy };
}

function scaleRow({ columns, values }: SparseRow, factor: number): SparseRow {
  return { columns, values: values.map((value) => value * factor) };
}

/**
 * A fully determined fit with one row more, and what the unknowns then explain of that row: the inverse is changed by one
 * product (Sherman and Morrison 1950, from memory), so no new one is made.
 */
function addRow(fit: AnalysedFit, row: SparseRow): { readonly weighed: Weighed; readonly own: number } {
  const spread = spreadOf(fit.analysis, row);
  const along = ({ columns, values }: SparseRow) =>
    columns.reduce((sum, k, p) => sum + (spread[k] ?? 0) * (values[p] ?? 0), 0);
  const share = 1 + along(row);
  const variances = fit.analysis.variances.map((variance, k) => variance - (spread[k] ?? 0) ** 2 / share);
  const redundancy = fit.redundancy.map((value, k) => value + along(fit.rows[k] ?? row) ** 2 / share);
  const { network, unknowns } = fit;
  const analysis = { variances, nullSpace: [] };
  return { weighed: { network, unknowns, redundancy, analysis }, own: along(row) / share };
}
