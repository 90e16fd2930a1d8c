import type { Box, Point } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { unreachable } from '#core/problems';
import { readableTurn } from './dimension.ts';
import { boxesOverlap, boxOfMark, drawLine, drawText, lettering } from './marks.ts';
import { formatMm, formatSigned } from './scales.ts';
import type { SurveyView } from './survey-view.ts';
import { drawArrow } from './symbols.ts';
import type { Mark, Pen } from './types.ts';

export interface SurveySheet {
  readonly view: Pick<SurveyView, 'adjustment' | 'shape'>;
  /** Points on paper. */
  readonly points: Readonly<Record<string, Point>>;
  readonly centre: Point;
  readonly scale: number;
  /** Boxes of texts already set; new texts move along their line to keep clear of them. */
  readonly taken: Box[];
}

const besideEdge = 9; // mm of paper between an edge and the tape line along it
const tailPerMm = 5; // mm of paper for 1 mm of residual
const longestTail = 14; // mm of paper

/** The tape line of one reading with its id, value and residual; nothing when its points are not known. */
export function drawReading(reading: Reading, sheet: SurveySheet): readonly Mark[] {
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
  const edge = sheet.view.shape?.edges.some(
    ({ from, to }) =>
      (from === reading.from && to === reading.to) || (from === reading.to && to === reading.from),
  );
  if (!edge) return drawTape(reading, a, b, sheet);
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const n = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const inward = n.x * (sheet.centre.x - a.x) + n.y * (sheet.centre.y - a.y) > 0 ? -1 : 1;
  const move = (p: Point, by: number) => ({ x: p.x + n.x * inward * by, y: p.y + n.y * inward * by });
  return [
    drawLine([move(a, 1), move(a, besideEdge + 1.5)], 'thin', reading.id),
    drawLine([move(b, 1), move(b, besideEdge + 1.5)], 'thin', reading.id),
    ...drawTape(reading, move(a, besideEdge), move(b, besideEdge), sheet),
  ];
}

function isSuspect(reading: Reading, sheet: SurveySheet) {
  return sheet.view.adjustment.suspects.find((suspect) => suspect.id === reading.id);
}

function drawTape(reading: Reading, a: Point, b: Point, sheet: SurveySheet): readonly Mark[] {
  const suspect = isSuspect(reading, sheet);
  const pen: Pen = suspect ? 'fault' : 'dimension';
  const turn = readableTurn(Math.atan2(b.y - a.y, b.x - a.x));
  const text = `${reading.id}  ${formatMm(reading.value)}`;
  const tone = suspect ? 'fault' : 'ink';
  const label = placeText(text, a, b, {
    turn,
    height: lettering.usual,
    weight: suspect ? 'bold' : 'normal',
    tone,
    off: 1,
    sheet,
    link: reading.id,
  });
  const slip = suspect
    ? placeText(
        `suspect: ${formatMm(Math.abs(suspect.slip))} too ${suspect.slip > 0 ? 'long' : 'short'}`,
        a,
        b,
        {
          turn,
          height: lettering.small,
          weight: 'bold',
          tone: 'fault',
          off: -1 - lettering.small,
          sheet,
          link: reading.id,
        },
      )
    : null;
  const ends = [a, b].map((p) => drawTick(p, a, b, reading.id));
  return [
    drawLine([a, b], pen, reading.id),
    ...ends,
    ...drawTail(reading, a, b, sheet),
    label,
    ...(slip ? [slip] : []),
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

/** The residual as a thick tail past the end of the tape (too long) or back along it (too short), with its number. */
function drawTail(reading: Reading, a: Point, b: Point, sheet: SurveySheet): readonly Mark[] {
  const adjusted = sheet.view.adjustment.readings.find((r) => r.id === reading.id);
  if (!adjusted || Math.abs(adjusted.residual) < 0.05) return [];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const reach = Math.max(-longestTail, Math.min(longestTail, adjusted.residual * tailPerMm));
  const end = { x: b.x + ux * reach, y: b.y + uy * reach };
  const outer = reach > 0 ? end : b;
  const turn = readableTurn(Math.atan2(uy, ux));
  const reversed = Math.cos(turn) * ux + Math.sin(turn) * uy < 0;
  const suspect = isSuspect(reading, sheet);
  const at = { x: outer.x + ux * 1.5 + Math.sin(turn) * 0.9, y: outer.y + uy * 1.5 - Math.cos(turn) * 0.9 };
  return [
    drawLine([b, end], 'cut', reading.id),
    drawText(at, formatSigned(adjusted.residual), {
      height: lettering.fine,
      turn,
      align: reversed ? 'end' : 'start',
      tone: suspect ? 'fault' : 'soft',
      link: reading.id,
    }),
  ];
}

interface LabelStyle {
  readonly turn: number;
  readonly height: number;
  readonly weight: 'normal' | 'bold';
  readonly tone: 'ink' | 'fault' | 'soft';
  /** Across the line, mm of paper; negative below. */
  readonly off: number;
  readonly sheet: SurveySheet;
  readonly link: string;
}

// of the line; the middle is tried last because diagonals cross there
const tries = [0.5, 0.38, 0.62, 0.28, 0.72, 0.2, 0.8];

function placeText(text: string, a: Point, b: Point, style: LabelStyle): Mark {
  const { turn, height, weight, tone, off, sheet, link } = style;
  const make = (t: number) =>
    drawText(
      { x: a.x + (b.x - a.x) * t - Math.sin(turn) * off, y: a.y + (b.y - a.y) * t + Math.cos(turn) * off },
      text,
      { height, weight, tone, turn, align: 'middle', link },
    );
  const slanting = Math.abs(Math.sin(2 * turn)) > 0.2;
  const order = slanting ? [...tries.slice(3), ...tries.slice(1, 3), 0.5] : tries;
  const free = order.map(make).find((mark) => !sheet.taken.some((box) => boxesOverlap(box, boxOfMark(mark))));
  const chosen = free ?? make(order[0] ?? 0.5);
  sheet.taken.push(boxOfMark(chosen));
  return chosen;
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
  const value = suspect ? `${formatSigned(reading.value)} suspect` : formatSigned(reading.value);
  const text = `${reading.id} ${value}`;
  const inward = plumb ? (sheet.centre.x > b.x ? 1 : -1) : sheet.centre.y > b.y ? 1 : -1;
  const at = plumb
    ? { x: a.x + inward * 2, y: a.y + (b.y - a.y) * 0.86 }
    : { x: a.x + (b.x - a.x) * 0.5, y: b.y + (inward > 0 ? 2 : -2 - lettering.small) };
  const label = drawText(at, text, {
    height: lettering.small,
    align: plumb ? (inward > 0 ? 'start' : 'end') : 'middle',
    tone: suspect ? 'fault' : 'ink',
    link: reading.id,
  });
  sheet.taken.push(boxOfMark(label));
  const offset =
    Math.hypot(b.x - foot.x, b.y - foot.y) > 0.4
      ? drawArrow(foot, b, 'thin', Math.min(1.6, Math.hypot(b.x - foot.x, b.y - foot.y)))
      : [];
  return [drawLine([a, foot], pen, reading.id), ...offset, label];
}
