import { normalQuantile, suspectLimit } from '#core/numerics';
import { adjustNetwork } from './adjust-network.ts';
import type { Datum } from './datum.ts';
import type { Network, Observation } from './network.ts';
import { analyseFit, fitFrom } from './solve.ts';
import type { AnalysedFit } from './solve.ts';
import type { Reading, Suspect } from './types.ts';

/** Readings less checked than this are never named: their residual says nothing (joinery A4). */
export const leastRedundancy = 0.01;
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
  /** A reading that stands off by a little more than its limit once the suspect is left out: as like chance as a slip. */
  readonly remaining?: string;
}

/** A verdict before the size of the doubt is added. */
export type Named = Omit<Verdict, 'largest'>;

/** Index and size of the largest normalised residual among the readings that are checked well enough. */
export function largestDoubt(fit: AnalysedFit): { readonly at: number; readonly size: number } {
  let [at, size] = [-1, 0];
  fit.normalised.forEach((w, i) => {
    if (w !== null && (fit.redundancy[i] ?? 0) >= leastRedundancy && Math.abs(w) > size)
      [at, size] = [i, Math.abs(w)];
  });
  return { at, size };
}

/** Chance that the readings left after one was found wrong accuse another though all are right: as of a single test. */
const falseAlarm = 0.001;

/**
 * The limit for the readings that are left once one is found wrong. They are all tested at once, so the limit is that of
 * `count` tests together (Bonferroni): else one set in a hundred would accuse a second reading for nothing.
 */
export function limitOfRest(count: number): number {
  return normalQuantile(1 - falseAlarm / (2 * Math.max(1, count)));
}

/** A larger set is not begun anew at every trial: it would take minutes, and it holds its own shape anyway. */
const mostRestarted = 40;

/** The fit that other observations would give, from the same place or, if that contradicts, from the beginning. */
export function refit(doubt: Doubt, observations: readonly Observation[]): AnalysedFit {
  const network: Network = { ...doubt.fit.network, observations };
  const near = analyseFit(fitFrom(network, doubt.fit.position));
  if (largestDoubt(near).size <= suspectLimit || observations.length > mostRestarted) return near;
  return adjustNetwork({ network, datum: doubt.datum, orderly: true }).fit;
}
