import { chiSquareQuantile, suspectLimit } from '#core/numerics';
import type { Problem } from '#core/problems';
import { unitOf } from './network.ts';
import { readingWords } from './opening.ts';
import type { Study } from './study.ts';
import { joinWords, sayReading, showMm } from './words.ts';

/** What does not fit though no reading can be blamed: chance, scatter, or lengths that no shape has. */
export function findMisfit(study: Study): readonly Problem[] {
  return [...findRemaining(study), ...findImpossible(study), ...findScatter(study)];
}

/** What may be chance beside a slip that is found. */
function findRemaining({ verdict, readings }: Study): readonly Problem[] {
  const reading = readings.find(({ id }) => id === verdict.remaining);
  if (!reading) return [];
  return [
    {
      severity: 'note',
      code: 'reading-stands-off',
      about: reading.id,
      message: `With the suspect left out, the ${readingWords(reading)} still stands off a little more than it should; among so many readings that may be chance.`,
      remedy: 'Look at it again while you are there.',
      source: 'joinery A4',
    },
  ];
}

/** Lengths that no shape has, where nothing is left over to say which is wrong: a triangle that does not close. */
function findImpossible({ verdict, found, readings }: Study): readonly Problem[] {
  const { dof, chi2, residuals, network } = found.fit;
  if (verdict.kind !== 'none' || dof > 0 || chi2 <= suspectLimit ** 2) return [];
  const sizes = residuals.map((v, k) => Math.abs(v) / (network.observations[k]?.sigma ?? 1));
  const order = sizes.map((_, k) => k).sort((a, b) => (sizes[b] ?? 0) - (sizes[a] ?? 0));
  const worst = network.observations[order[0] ?? 0];
  const wrong = order.filter((k) => (sizes[k] ?? 0) > 1).slice(0, mostMissing);
  const ids = [...new Set(wrong.map((k) => network.observations[k]?.id ?? ''))];
  const first = readings.find(({ id }) => id === worst?.id);
  const miss = Math.abs(residuals[order[0] ?? 0] ?? 0) / (worst ? unitOf(worst) : 1);
  return [
    {
      severity: 'stop',
      code: 'no-such-shape',
      about: worst?.id,
      message: `No shape at all has these readings: the nearest one misses ${first ? `the ${readingWords(first)}` : 'one'} by ${first ? sayReading(first, miss) : showMm(miss)}.`,
      remedy: `Measure ${joinWords(ids)} again: one of them is wrong, and nothing says which.`,
      source: 'joinery A2',
    },
  ];
}

/** No more readings than these are named where any may be wrong. */
const mostMissing = 6;

/** Below this probability the readings as a whole scatter more than they should (as the single test: 0.1 %). */
const scatterShare = 0.999;

function findScatter({ verdict, found }: Study): readonly Problem[] {
  const { dof, chi2 } = found.fit;
  if (verdict.kind !== 'none' || dof === 0 || chi2 <= chiSquareQuantile(scatterShare, dof)) return [];
  return [
    {
      severity: 'warn',
      code: 'readings-scatter',
      message: `No single reading stands out, but together they miss by more than their accuracy allows (chi-square ${showMm(chi2)} on ${dof}).`,
      remedy:
        'Are the sides straight, the frame flat, and all readings to the same faces? Or give larger deviations.',
      source: 'joinery A4',
    },
  ];
}
