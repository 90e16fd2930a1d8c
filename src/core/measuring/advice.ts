import { fitRepeated, fitWith, repeatCandidates, standardCandidates } from './candidates.ts';
import type { Candidate } from './candidates.ts';
import { readingWords } from './opening.ts';
import type { AnalysedFit, Weighed } from './solve.ts';
import type { Study } from './study.ts';
import { smallestSlip } from './suspects.ts';
import { findLoosePoints } from './undetermined.ts';
import { joinWords, showMm } from './words.ts';
import type { Reading } from './types.ts';

/** A slip up to this may pass unseen without a word, mm (joinery G2). */
export const criticalSlip = 5;
/** Advice that gains less than this share is not worth climbing aboard for. */
const worthwhile = 0.05;

/** How well a set of readings guards itself. */
interface Guard {
  /** Points that can still move, or nearly. */
  readonly loose: number;
  /** Tape readings that nothing checks. */
  readonly unchecked: number;
  /** Largest of the smallest slips of the tape readings that are checked, mm, and whose it is. */
  readonly worst: number;
  readonly worstId: string;
  /** Other readings that nothing checks. */
  readonly uncheckedOthers: number;
}

/** The one reading more that helps this set most, worked out by trying each; null when it is as good as it gets. */
export function adviseReading(study: Omit<Study, 'advice'>): string | null {
  const { readings, verdict, found } = study;
  const suspects = verdict.suspects.map(({ id }) => wordsOf(readings, id));
  if (verdict.kind === 'exchanged')
    return `Look again which way ${joinWords(suspects)} ran, and enter each in its own place.`;
  if (suspects.length > 0)
    return `Measure ${suspects[0] ?? ''} again by a fresh look, from its other end: if it stands, go on to ${suspects[1] ?? 'the others'}.`;
  const now = guardOf(found.fit);
  if (isGoodEnough(found.fit, now)) return null;
  const tried = [...standardCandidates(found.fit, readings), ...repeatCandidates(found.fit, readings)].map(
    (candidate) => ({
      candidate,
      guard: guardOf(withCandidate(found.fit, candidate)),
    }),
  );
  const best = tried.reduce<(typeof tried)[number] | null>(
    (champion, next) => (isBetter(next.guard, champion?.guard ?? now) ? next : champion),
    null,
  );
  return best ? tellAdvice(study, best.candidate, now, best.guard) : null;
}

function withCandidate(fit: AnalysedFit, { reading, repeats }: Candidate): Weighed {
  return repeats === undefined ? fitWith(fit, reading) : fitRepeated(fit, reading);
}

/** How well a fit guards itself; a candidate added to it counts too. */
export function guardOf(fit: Weighed): Guard {
  let guard = { unchecked: 0, worst: 0, worstId: '', uncheckedOthers: 0 };
  fit.network.observations.forEach((seen, at) => {
    const share = fit.redundancy[at] ?? 0;
    const slip = share < leastShare ? null : smallestSlip(seen.sigma, share);
    if (slip === null && seen.measure === 'length') guard = { ...guard, unchecked: guard.unchecked + 1 };
    else if (slip === null) guard = { ...guard, uncheckedOthers: guard.uncheckedOthers + 1 };
    else if (seen.measure === 'length' && slip > guard.worst)
      guard = { ...guard, worst: slip, worstId: seen.id };
  });
  return { ...guard, loose: findLoosePoints(fit).points.length };
}

/** A reading checked less than this counts as unchecked: its smallest slip is a hundred sigma and more. */
const leastShare = 1e-3;

function isGoodEnough(fit: AnalysedFit, guard: Guard): boolean {
  return (
    guard.loose === 0 &&
    !findLoosePoints(fit).tilt &&
    guard.unchecked + guard.uncheckedOthers === 0 &&
    guard.worst <= criticalSlip
  );
}

function isBetter(a: Guard, than: Guard): boolean {
  if (a.loose !== than.loose) return a.loose < than.loose;
  if (a.unchecked !== than.unchecked) return a.unchecked < than.unchecked;
  const gain = than.worst - a.worst;
  if (Math.abs(gain) > worthwhile * than.worst) return gain > 0;
  return a.uncheckedOthers < than.uncheckedOthers;
}

function tellAdvice(study: Omit<Study, 'advice'>, candidate: Candidate, now: Guard, then: Guard): string {
  const { readings } = study;
  const what =
    candidate.repeats === undefined
      ? `Measure the ${candidate.words}`
      : `Measure ${wordsOf(readings, candidate.repeats)} once more, from its other end`;
  if (then.loose < now.loose)
    return then.loose === 0 ? `${what}: it fixes what is still open.` : `${what}: it fixes one point more.`;
  if (then.unchecked < now.unchecked) {
    const rest = then.worst > 0 ? `, to a slip of ${showMm(then.worst)} mm at worst` : '';
    return `${what}: ${now.unchecked - then.unchecked} of the tape readings that nothing checks would then be checked${rest}.`;
  }
  if (then.worst < now.worst)
    return (
      `${what}: the largest slip that could pass unseen falls from ${showMm(now.worst)} mm ` +
      `(${wordsOf(readings, now.worstId)}) to ${showMm(then.worst)} mm.`
    );
  return `${what}: a plumb or level reading that nothing checks would then be checked.`;
}

/** Words for the reading with this id. */
function wordsOf(readings: readonly Reading[], id: string): string {
  const reading = readings.find((candidate) => candidate.id === id);
  return reading ? `the ${readingWords(reading)}` : id;
}
