import { findableShift, spreadOf, suspectLimit } from '#core/numerics';
import { largestDoubt, leastRedundancy, limitOfRest, refit } from './doubt.ts';
import type { Doubt, Named, Verdict } from './doubt.ts';
import { findExchange } from './exchange.ts';
import { matchMistakes } from './mistakes.ts';
import type { Mistake } from './mistakes.ts';
import { unitOf } from './network.ts';
import { missOf } from './predict.ts';
import { unchecked } from './solve.ts';
import type { AnalysedFit } from './solve.ts';
import type { Suspect } from './types.ts';

/** Residuals correlated beyond this belong to slips that look the same (joinery A4). */
const alike = 0.95;
/** A reading whose square lies less than this behind the largest is as likely to within e^3 = 20 to 1: the set cannot decide. */
const undecided = 6;
/** Readings left out in turn, the worst first. */
const mostTrials = 15;
/** More causes than this for one slip say nothing. */
const mostCauses = 4;
/** More slips than this in one set are not sought: measure again. */
const mostSlips = 3;

/** Suspected slips of a fit, in the order and by the limits of joinery A4; nothing is corrected. */
export function findSuspects(doubt: Doubt): Verdict {
  const largest = largestDoubt(doubt.fit);
  if (largest.size <= suspectLimit) return { kind: 'none', suspects: [], largest: largest.size };
  const verdict =
    findExchange(doubt) ??
    findSingle(doubt, largest.at) ??
    findBow(doubt) ??
    findByTrial(doubt) ??
    findNearly(doubt, largest.at) ??
    findSeveral(doubt, largest.at);
  return { ...verdict, largest: largest.size };
}

/** The reading with the largest normalised residual, or all that explain the misfit as well. */
function findSingle(doubt: Doubt, at: number): Named | null {
  const group = groupOf(doubt.fit, at);
  const passing = group.flatMap((i) => trial(doubt, i) ?? []);
  if (passing.length === 0) return null;
  return { kind: passing.length === 1 ? 'one' : 'group', suspects: rank(passing) };
}

/** Widths between that are all too small, or all too large, while the rest agrees: the sides are bowed (E14). */
function findBow(doubt: Doubt): Named | null {
  const middle = doubt.fit.network.observations.flatMap((seen, i) => {
    const reading = doubt.readings.find(({ id }) => id === seen.id);
    const straight = seen.bows?.every(([edge]) => !doubt.fit.network.bows?.includes(edge)) ?? true;
    return reading?.kind === 'width' && reading.at > 0.1 && reading.at < 0.9 && straight ? [i] : [];
  });
  if (middle.length < 2 || doubt.fit.dof <= middle.length) return null;
  const rest = refit(
    doubt,
    doubt.fit.network.observations.filter((_, i) => !middle.includes(i)),
  );
  const all = middle.flatMap((i) => describe(doubt, i, rest) ?? []).map(({ suspect }) => suspect);
  const oneWay = all.every(({ slip }) => slip > 0) || all.every(({ slip }) => slip < 0);
  if (!oneWay || rest.analysis.rank < doubt.fit.analysis.rank || largestDoubt(rest).size > suspectLimit)
    return null;
  const way = (all[0]?.slip ?? 0) < 0 ? 'inwards' : 'outwards';
  const cause = `the sides are bowed ${way}: lay a straightedge against both`;
  return { kind: 'several', suspects: all.map(({ id, slip }) => ({ id, slip, cause, mistake: 'E14' })) };
}

/** A slip too large for the linear test moves every residual: leave out each reading in turn. */
function findByTrial(doubt: Doubt): Named | null {
  const sizes = doubt.fit.normalised.map((w, i) => ({ i, size: Math.abs(w ?? 0) }));
  const worst = sizes.sort((a, b) => b.size - a.size).slice(0, mostTrials);
  const passing = worst.flatMap(({ i }) => trial(doubt, i) ?? []);
  if (passing.length === 0) return null;
  return { kind: passing.length === 1 ? 'one' : 'group', suspects: rank(passing) };
}

