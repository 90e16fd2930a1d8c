import { isOpening } from './datum.ts';
import { sigmaOf } from './methods.ts';
import { namesOf, observe } from './network.ts';
import { makeOpeningReading, openingChecklist, openingKeyOf } from './opening.ts';
import { predict } from './predict.ts';
import { analyseFit, evaluate, unchecked } from './solve.ts';
import type { AnalysedFit } from './solve.ts';
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
export function fitWith(fit: AnalysedFit, reading: Reading): AnalysedFit {
  const seen = observe({ ...reading, repeats: [] });
  const value = predict(seen, fit.position).value;
  const tiltFree = fit.network.tiltFree || reading.kind === 'plumb' || reading.kind === 'level';
  const network = {
    ...fit.network,
    tiltFree,
    observations: [...fit.network.observations, { ...seen, value }],
  };
  return analyseFit(evaluate(network, fit.position));
}

/** What the set would be worth if a reading were the mean of one more look. */
export function fitRepeated(fit: AnalysedFit, reading: Reading): AnalysedFit {
  const count = 1 + (reading.repeats?.length ?? 0);
  const observations = fit.network.observations.map((seen) =>
    seen.id === reading.id ? { ...seen, sigma: seen.sigma * Math.sqrt(count / (count + 1)) } : seen,
  );
  return analyseFit(evaluate({ ...fit.network, observations }, fit.position));
}
