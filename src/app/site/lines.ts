import {
  makeOpeningReading,
  openingChecklist,
  openingKeyOf,
  readingWords,
  type AdjustedReading,
  type ChecklistLine,
  type Method,
  type OpeningKey,
  type Reading,
  type Suspect,
} from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { omit } from '../omit.ts';

/** A line of the checklist on site: a standard reading, taken or not, or one of the user's own. */
export interface SiteLine {
  readonly id: string;
  readonly words: string;
  readonly where: string;
  readonly kind: Reading['kind'];
  readonly standard: ChecklistLine | null;
  readonly reading: Reading | null;
  readonly adjusted: AdjustedReading | null;
  readonly suspect: Suspect | null;
}

/** The twelve readings in the order of the visit, then whatever else was measured. */
export function siteLines(outcome: ShapeOutcome): readonly SiteLine[] {
  const { readings } = outcome.shape;
  const keys = new Map(readings.map((reading) => [reading.id, openingKeyOf(reading)]));
  const standard = openingChecklist.map((entry) => {
    const reading = readings.find((each) => keys.get(each.id) === entry.key) ?? null;
    return makeLine(outcome, reading, entry);
  });
  const shown = standard.flatMap((line) => (line.reading ? [line.reading.id] : []));
  const others = readings.filter((reading) => !shown.includes(reading.id));
  return [...standard, ...others.map((reading) => makeLine(outcome, reading, null))];
}

function makeLine(outcome: ShapeOutcome, reading: Reading | null, standard: ChecklistLine | null): SiteLine {
  const { adjustment } = outcome;
  const id = reading?.id ?? standard?.key ?? '';
  return {
    id,
    words: standard?.words ?? (reading ? readingWords(reading) : id),
    where: standard?.where ?? '',
    kind: reading?.kind ?? standard?.kind ?? 'distance',
    standard,
    reading,
    adjusted: adjustment.readings.find((each) => each.id === reading?.id) ?? null,
    suspect: adjustment.suspects.find((each) => each.id === reading?.id) ?? null,
  };
}

/** The line to measure next: the chosen one, else the first without a reading; null when all are there. */
export function nextLine(lines: readonly SiteLine[], chosen: string | null): SiteLine | null {
  return lines.find((line) => line.id === chosen) ?? lines.find((line) => line.reading === null) ?? null;
}

/** What is said of how a reading was taken. */
export interface Manner {
  readonly method: Method | '';
  readonly toFace: string;
}

/** A new standard reading as entered; the usual method when none was chosen. */
export function makeReading(
  line: SiteLine,
  value: number,
  manner: Manner,
  taken: readonly string[],
): Reading {
  const key = line.id as OpeningKey;
  const id = taken.includes(key) ? `${key}-2` : key;
  return makeOpeningReading(key, value, { id, ...mannerOf(manner) });
}

/** The reading with another value or manner. */
export function changeReading(reading: Reading, value: number, manner: Manner): Reading {
  return { ...omit(reading, 'method', 'toFace'), value, ...mannerOf(manner) } as Reading;
}

function mannerOf(manner: Manner): Partial<Pick<Reading, 'method' | 'toFace'>> {
  return {
    ...(manner.method !== '' && { method: manner.method }),
    ...(manner.toFace.trim() !== '' && { toFace: manner.toFace.trim() }),
  };
}

/** Whether a sign is part of the reading, as for lean and rise. */
export function isSigned(line: SiteLine): boolean {
  return line.kind === 'plumb' || line.kind === 'level';
}
