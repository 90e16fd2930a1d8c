import type { Box, Point, ShapeEdge } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { unreachable } from '#core/problems';
import { readableTurn } from './dimension.ts';
import { boxAround } from './find-room.ts';
import { boxesOverlap, boxOfMark, drawLine, drawText, lettering } from './marks.ts';
import { formatSigned, formatSignedFine, formatSize } from './scales.ts';
import { footOn, pointsOfReading } from './reading-sketch.ts';
import { drawBow, drawRays, drawTickMark } from './survey-bends.ts';
import type { SurveySheet } from './survey-sheet.ts';
import { drawArrow } from './symbols.ts';
import { textWidth } from './text-width.ts';
import type { Mark, Pen } from './types.ts';

const besideEdge = 9; // mm of paper between an edge and the tape line along it
const tailPerMm = 5; // mm of paper for 1 mm of residual
const longestTail = 14; // mm of paper
const shownResidual = 0.05; // mm; smaller ones round to nothing

/** The tape line of one reading with its id, value and residual; nothing when its points are not known. */
export function drawReading(reading: Reading, sheet: SurveySheet): readonly Mark[] {
  if (!pointsOfReading(reading).every((name) => Object.hasOwn(sheet.points, name))) return [];
  switch (reading.kind) {
    case 'distance':
      return drawDistance(reading, sheet);
    case 'width': {
      const a = between(sheet, reading.left, reading.at);
      const b = between(sheet, reading.right, reading.at);
      return a && b ? drawTape(reading, a, b, sheet) : [];
    }
    case 'plumb':
    case 'level':
      return drawDeviation(reading, sheet);
    case 'offset':
    case 'ordinate': {
      const [a, b, p] = [reading.from, reading.to, reading.point].map((name) => sheet.points[name]);
      return a && b && p ? drawTape(reading, footOn(a, b, p), p, sheet) : [];
    }
    case 'angle':
      return drawRays(reading, sheet);
    case 'bow':
      return drawBow(reading, sheet);
    case 'tick':
      return drawTickMark(reading, sheet);
    case 'twist':
    case 'thickness':
      return []; // they are told in words: nothing of them lies in this plane
    default:
      return unreachable(reading);
  }
}

function between(sheet: SurveySheet, names: readonly [string, string], at: number): Point | null {
  const [a, b] = [sheet.points[names[0]], sheet.points[names[1]]];
  return a && b ? { x: a.x + (b.x - a.x) * at, y: a.y + (b.y - a.y) * at } : null;
}

/** Along an edge the tape line is set outwards beside it; across the shape it runs from point to point. */
function drawDistance(reading: Extract<Reading, { kind: 'distance' }>, sheet: SurveySheet): readonly Mark[] {
  const [a, b] = [sheet.points[reading.from], sheet.points[reading.to]];
  if (!a || !b) return [];
  const edge = sheet.view.shape?.edges.find(
    ({ from, to }) =>
      (from === reading.from && to === reading.to) || (from === reading.to && to === reading.from),
  );
  if (!edge) return drawTape(reading, a, b, sheet);
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const n = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const inward = n.x * (sheet.centre.x - a.x) + n.y * (sheet.centre.y - a.y) > 0 ? -1 : 1;
  const move = (p: Point, by: number) => ({ x: p.x + n.x * inward * by, y: p.y + n.y * inward * by });
  const beside = besideEdge + reachOut(edge, sheet);
  return [
    drawLine([move(a, 1), move(a, beside + 1.5)], 'thin', reading.id),
    drawLine([move(b, 1), move(b, beside + 1.5)], 'thin', reading.id),
    ...drawTape(reading, move(a, beside), move(b, beside), sheet),
  ];
}

/** How far a curved edge stands off the line between its ends, with room for the numbers of its ordinates; mm of paper. */
function reachOut({ from, to, curve }: ShapeEdge, { view, scale }: SurveySheet): number {
  const [a, b] = [view.shape?.points[from], view.shape?.points[to]];
  if (!curve || !a || !b) return 0;
  const chord = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const off = curve.map((p) => Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord);
  return Math.max(...off) * scale + besideEdge;
}

function isSuspect(reading: Reading, sheet: SurveySheet) {
  return sheet.view.adjustment.suspects.find((suspect) => suspect.id === reading.id);
}

function drawTape(reading: Reading, a: Point, b: Point, sheet: SurveySheet): readonly Mark[] {
  const suspect = isSuspect(reading, sheet);
  const turn = readableTurn(Math.atan2(b.y - a.y, b.x - a.x));
  const adjusted = sheet.view.adjustment.readings.find((r) => r.id === reading.id);
  const tone = suspect ? 'fault' : 'ink';
  const weight = suspect ? 'bold' : 'normal';
  const value = `${reading.id}  ${formatSize(reading.value, sheet.view.units)}`;
  const below = suspect
    ? `suspect: ${formatSize(Math.abs(suspect.slip), sheet.view.units)} too ${suspect.slip > 0 ? 'long' : 'short'}`
    : adjusted && Math.abs(adjusted.residual) >= shownResidual
      ? formatSignedFine(adjusted.residual, sheet.view.units)
      : '';
  const style = { turn, tone, weight, sheet, link: reading.id } as const;
  return [
    drawLine([a, b], suspect ? 'fault' : 'dimension', reading.id),
    ...[a, b].map((p) => drawTick(p, a, b, reading.id)),
    ...drawTail(adjusted?.residual ?? 0, a, b, reading.id),
    ...placeTexts([value, below], a, b, style),
  ];
}

