import type { Point } from '#core/geometry';
import { readingWords, sayReading } from '#core/measuring';
import { formatNumber, type LengthSystem } from '#core/units';

import { hollowCorners } from './shapes/outline-shape.ts';
import { readingsOf } from './shapes/shape-readings.ts';
import { wordOrdinates } from './shapes/shape-words.ts';
import type { ShapeOutcome } from './types.ts';
import { listWords, showSizeIn, wrapLines } from './words.ts';

/** What the readings of one shape say: the slip to look into first, then what it is with two sigma, then advice. */
export function summariseShape(outcome: ShapeOutcome, units: LengthSystem = 'mm'): readonly string[] {
  const { shape, adjustment } = outcome;
  const show: Show = (length) => showSizeIn(units, length);
  return [
    `${shape.name}, seen ${shape.seenFrom}`,
    ...adjustment.suspects.flatMap((_, index) => describeSuspect(outcome, index, { show, units })),
    ...describeSlips(outcome, show),
    ...describeShape(outcome, show),
    ...adjustment.undetermined.flatMap((text) => wrapLines(`  Still open: ${text}`, 96, '    ')),
    ...(adjustment.advice === null ? [] : wrapLines(`  ${adjustment.advice}`, 96, '    ')),
    '',
  ];
}

/** A length in the units of the project. */
type Show = (length: number) => string;

function describeSuspect(
  { shape, adjustment }: ShapeOutcome,
  index: number,
  { show, units }: { readonly show: Show; readonly units: LengthSystem },
): readonly string[] {
  const suspect = adjustment.suspects[index];
  if (!suspect) return [];
  const reading = readingsOf(shape).find((each) => each.id === suspect.id);
  const name = reading ? readingWords(reading) : suspect.id;
  const isLength = reading?.kind !== 'angle' && units === 'inch';
  const value = reading ? ` reads ${isLength ? show(reading.value) : formatNumber(reading.value, 1)}` : '';
  const size = Math.abs(suspect.slip);
  const amount = isLength ? `${show(size)} in` : sayReading(reading ?? { kind: 'distance' }, size);
  const slip = `${amount} too ${suspect.slip > 0 ? 'large' : 'small'}`;
  const lead = index === 0 ? 'SLIP SUSPECTED' : 'or';
  return wrapLines(
    `  ${lead}: the ${name}${value}, about ${slip} by what the other readings say: ${suspect.cause}.`,
    96,
    '    ',
  );
}

function describeSlips({ shape, ordinateSlips = [] }: ShapeOutcome, show: Show): readonly string[] {
  return ordinateSlips.flatMap(({ item, at, slip }) => {
    const amount = show(Math.abs(slip));
    const which = `${at.length > 1 ? 'one of ' : ''}${wordOrdinates(shape, item, at)}`;
    return wrapLines(
      `  SLIP SUSPECTED: ${which}, about ${amount} too ${slip > 0 ? 'large' : 'small'} by the line of the others.`,
      96,
      '    ',
    );
  });
}

function describeShape(outcome: ShapeOutcome, show: Show): readonly string[] {
  const { shape, adjusted } = outcome;
  if (adjusted === null) return ['  The readings do not fix the shape yet.'];
  switch (shape.kind) {
    case 'opening':
      return describeCorners(outcome, show);
    case 'outline':
      return [...describeCorners(outcome, show), ...describeOutline(outcome, show)];
    case 'sections':
      return describeSections(outcome, show);
    case 'walls':
      return describeWalls(outcome, show);
  }
}

function describeCorners({ adjustment }: ShapeOutcome, show: Show): readonly string[] {
  const tilt =
    adjustment.tilt === null
      ? []
      : [`  Turned ${formatNumber(adjustment.tilt, 2)}° against the boat's upright.`];
  const n = (value: number): string => show(value).padStart(8);
  const longest = Math.max(4, ...adjustment.points.map(({ id }) => id.length));
  return [
    '  Corners, with two standard deviations:',
    ...adjustment.points.map(
      (point) =>
        `    ${point.id.padEnd(longest)} x ${n(point.x)} ±${show(2 * point.sx)}  y ${n(point.y)} ±${show(2 * point.sy)}`,
    ),
    ...tilt,
  ];
}

function describeOutline({ shape, adjusted }: ShapeOutcome, show: Show): readonly string[] {
  if (shape.kind !== 'outline' || !adjusted) return [];
  const hollow = hollowCorners(adjusted);
  const source = shape.traced?.source;
  return [
    ...(source === undefined ? [] : [`  Taken from the drawing ${source}.`]),
    ...(hollow.length === 0 ? [] : [`  Pointing inwards: ${listWords(hollow)}.`]),
    ...adjusted.edges.flatMap(({ name, curve, sigma }) =>
      curve ? [`  Curved ${name}: ${describeCurve(curve, show)}, ±${show(2 * (sigma ?? 0))}.`] : [],
    ),
  ];
}

/** How long a curve is, and how far it stands off the straight line between its ends. */
function describeCurve(curve: readonly Point[], show: Show): string {
  const [first, last] = [curve[0], curve.at(-1)];
  if (!first || !last) return 'nothing';
  const chord = Math.hypot(last.x - first.x, last.y - first.y);
  const length = curve.slice(1).reduce((sum, p, at) => {
    const before = curve[at] ?? p;
    return sum + Math.hypot(p.x - before.x, p.y - before.y);
  }, 0);
  const off = curve.map(
    (p) => ((p.y - first.y) * (last.x - first.x) - (p.x - first.x) * (last.y - first.y)) / (chord || 1),
  );
  const most = Math.max(...off.map(Math.abs));
  return `${show(length)} long over a straight ${show(chord)}, ${show(most)} off it at most`;
}

function describeSections({ adjusted }: ShapeOutcome, show: Show): readonly string[] {
  return (adjusted?.sections ?? []).map(({ name, at, line, sigma }) => {
    const [low, high] = [line[0], line.at(-1)];
    const depths = line.map(({ x }) => x);
    const n = show;
    return `  ${name}, at ${n(at)}: from height ${n(low?.y ?? 0)} to ${n(high?.y ?? 0)} the hull stands ${n(Math.min(...depths))} to ${n(Math.max(...depths))} off, ±${n(2 * sigma)}.`;
  });
}

function describeWalls({ shape, adjusted, adjustment }: ShapeOutcome, show: Show): readonly string[] {
  if (shape.kind !== 'walls' || !adjusted) return [];
  const n = show;
  return adjusted.edges.map(({ name, from, to, bow }, at) => {
    const [a, b] = [adjusted.points[from], adjusted.points[to]];
    const length = a && b ? Math.hypot(b.x - a.x, b.y - a.y) : 0;
    const corner = adjustment.readings.find(({ id }) => id.startsWith(`${shape.walls[at]?.id}/`));
    const hollow =
      bow === undefined || bow === 0 ? '' : `, ${bow > 0 ? 'hollow' : 'round'} by ${n(Math.abs(bow))}`;
    const then = corner === undefined ? '' : `; then a corner of ${formatNumber(corner.adjusted, 2)}°`;
    return `  ${name}: ${n(length)}${hollow}${then}.`;
  });
}
