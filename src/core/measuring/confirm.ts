import type { Problem } from '#core/problems';
import { sigmaOf } from './methods.ts';
import { readingWords } from './opening.ts';
import type { Reading, Suspect } from './types.ts';
import { sayReading } from './words.ts';

/**
 * The reading with what the others say it should be, to be confirmed on site: until then it is put aside, and neither its
 * own value nor the one expected counts. Of an ordinate or a tick whose station is suspected the whole reading is put aside.
 * Null when the suspect is another reading. Nothing is corrected: see `confirmReading`.
 */
export function suggestRepeat(reading: Reading, suspect: Suspect): Reading | null {
  if (suspect.id !== reading.id || !Number.isFinite(suspect.slip)) return null;
  return { ...reading, toConfirm: suspect.part === undefined ? reading.value - suspect.slip : reading.value };
}

/** Looks nearer to each other than this many sigma are the same (joinery A5: 3 sigma of a difference). */
const same = 3 * Math.SQRT2;

/**
 * The reading after a fresh look at it. A look near the value expected takes the place of what was read, which goes into the
 * note; any other is kept beside it as a repeat, for the adjustment to judge.
 */
export function confirmReading(reading: Reading, look: number): Reading {
  const { toConfirm, ...plain } = reading;
  const near = (value: number) => Math.abs(value - look) <= same * sigmaOf(reading);
  if (toConfirm === undefined || !near(toConfirm) || near(reading.value))
    return { ...plain, repeats: [...(reading.repeats ?? []), look] } as Reading;
  const looks = [reading.value, ...(reading.repeats ?? [])].map((value) => sayReading(reading, value));
  const note = [reading.note, `First read as ${looks.join(' and ')}.`].filter((text) => text).join(' ');
  return { ...plain, value: look, repeats: [], note } as Reading;
}

/** The reading as before the suggestion was taken. */
export function withdrawSuggestion(reading: Reading): Reading {
  const { toConfirm, ...plain } = reading;
  return toConfirm === undefined ? reading : (plain as Reading);
}

/** True while a reading is put aside until it is looked at again. */
export function isAside({ toConfirm }: Pick<Reading, 'toConfirm'>): boolean {
  return toConfirm !== undefined;
}

/** The readings put aside, a sentence each. Source: joinery A4, never corrected without a look. */
export function findToConfirm(readings: readonly Reading[]): readonly Problem[] {
  return readings.flatMap((reading): Problem[] => {
    if (reading.toConfirm === undefined) return [];
    const read = sayReading(reading, reading.value);
    const expected = sayReading(reading, reading.toConfirm);
    const what =
      read === expected ? `, read as ${read},` : ` was read as ${read}, the others say ${expected}: it`;
    return [
      {
        severity: 'warn',
        code: 'reading-to-confirm',
        about: reading.id,
        message: `The ${readingWords(reading)}${what} is put aside and counts for nothing until it is measured again.`,
        remedy: 'Measure it on site before cutting, without looking at either number.',
        source: 'joinery A4',
      },
    ];
  });
}