function drawTick(p: Point, a: Point, b: Point, link: string): Mark {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const d = 1.3;
  return drawLine(
    [
      { x: p.x - d * (ux - uy), y: p.y - d * (uy + ux) },
      { x: p.x + d * (ux - uy), y: p.y + d * (uy + ux) },
    ],
    'outline',
    link,
  );
}

/** The residual as a thick tail at the end of the tape line, as long as it is large. */
function drawTail(residual: number, a: Point, b: Point, link: string): readonly Mark[] {
  if (Math.abs(residual) < shownResidual) return [];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const reach = Math.min(longestTail, Math.abs(residual) * tailPerMm, length / 3) / length;
  const start = { x: b.x + (a.x - b.x) * reach, y: b.y + (a.y - b.y) * reach };
  return [drawLine([start, b], 'residual', link)];
}

interface LabelStyle {
  readonly turn: number;
  readonly weight: 'normal' | 'bold';
  readonly tone: 'ink' | 'fault' | 'soft';
  readonly sheet: SurveySheet;
  readonly link: string;
}

// of the line; the middle comes last on slanting lines because diagonals cross there
const alongLine = [0.5, 0.38, 0.62, 0.28, 0.72, 0.2, 0.8];
const alongSlant = [0.28, 0.72, 0.2, 0.8, 0.36, 0.64, 0.16, 0.84, 0.5, 0.42, 0.58];

/** A text above the line and one below it, together at the first place along the line where they cover others least. */
function placeTexts(
  [above, below]: readonly [string, string],
  a: Point,
  b: Point,
  style: LabelStyle,
): readonly Mark[] {
  const { turn, sheet, ...shown } = style;
  const make = (t: number): readonly Mark[] => {
    const at = (off: number) => ({
      x: a.x + (b.x - a.x) * t - Math.sin(turn) * off,
      y: a.y + (b.y - a.y) * t + Math.cos(turn) * off,
    });
    const upper = drawText(at(1), above, { ...shown, turn, align: 'middle' });
    if (below === '') return [upper];
    const { small } = lettering;
    return [upper, drawText(at(-1 - small), below, { ...shown, turn, align: 'middle', height: small })];
  };
  const slanting = Math.abs(Math.sin(2 * turn)) > 0.35;
  const choices = (slanting ? alongSlant : alongLine).map(make);
  const hits = (marks: readonly Mark[]): number =>
    marks.flatMap(boxesAlong).filter((own) => sheet.taken.some((box) => boxesOverlap(box, own))).length;
  const counted = choices.map((marks) => ({ marks, hits: hits(marks) }));
  const least = Math.min(...counted.map((choice) => choice.hits));
  const chosen = counted.find((choice) => choice.hits === least)?.marks ?? [];
  sheet.taken.push(...chosen.flatMap(boxesAlong));
  return chosen;
}

const textPieces = 8; // boxes along a slanting text; one box round it all would claim far too much

/** Boxes that together cover a line of text set in the middle of its place. */
function boxesAlong(mark: Mark): readonly Box[] {
  if (mark.kind !== 'text' || !mark.turn) return [boxOfMark(mark)];
  const width = textWidth(mark.text, mark.height, mark.weight);
  const [c, s] = [Math.cos(mark.turn), Math.sin(mark.turn)];
  return Array.from({ length: textPieces }, (_, i) => {
    const along = width * ((i + 0.5) / textPieces - 0.5);
    const up = mark.height / 2;
    const at = { x: mark.at.x + c * along - s * up, y: mark.at.y + s * along + c * up };
    return boxAround(
      at,
      Math.abs(c) * (width / textPieces) + mark.height,
      Math.abs(s) * (width / textPieces) + mark.height,
    );
  });
}

/** A plumb or level deviation: a centre line from the first point, and the offset of the second from it. */
function drawDeviation(
  reading: Extract<Reading, { kind: 'plumb' | 'level' }>,
  sheet: SurveySheet,
): readonly Mark[] {
  const [a, b] = [sheet.points[reading.from], sheet.points[reading.to]];
  if (!a || !b) return [];
  const plumb = reading.kind === 'plumb';
  const foot = plumb ? { x: a.x, y: b.y } : { x: b.x, y: a.y };
  const suspect = isSuspect(reading, sheet);
  const pen: Pen = suspect ? 'fault' : 'centre';
  const signed = formatSigned(reading.value, sheet.view.units);
  const value = suspect ? `${signed} suspect` : signed;
  const text = `${reading.id} ${value}`;
  const { small } = lettering;
  // the text stands on the side of the line away from the second point, else towards the middle
  const lean = plumb ? b.x - foot.x : b.y - foot.y;
  const away = Math.abs(lean) > 0.4 ? lean > 0 : plumb ? sheet.centre.x < a.x : sheet.centre.y < a.y;
  // outside the shape the tape line along the edge leaves room near the foot only
  const outside = plumb && away !== sheet.centre.x < a.x;
  const share = outside ? 0.12 : 0.5;
  const at = plumb
    ? { x: a.x + (away ? -1 : 1 + small), y: a.y + (foot.y - a.y) * share }
    : { x: a.x + (foot.x - a.x) * share, y: a.y + (away ? -1.2 - small : 1.2) };
  const label = drawText(at, text, {
    height: small,
    align: 'middle',
    tone: suspect ? 'fault' : 'ink',
    link: reading.id,
    ...(plumb && { turn: Math.PI / 2 }),
  });
  sheet.taken.push(boxOfMark(label));
  const offset =
    Math.hypot(b.x - foot.x, b.y - foot.y) > 0.4
      ? drawArrow(foot, b, 'thin', Math.min(1.6, Math.hypot(b.x - foot.x, b.y - foot.y)))
      : [];
  return [drawLine([a, foot], pen, reading.id), ...offset, label];
}
