import type { Problem } from '#core/problems';
import { criticalSlip, guardOf } from './advice.ts';
import { findContradiction } from './contradiction.ts';
import { compareLeans } from './lean.ts';
import { runOf, sigmaOf } from './methods.ts';
import { namesOf } from './network.ts';
import { pointWords, readingWords } from './opening.ts';
import { findBattens } from './battens.ts';
import { findBoards } from './boards.ts';
import { findHookError, tellHookError } from './hook.ts';
import { findMisfit } from './misfit.ts';
import { findRepeats, findSingleLooks } from './repeats.ts';
import type { Study } from './study.ts';
import { unchecked } from './solve.ts';
import { smallestSlip } from './suspects.ts';
import { worstPoint } from './undetermined.ts';
import { findGuesses } from './guesses.ts';
import { joinWords, showMm } from './words.ts';
import type { Reading } from './types.ts';

/** All that is worth saying about an adjusted survey. */
export function findAll(study: Study): readonly Problem[] {
  return [
    ...findContradiction(study),
    ...findMisfit(study),
    ...findHook(study),
    ...findBattens(study.readings),
    ...findBoards(study.readings),
    ...findLeans(study),
    ...findOpen(study),
    ...findVague(study),
    ...findGroups(study),
    ...study.readings.flatMap((r) => findRepeats(r, sigmaOf(r, runOf(r, study.readings)))),
    ...findLayers(study),
    ...findUnseenSlips(study),
    ...findSingleLooks(uncheckedReadings(study)),
    ...findGuesses(study),
  ];
}

/** Readings, not by tape, in which no other would show a slip: those by tape have a finding of their own. */
function uncheckedReadings({ readings, found }: Study): readonly Reading[] {
  const { network, redundancy } = found.fit;
  return readings.filter((reading) =>
    network.observations.some(
      (seen, at) => seen.id === reading.id && seen.measure !== 'length' && (redundancy[at] ?? 0) < unchecked,
    ),
  );
}

function findHook({ found, readings, datum }: Study): readonly Problem[] {
  const error = findHookError({ fit: found.fit, readings, datum });
  return error ? [tellHookError(error)] : [];
}

function findLeans(study: Study): readonly Problem[] {
  const explained = ['one', 'group', 'several'].includes(study.verdict.kind);
  const leans = explained ? null : compareLeans(study.readings);
  if (!leans || Math.abs(leans.byTape - leans.byPlumb) <= leans.limit) return [];
  const swapped = Math.abs(leans.byTapeExchanged - leans.byPlumb) <= leans.limit;
  return [
    {
      severity: 'stop',
      code: 'leans-disagree',
      message:
        `By the diagonals the jambs lean ${showMm(leans.byTape)} mm to the right, by plumb and level ${showMm(leans.byPlumb)} mm ` +
        `(allowed difference ${showMm(leans.limit)} mm). ` +
        (swapped
          ? 'With the two diagonals exchanged they agree.'
          : 'Left and right may be swapped, or one of these is misread.'),
      remedy: `Look again from the viewing side: ${study.survey.seenFrom || 'not stated'}.`,
      source: 'joinery A2, G3',
    },
  ];
}

function findOpen({ loose, found }: Study): readonly Problem[] {
  if (loose.points.length === 0) return [];
  const missing = found.fit.analysis.nullSpace.length;
  const need = `${missing} more ${missing === 1 ? 'reading is' : 'readings are'} needed at least`;
  return [
    {
      severity: 'stop',
      code: 'shape-undetermined',
      message: `The readings do not fix the shape: ${joinWords(loose.points)} can still move (${missing > 0 ? need : 'known no better than ±100 mm'}).`,
      remedy: 'Take the readings named under what is still open.',
      source: 'joinery A4',
    },
  ];
}

/** A point known no better than this is worth a word, mm, two sigma. */
const vague = 10; // twice the packing gap that usually swallows it (joinery 0.6 p)

