import { findableShift, suspectLimit } from '#core/numerics';
import { adjustNetwork } from './adjust-network.ts';
import type { Datum } from './datum.ts';
import { matchMistakes } from './mistakes.ts';
import { predict } from './network.ts';
import type { Network, Observation } from './network.ts';
import { analyseFit, fitFrom } from './solve.ts';
import type { AnalysedFit } from './solve.ts';
import type { Reading, Suspect } from './types.ts';

/** Readings less checked than this are never named: their residual says nothing (joinery A4). */
const leastRedundancy = 0.01;
/** Residuals correlated beyond this belong to slips that look the same (joinery A4). */
const alike = 0.95;
/** More slips than this in one set are not sought: measure again. */
const mostSlips = 3;

/** A fit that may hide a slip, with the readings as entered and where its coordinates begin. */
export interface Doubt {
  readonly fit: AnalysedFit;
  readonly datum: Datum | null;
  readonly readings: readonly Reading[];
}

/** Who is suspected, and whether the rest agrees once they are left out. */
export interface Verdict {
  /** `exchanged`: two readings changed places. `one`: a slip. `group`: a slip in one of these. `several`: more than one slip. */
  readonly kind: 'none' | 'exchanged' | 'one' | 'group' | 'several' | 'unresolved';
  readonly suspects: readonly Suspect[];
  readonly largest: number;
}

/** Suspected slips of a fit, in the order and by the limits of joinery A4; nothing is corrected. */
export function findSuspects(doubt: Doubt): Verdict {
  const largest = largestDoubt(doubt.fit);
  if (largest.size <= suspectLimit) return { kind: 'none', suspects: [], largest: largest.size };
  const verdict =
    findExchange(doubt) ??
    findSingle(doubt, largest.at) ??
    findByTrial(doubt) ??
    findSeveral(doubt, largest.at);
  return { ...verdict, largest: largest.size };
}

type Named = Omit<Verdict, 'largest'>;

/** Index and size of the largest normalised residual among the readings that are checked well enough. */
export function largestDoubt(fit: AnalysedFit): { readonly at: number; readonly size: number } {
  let [at, size] = [-1, 0];
  fit.normalised.forEach((w, i) => {
    if (w !== null && (fit.redundancy[i] ?? 0) >= leastRedundancy && Math.abs(w) > size)
      [at, size] = [i, Math.abs(w)];
  });
  return { at, size };
}

/** Diagonals (E12), or diagonals and heights together (E11), that fit when they change places. */
function findExchange(doubt: Doubt): Named | null {
  if (doubt.fit.dof < 2) return null;
  const diagonals = pairOf(doubt.readings, ['BL', 'TR'], ['BR', 'TL']);
  if (!diagonals) return null;
  if (passesExchanged(doubt, [diagonals]))
    return exchanged(doubt, diagonals, 'E12', 'the two diagonals are exchanged');
  const heights = pairOf(doubt.readings, ['BL', 'TL'], ['BR', 'TR']);
  if (!heights || !passesExchanged(doubt, [diagonals, heights])) return null;
  return exchanged(doubt, [...diagonals, ...heights], 'E11', 'left and right are exchanged throughout');
}

/** Ids of the distances between two pairs of points; null when either is missing. */
export function pairOf(
  readings: readonly Reading[],
  first: readonly [string, string],
  second: readonly [string, string],
): readonly [string, string] | null {
  const find = (ends: readonly string[]) =>
    readings.find(
      (r) => r.kind === 'distance' && ends.includes(r.from) && ends.includes(r.to) && r.from !== r.to,
    );
  const [a, b] = [find(first), find(second)];
  return a && b ? [a.id, b.id] : null;
}

function passesExchanged(doubt: Doubt, pairs: readonly (readonly [string, string])[]): boolean {
  const partner = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
  const { observations } = doubt.fit.network;
  const values = new Map(observations.map((seen) => [seen.id, seen.value]));
  const swapped = observations.map((seen) => ({
    ...seen,
    value: values.get(partner.get(seen.id) ?? seen.id) ?? seen.value,
  }));
  return largestDoubt(refit(doubt, swapped)).size <= suspectLimit;
}

function refit(doubt: Doubt, observations: readonly Observation[]): AnalysedFit {
  const network: Network = { ...doubt.fit.network, observations };
  const near = analyseFit(fitFrom(network, doubt.fit.position));
  if (largestDoubt(near).size <= suspectLimit) return near;
  return adjustNetwork({ network, datum: doubt.datum, orderly: true }).fit;
}

function exchanged(doubt: Doubt, ids: readonly string[], mistake: string, cause: string): Named {
  const seen = doubt.fit.network.observations;
  const value = (id: string) => seen.find((o) => o.id === id)?.value ?? 0;
  const suspects = ids.map((id, k) => ({
    id,
    slip: value(id) - value(ids[k % 2 === 0 ? k + 1 : k - 1] ?? id),
    cause,
    mistake,
  }));
  return { kind: 'exchanged', suspects };
}

