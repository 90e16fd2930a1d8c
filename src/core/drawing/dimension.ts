import type { Point } from '#core/geometry';
import { drawLine, drawText, lettering } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

export interface DimensionStyle {
  /** From the points measured to the dimension line, to the left of the way from -> to; mm on paper. */
  readonly offset: number;
  readonly height?: number;
  /** Of the line and its text; extension lines and leaders lead nowhere. */
  readonly link?: string;
  /** Leads the text out beyond the line, this far along from the middle; mm on paper. */
  readonly aside?: number;
  /** Half lengths of the strokes at both ends; mm on paper. */
  readonly strokes?: readonly [number, number];
}

/** Half length of the oblique stroke in x and y, mm on paper. */
export const usualStroke = 1.3;
/** From the dimension line to a text led out, mm on paper. */
export const leaderReach = 4.5;
/** From the dimension line to the text on it, mm on paper. */
export const textOff = 1;
const gap = 1; // mm, between the thing and its extension line
const beyond = 1.5; // mm, extension line past the dimension line

/**
 * A dimension: extension lines, a line with oblique strokes, and the text above it, readable from below or from the right.
 * Text too long for the line stands beyond its far end.
 */
export function drawDimension(from: Point, to: Point, text: string, style: DimensionStyle): readonly Mark[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const u = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const n = { x: -u.y, y: u.x };
  const side = Math.sign(style.offset) || 1;
  const shift = (p: Point, along: number, across: number) => ({
    x: p.x + u.x * along + n.x * across,
    y: p.y + u.y * along + n.y * across,
  });
  const [a, b] = [shift(from, 0, style.offset), shift(to, 0, style.offset)];
  const height = style.height ?? lettering.usual;
  const outside = textWidth(text, height) > length - 1 && style.aside === undefined && text !== '';
  const lineEnd = outside ? shift(b, textWidth(text, height) + 3, 0) : b;
  const extensions =
    Math.abs(style.offset) > gap
      ? [from, to].map((p) =>
          drawLine([shift(p, 0, side * gap), shift(p, 0, style.offset + side * beyond)], 'thin'),
        )
      : [];
  const strokes = style.strokes ?? [usualStroke, usualStroke];
  const line = [
    ...extensions,
    drawLine([a, lineEnd], 'dimension', style.link),
    ...[a, b].map((p, i) => {
      const half = strokes[i] ?? usualStroke;
      return drawLine([strokeEnd(p, u, -half), strokeEnd(p, u, half)], 'outline', style.link);
    }),
  ];
  if (text === '') return line;
  if (style.aside !== undefined) {
    const outwards = { x: n.x * side, y: n.y * side };
    return [...line, ...textLedOut(mid(a, b), text, { ...style, aside: style.aside, u, height, outwards })];
  }
  return [
    ...line,
    dimensionText(outside ? shift(b, 2, 0) : mid(a, b), text, { ...style, u, height, outside }),
  ];
}

function strokeEnd(p: Point, u: Point, by: number): Point {
  // the stroke leans 45 degrees to the dimension line
  return { x: p.x + by * (u.x - u.y), y: p.y + by * (u.y + u.x) };
}

const mid = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

function dimensionText(
  at: Point,
  text: string,
  style: DimensionStyle & { readonly u: Point; readonly height: number; readonly outside: boolean },
): Mark {
  const { u, height, outside } = style;
  const turn = readableTurn(Math.atan2(u.y, u.x));
  const up = { x: -Math.sin(turn), y: Math.cos(turn) };
  const reversed = Math.cos(turn) * u.x + Math.sin(turn) * u.y < 0;
  return drawText({ x: at.x + up.x * textOff, y: at.y + up.y * textOff }, text, {
    height,
    turn,
    align: outside ? (reversed ? 'end' : 'start') : 'middle',
    ...(style.link !== undefined && { link: style.link }),
  });
}

/** The direction turned so that text along it reads from below or from the right: above -90 up to 90 degrees. */
export function readableTurn(angle: number): number {
  let turn = angle;
  while (turn <= -Math.PI / 2 + 1e-9) turn += Math.PI;
  while (turn > Math.PI / 2 + 1e-9) turn -= Math.PI;
  return turn;
}

/** A text beyond the dimension line, with a leader from the middle of the size. */
function textLedOut(
  from: Point,
  text: string,
  style: DimensionStyle & {
    readonly aside: number;
    readonly u: Point;
    readonly height: number;
    readonly outwards: Point;
  },
): readonly Mark[] {
  const { u, height, outwards, aside } = style;
  const turn = readableTurn(Math.atan2(u.y, u.x));
  const isAbove = outwards.y * Math.cos(turn) - outwards.x * Math.sin(turn) > 0;
  const place = (out: number) => ({
    x: from.x + u.x * aside + outwards.x * out,
    y: from.y + u.y * aside + outwards.y * out,
  });
  return [
    drawLine([from, place(leaderReach - 0.6)], 'thin'),
    drawText(place(isAbove ? leaderReach : leaderReach + height), text, {
      height,
      turn,
      align: 'middle',
      ...(style.link !== undefined && { link: style.link }),
    }),
  ];
}
