import { readingWords, sayReading } from '#core/measuring';
import { formatNumber } from '#core/units';

import type { ShapeOutcome } from './types.ts';
import { wrapLines } from './words.ts';

/** What the readings of one shape say: the slip to look into first, then corners with two sigma, then advice. */
export function summariseShape(outcome: ShapeOutcome): readonly string[] {
  const { shape, adjustment } = outcome;
  return [
    `${shape.name}, seen ${shape.seenFrom}`,
    ...adjustment.suspects.flatMap((_, index) => describeSuspect(outcome, index)),
    ...describeCorners(outcome),
    ...adjustment.undetermined.flatMap((text) => wrapLines(`  Still open: ${text}`, 96, '    ')),
    ...(adjustment.advice === null ? [] : wrapLines(`  ${adjustment.advice}`, 96, '    ')),
    '',
  ];
}

function describeSuspect({ shape, adjustment }: ShapeOutcome, index: number): readonly string[] {
  const suspect = adjustment.suspects[index];
  if (!suspect) return [];
  const reading = shape.readings.find((each) => each.id === suspect.id);
  const name = reading ? readingWords(reading) : suspect.id;
  const value = reading ? ` reads ${formatNumber(reading.value, 1)}` : '';
  const amount = sayReading(reading ?? { kind: 'distance' }, Math.abs(suspect.slip));
  const slip = `${amount} too ${suspect.slip > 0 ? 'large' : 'small'}`;
  const lead = index === 0 ? 'SLIP SUSPECTED' : 'or';
  return wrapLines(
    `  ${lead}: the ${name}${value}, about ${slip} by what the other readings say: ${suspect.cause}.`,
    96,
    '    ',
  );
}

function describeCorners({ adjustment, adjusted }: ShapeOutcome): readonly string[] {
  if (adjusted === null) return ['  The readings do not fix the shape yet.'];
  const tilt =
    adjustment.tilt === null
      ? []
      : [`  Turned ${formatNumber(adjustment.tilt, 2)}° against the boat's upright.`];
  const n = (value: number): string => formatNumber(value, 1).padStart(8);
  return [
    '  Corners, with two standard deviations:',
    ...adjustment.points.map(
      (point) =>
        `    ${point.id.padEnd(4)} x ${n(point.x)} ±${formatNumber(2 * point.sx, 1)}  y ${n(point.y)} ±${formatNumber(2 * point.sy, 1)}`,
    ),
    ...tilt,
  ];
}