function findVague({ loose, found }: Study): readonly Problem[] {
  const worst = worstPoint(found.fit, loose.points);
  if (!worst || worst.twoSigma <= vague) return [];
  return [
    {
      severity: 'warn',
      code: 'point-vague',
      about: worst.name,
      message: `The ${pointWords(worst.name)} is known only to ±${showMm(worst.twoSigma)} mm.`.replace(
        'The point',
        'Point',
      ),
      remedy: 'A diagonal to it, or a plumb reading, would settle it.',
      source: 'joinery A4',
    },
  ];
}

/** Points that no chain of readings joins to the first. */
function findGroups({ readings, datum, found }: Study): readonly Problem[] {
  const boards = found.fit.network.boards ?? [];
  const ties = [
    ...readings.filter(({ kind }) => kind !== 'bow' && kind !== 'tick').map(namesOf), // a bow says nothing of its ends
    ...boards.map((board) =>
      readings.flatMap((r) => (r.kind === 'tick' && r.board === board ? [r.point] : [])),
    ),
  ];
  const first = datum ? [datum.origin, datum.along] : Object.keys(found.fit.network.held);
  const reached = new Set(first);
  for (let grown = true; grown;) {
    const size = reached.size;
    for (const names of ties)
      if (names.some((name) => reached.has(name))) names.forEach((name) => reached.add(name));
    grown = reached.size > size;
  }
  const apart = [...new Set(readings.flatMap(namesOf))].filter((name) => !reached.has(name));
  if (apart.length === 0) return [];
  return [
    {
      severity: 'stop',
      code: 'readings-not-joined',
      message: `No reading ties ${joinWords(apart)} to ${joinWords(first)}.`,
      remedy: 'Measure at least three distances from one group of points to the other.',
    },
  ];
}

function findLayers({ readings }: Study): readonly Problem[] {
  return readings.flatMap((reading): Problem[] => {
    const layer = reading.toFace?.trim();
    if (layer === undefined || layer === '') return [];
    return [
      {
        severity: 'warn',
        code: 'measured-to-layer',
        about: reading.id,
        message: `The ${readingWords(reading)} was measured to the ${layer}; the part goes to the bare face.`,
        remedy: 'Take the layer off and measure again, or enter the reading less its thickness.',
        source: 'joinery A5 E10, G5',
      },
    ];
  });
}

function findUnseenSlips(study: Study): readonly Problem[] {
  const { fit } = study.found;
  const weak = fit.network.observations.flatMap((seen, at) => {
    const slip = smallestSlip(seen.sigma, fit.redundancy[at] ?? 0);
    return seen.measure === 'length' && (slip === null || slip > criticalSlip) ? [{ id: seen.id, slip }] : [];
  });
  if (weak.length === 0 || study.loose.points.length > 0) return [];
  const guard = guardOf(fit);
  const words = (id: string) => {
    const reading = study.readings.find((candidate) => candidate.id === id);
    return reading ? `the ${readingWords(reading)}` : id;
  };
  const none = weak.filter(({ slip }) => slip === null || slip > 100 * criticalSlip).map(({ id }) => id);
  const also = weak.map(({ id }) => id).filter((id) => id !== guard.worstId);
  const more = also.length > 0 ? ` (also weak: ${joinWords(also)})` : '';
  const what =
    none.length > 0
      ? `Nothing checks ${joinWords(none.map(words))}: a slip of any size there would pass unseen.`
      : `A slip of ${showMm(guard.worst)} mm in ${words(guard.worstId)} could pass unseen${more}.`;
  return [
    {
      severity: 'warn',
      code: 'slip-could-pass',
      about: none[0] ?? guard.worstId,
      message: what,
      remedy:
        (study.verdict.kind === 'none' ? study.advice : null) ??
        'Take each of these twice, the second time from the other end.',
      source: 'joinery A3, G2',
    },
  ];
}
