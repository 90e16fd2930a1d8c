import type { Point } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { formatNumber } from '#core/units';
import { boxOfMark, drawLine, drawText, lettering } from './marks.ts';
import { formatSigned } from './scales.ts';
import type { SurveySheet } from './survey-sheet.ts';
import type { Mark, Pen } from './types.ts';

const rayShare = 0.15; // of the way to the end named
const bowTick = 4; // mm of paper
const tickArm = 1.2; // mm of paper

/** The beginning of both directions, and the angle beside them. */
export function drawRays(reading: Extract<Reading, { kind: 'angle' }>, sheet: SurveySheet): readonly Mark[] {
  const [at, from, to] = [reading.at, reading.from, reading.to].map((name) => sheet.points[name]);
  if (!at || !from || !to) return [];
  const pen: Pen = isSuspect(reading, sheet) ? 'fault' : 'dimension';
  const part = (end: Point) => ({ x: at.x + (end.x - at.x) * rayShare, y: at.y + (end.y - at.y) * rayShare });
  // the corner between two walls, as `w1/w2`, says by its place which it is
  const name = reading.id.includes('/') ? '' : `${reading.id} `;
  const text = `${name}${formatNumber(reading.value, 1)}°`;
  const middle = { x: (part(from).x + part(to).x) / 2, y: (part(from).y + part(to).y) / 2 };
  return [drawLine([part(from), at, part(to)], pen, reading.id), labelAt(reading, text, middle, sheet)];
}

/** A tick at mid edge with the bow, which is too small to be drawn to scale. */
export function drawBow(reading: Extract<Reading, { kind: 'bow' }>, sheet: SurveySheet): readonly Mark[] {
  const [a, b] = [sheet.points[reading.from], sheet.points[reading.to]];
  if (!a || !b) return [];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const inward = Math.atan2(sheet.centre.y - middle.y, sheet.centre.x - middle.x);
  const end = { x: middle.x + bowTick * Math.cos(inward), y: middle.y + bowTick * Math.sin(inward) };
  const pen: Pen = isSuspect(reading, sheet) ? 'fault' : 'dimension';
  const text = `${reading.id} ${formatSigned(reading.value, sheet.view.units)}`;
  return [drawLine([middle, end], pen, reading.id), labelAt(reading, text, end, sheet)];
}

/** A small cross with the name of the reading at a point brought over by stick. */
export function drawTickMark(
  reading: Extract<Reading, { kind: 'tick' }>,
  sheet: SurveySheet,
): readonly Mark[] {
  const p = sheet.points[reading.point];
  if (!p) return [];
  const pen: Pen = isSuspect(reading, sheet) ? 'fault' : 'dimension';
  const away = Math.atan2(sheet.centre.y - p.y, sheet.centre.x - p.x);
  const at = { x: p.x + 2 * bowTick * Math.cos(away), y: p.y + 2 * bowTick * Math.sin(away) };
  const arms = [1, -1].map((side) =>
    drawLine(
      [
        { x: p.x - tickArm, y: p.y - side * tickArm },
        { x: p.x + tickArm, y: p.y + side * tickArm },
      ],
      pen,
      reading.id,
    ),
  );
  return [...arms, labelAt(reading, reading.id, at, sheet)];
}

function labelAt(reading: Reading, text: string, at: Point, sheet: SurveySheet): Mark {
  const suspect = isSuspect(reading, sheet);
  const weight = suspect ? 'bold' : 'normal';
  const tone = suspect ? 'fault' : 'ink';
  const label = drawText(at, text, {
    height: lettering.small,
    align: 'middle',
    weight,
    tone,
    link: reading.id,
  });
  sheet.taken.push(boxOfMark(label));
  return label;
}

function isSuspect(reading: Reading, sheet: SurveySheet): boolean {
  return sheet.view.adjustment.suspects.some((suspect) => suspect.id === reading.id);
}