/** The reading with the largest normalised residual, or all whose residuals move with it. */
function findSingle(doubt: Doubt, at: number): Named | null {
  const group = groupOf(doubt.fit, at);
  const passing = group.flatMap((i) => trial(doubt, i) ?? []);
  if (passing.length === 0) return null;
  return { kind: passing.length === 1 ? 'one' : 'group', suspects: rank(passing) };
}

/** A slip too large for the linear test moves every residual: leave out each reading in turn. */
function findByTrial(doubt: Doubt): Named | null {
  const passing = doubt.fit.network.observations.flatMap((_, i) => trial(doubt, i) ?? []);
  if (passing.length === 0) return null;
  return { kind: passing.length === 1 ? 'one' : 'group', suspects: rank(passing) };
}

/** Several slips: leaves out the worst again and again; those found together, if the rest then agrees. */
function findSeveral(doubt: Doubt, at: number): Named {
  const first = { kind: 'unresolved' as const, suspects: [estimate(doubt, at)] };
  let [left, worst] = [doubt, at];
  const named: number[] = [];
  const all = doubt.fit.network.observations;
  while (named.length < mostSlips && left.fit.dof > 1) {
    const id = left.fit.network.observations[worst]?.id;
    named.push(all.findIndex((seen) => seen.id === id));
    const fit = refit(
      doubt,
      all.filter((_, i) => !named.includes(i)),
    );
    const next = largestDoubt(fit);
    if (next.size <= suspectLimit) {
      const suspects = named.flatMap((i) => describe(doubt, i, fit) ?? []);
      return { kind: 'several', suspects: suspects.map(({ suspect }) => suspect) };
    }
    [left, worst] = [{ ...doubt, fit }, next.at];
  }
  return first;
}

function groupOf(fit: AnalysedFit, at: number): readonly number[] {
  const q = fit.analysis.residualCovariance;
  const own = (i: number) => q[i]?.[i] ?? 0;
  return fit.residuals.flatMap((_, j) => {
    if (j === at) return [j];
    const rho = (q[at]?.[j] ?? 0) / Math.sqrt(own(at) * own(j));
    return own(j) >= leastRedundancy && Math.abs(rho) > alike ? [j] : [];
  });
}

interface Trial {
  readonly suspect: Suspect;
  readonly named: boolean;
  readonly chi2: number;
  readonly size: number;
}

/** Leaves a reading out; null unless the others then agree and say what it should have been. */
function trial(doubt: Doubt, at: number): Trial | null {
  const share = doubt.fit.redundancy[at] ?? 0;
  if (share < leastRedundancy) return null;
  const rest = doubt.fit.network.observations.filter((_, i) => i !== at);
  const fit = refit(doubt, rest);
  if (fit.analysis.rank < doubt.fit.analysis.rank || largestDoubt(fit).size > suspectLimit) return null;
  if (fit.dof === 0 && fit.chi2 > 1e-6) return null; // no shape at all has the other lengths
  return describe(doubt, at, fit);
}

function describe(doubt: Doubt, at: number, without: AnalysedFit): Trial | null {
  const seen = doubt.fit.network.observations[at];
  const reading = doubt.readings.find((r) => r.id === seen?.id);
  if (!seen || !reading) return null;
  const slip = seen.value - predict(seen, without.position).value;
  const vague = (2 * seen.sigma) / Math.sqrt(doubt.fit.redundancy[at] ?? 1);
  const mistakes = matchMistakes({ reading, value: seen.value, slip, vague: Math.min(vague, 10) });
  return {
    suspect: suspectOf(seen.id, slip, mistakes),
    named: mistakes.length > 0,
    chi2: without.chi2,
    size: Math.abs(slip),
  };
}

function suspectOf(id: string, slip: number, mistakes: ReturnType<typeof matchMistakes>): Suspect {
  const [first, second] = mistakes;
  if (!first) return { id, slip, cause: 'no usual mistake has this size: measure it again' };
  const cause = second
    ? `${first.words} (${first.id}), or ${second.words} (${second.id})`
    : `${first.words} (${first.id})`;
  return { id, slip, cause, mistake: first.id };
}

/** The slip by the linear rule v / r where leaving the reading out settles nothing. */
function estimate(doubt: Doubt, at: number): Suspect {
  const slip = (doubt.fit.residuals[at] ?? 0) / (doubt.fit.redundancy[at] ?? 1);
  const id = doubt.fit.network.observations[at]?.id ?? '';
  return { id, slip, cause: 'more than one reading seems wrong: measure the whole set again' };
}

/** Those a usual mistake explains come first, then those that leave the others in the best agreement, then small slips. */
function rank(trials: readonly Trial[]): readonly Suspect[] {
  const order = (a: Trial, b: Trial) =>
    Number(b.named) - Number(a.named) || Math.round(a.chi2 - b.chi2) || a.size - b.size;
  return [...trials].sort(order).map(({ suspect }) => suspect);
}

/** Smallest slip of a reading that would be found, in its own unit; null when none would. */
export function smallestSlip(sigma: number, redundancy: number): number | null {
  return redundancy < 1e-6 ? null : (findableShift * sigma) / Math.sqrt(redundancy);
}
