import type { Problem } from '#core/problems';
import { isDigitSwap } from './mistakes.ts';
import { joinWords, showReading } from './words.ts';
import type { Reading } from './types.ts';

/** Readings of one thing further apart than this many sigma call for a third: joinery A5, 3 sigma of a difference. */
const apart = 3 * Math.SQRT2;

/**
 * The mean of a reading and its repeats, mm, and how many looks it rests on. With three or more, one look that stands off
 * while the others agree is left out; `findRepeats` says so.
 */
export function repeatedValue(
  reading: Reading,
  sigma: number,
): { readonly value: number; readonly count: number } {
  const looks = agreeingLooks(reading, sigma);
  return { value: looks.reduce((sum, look) => sum + look, 0) / looks.length, count: looks.length };
}

/** All looks at a reading; angles brought to the same turn as the first, so that 359.9 lies beside 0.1. */
function looksOf({ kind, value, repeats = [] }: Reading): readonly number[] {
  if (kind !== 'angle') return [value, ...repeats];
  return [value, ...repeats.map((look) => look + 360 * Math.round((value - look) / 360))];
}

function agreeingLooks(reading: Reading, sigma: number): readonly number[] {
  const looks = looksOf(reading);
  const odd = oddLook(reading, sigma);
  return odd === null ? looks : looks.filter((_, at) => at !== odd);
}

/** Index of the one look that stands off from all others, which agree among themselves; null when there is none. */
function oddLook(reading: Reading, sigma: number): number | null {
  const looks = looksOf(reading);
  const limit = apart * sigma;
  if (looks.length < 3 || spread(looks) <= limit) return null;
  const odd = looks.flatMap((_, at) => (spread(looks.filter((__, k) => k !== at)) <= limit ? [at] : []));
  return odd.length === 1 ? (odd[0] ?? null) : null;
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** What is wrong between the repeats of a reading; source joinery A5 and G4. */
export function findRepeats(reading: Reading, sigma: number): readonly Problem[] {
  const looks = looksOf(reading);
  const limit = apart * sigma;
  if (looks.length < 2 || spread(looks) <= limit) return [];
  const [low, high] = [Math.min(...looks), Math.max(...looks)];
  const show = (value: number) => showReading(reading, value);
  const unit = reading.kind === 'angle' ? '' : ' mm';
  const swapped = isDigitSwap(low, high, 0) ? ' Two digits look swapped.' : '';
  const odd = oddLook(reading, sigma);
  const what =
    odd === null
      ? `The mean ${show(repeatedValue(reading, sigma).value)} is used until then.`
      : `${show(looks[odd] ?? 0)} is left out because the others agree.`;
  return [
    {
      severity: 'warn',
      code: 'repeats-differ',
      about: reading.id,
      message:
        `${reading.id} was read as ${looks.map(show).join(' and ')}${unit}: ` +
        `${show(high - low)} apart, more than ${show(limit)} for this method.${swapped} ${what}`,
      remedy:
        odd === null
          ? 'Measure it once more without looking at the first two.'
          : 'Strike out the odd one if you agree.',
      source: 'joinery A5, G4',
    },
  ];
}

/** Of readings that nothing else checks, those that rest on a single look. Source: joinery A5, the rule below the table. */
export function findSingleLooks(readings: readonly Reading[]): readonly Problem[] {
  const single = readings.filter(({ repeats = [] }) => repeats.length === 0);
  const [first] = single;
  if (!first) return [];
  const names = single.slice(0, mostNamed).map(({ id }) => id);
  const more = single.length - names.length;
  const which = joinWords(more > 0 ? [...names, `${more} more`] : names);
  return [
    {
      severity: 'note',
      code: 'taken-once',
      about: first.id,
      message: `Nothing checks ${which}, and ${single.length === 1 ? 'it rests' : 'they rest'} on a single look.`,
      remedy: 'Measure again from the other end, or by another method, without looking at the first.',
      source: 'joinery A5',
    },
  ];
}

/** A sentence that names more readings than this is not read. */
const mostNamed = 6;