/** One slip, after which another reading stands off by no more than chance lets one of so many. */
function findNearly(doubt: Doubt, at: number): Named | null {
  const rest = refit(
    doubt,
    doubt.fit.network.observations.filter((_, i) => i !== at),
  );
  const left = largestDoubt(rest);
  const tested = rest.redundancy.filter((share) => share >= leastRedundancy).length;
  if (rest.analysis.rank < doubt.fit.analysis.rank || left.size > limitOfRest(tested)) return null;
  const found = describe(doubt, at, rest);
  const remaining = rest.network.observations[left.at]?.id;
  return found
    ? { kind: 'one', suspects: [found.suspect], ...(remaining !== undefined && { remaining }) }
    : null;
}

/** Several slips: leaves out the worst again and again; those found together, if the rest then agrees. */
function findSeveral(doubt: Doubt, at: number): Named {
  const first = { kind: 'unresolved' as const, suspects: [estimate(doubt, at)] };
  let [left, worst] = [doubt, at];
  const named: number[] = [];
  const all = doubt.fit.network.observations;
  while (named.length < mostSlips && left.fit.dof > 1) {
    const blamed = left.fit.network.observations[worst];
    named.push(all.findIndex((seen) => seen.id === blamed?.id && seen.part === blamed.part));
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
  const own = fit.rows[at];
  const spread = own ? spreadOf(fit.analysis, own) : [];
  return fit.rows.flatMap(({ columns, values }, j) => {
    if (j === at) return [j];
    const shared = columns.reduce((sum, k, p) => sum + (spread[k] ?? 0) * (values[p] ?? 0), 0);
    const share = fit.redundancy[j] ?? 0;
    const rho = shared / Math.sqrt((fit.redundancy[at] ?? 0) * share);
    const behind = (fit.normalised[at] ?? 0) ** 2 - (fit.normalised[j] ?? 0) ** 2;
    return share >= leastRedundancy && (Math.abs(rho) > alike || behind < undecided) ? [j] : [];
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
  const unit = unitOf(seen);
  const slip = missOf(seen, without.position) / unit;
  const vague = (2 * seen.sigma) / unit / Math.sqrt(doubt.fit.redundancy[at] ?? 1);
  const { part } = seen;
  const known = { reading, value: seen.value / unit, slip, vague: Math.min(vague, 10) };
  const mistakes = matchMistakes({ ...known, ...(part && { part }) });
  return {
    suspect: { ...suspectOf(seen.id, slip, mistakes), ...(part && { part }) },
    named: mistakes.some(({ weak }) => weak !== true),
    chi2: without.chi2,
    size: Math.abs(slip),
  };
}

function suspectOf(id: string, slip: number, mistakes: readonly Mistake[]): Suspect {
  const [first] = mistakes;
  if (!first) return { id, slip, cause: 'no usual mistake has this size' };
  // Mistakes that fit many small slips are worth a word only where nothing telling fits.
  const telling = mistakes.filter(({ weak }) => weak !== true);
  const shown = (telling.length > 0 ? telling : mistakes).slice(0, mostCauses);
  const cause = shown.map(({ words }) => words).join(', or ');
  return { id, slip, cause, ...(first.id !== undefined && { mistake: first.id }) };
}

/** The slip by the linear rule v / r where leaving the reading out settles nothing. */
function estimate(doubt: Doubt, at: number): Suspect {
  const seen = doubt.fit.network.observations[at];
  const unit = seen ? unitOf(seen) : 1;
  const slip = (doubt.fit.residuals[at] ?? 0) / (doubt.fit.redundancy[at] ?? 1) / unit;
  const id = seen?.id ?? '';
  const part = seen?.part && { part: seen.part };
  return { id, slip, ...part, cause: 'more than one reading seems wrong: measure the whole set again' };
}

/** Those a usual mistake explains come first, then those that leave the others in the best agreement, then small slips. */
function rank(trials: readonly Trial[]): readonly Suspect[] {
  const order = (a: Trial, b: Trial) =>
    Number(b.named) - Number(a.named) || Math.round(a.chi2 - b.chi2) || a.size - b.size;
  return [...trials].sort(order).map(({ suspect }) => suspect);
}

/** Smallest slip of a reading that would be found, in its own unit; null when none would. */
export function smallestSlip(sigma: number, redundancy: number): number | null {
  return redundancy < unchecked ? null : (findableShift * sigma) / Math.sqrt(redundancy);
}
