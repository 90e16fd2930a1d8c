import { adjustSurvey, sayReading } from '#core/measuring';
import { succeed, type Result } from '#core/problems';
import { formatNumber } from '#core/units';
import { readReadings } from '#formats/csv';
import { readSurvey } from '#formats/json';
import type { Adjustment, Survey } from '#core/measuring';

import type { Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { oneFile } from './one-file.ts';

/** `measure READINGS.json` or `READINGS.csv`: the adjusted shape, and which reading to doubt. */
export async function runMeasure(io: Io, given: Arguments): Promise<Outcome> {
  const file = oneFile(given, 'measure READINGS.json');
  if (!file.ok) return { kind: 'refused', findings: file.problems };
  const text = readInput(io, file.value);
  if (!text.ok) return { kind: 'refused', findings: text.problems };
  const survey = /\.csv$/i.test(file.value) ? readTable(text.value) : readSurvey(text.value);
  if (!survey.ok) return { kind: 'refused', findings: survey.problems };
  const found = adjustSurvey(survey.value).adjustment;
  const adjustment = { ...found, findings: [...survey.problems, ...found.findings] };
  return {
    kind: 'done',
    document: adjustment,
    text: describeAdjustment(adjustment, survey.value),
    findings: adjustment.findings,
  };
}

/** A survey from a table; rows that cannot be read are told beside it. */
function readTable(text: string): Result<Survey> {
  const table = readReadings(text);
  if (!table.ok) return table;
  const { readings, seenFrom } = table.value;
  return succeed({ seenFrom: seenFrom ?? '', readings }, table.problems);
}

function describeAdjustment(adjustment: Adjustment, { readings }: Survey): string {
  const kindOf = (id: string) =>
    readings.find((reading) => reading.id === id) ?? { kind: 'distance' as const };
  const n = (value: number, digits = 1): string => formatNumber(value, digits).padStart(8);
  const lines = [
    `Seen ${adjustment.seenFrom}; mm, ± two standard deviations`,
    ...adjustment.points.map(
      (point) =>
        `  ${point.id.padEnd(6)} x ${n(point.x)} ± ${n(2 * point.sx).trim()}   y ${n(point.y)} ± ${n(2 * point.sy).trim()}`,
    ),
    ...(adjustment.tilt === null ? [] : [`  tilt ${formatNumber(adjustment.tilt, 3)}°`]),
    '',
    '  reading      said  adjusted  residual  smallest slip it would show',
    ...adjustment.readings.map(
      (reading) =>
        `  ${reading.id.padEnd(8)}${n(reading.value)}  ${n(reading.adjusted)}  ${n(reading.residual)}  ${reading.smallestSlip === null ? 'none: nothing checks it' : n(reading.smallestSlip)}`,
    ),
    '',
    ...adjustment.suspects.map(
      ({ id, slip, cause }) =>
        `Doubt ${id}: about ${sayReading(kindOf(id), Math.abs(slip))} too ${slip > 0 ? 'large' : 'small'}, ${cause}`,
    ),
    ...adjustment.undetermined,
    ...(adjustment.advice === null ? [] : [adjustment.advice]),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}
