import type { Point } from '#core/geometry';
import { drawLine, drawText, lettering } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

export interface DimensionStyle {
  /** From the points measured to the dimension line, to the left of the way from -> to; mm on paper. */
  readonly offset: number;
  readonly height?: number;
  readonly link?: string;
  /** Moves the text off the line by this many rows, for small sizes in a chain. */
  readonly raise?: number;
}

const stroke = 1.3; // mm, half length of the oblique stroke in x and y
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
  const outside = textWidth(text, height) > length - 1 && style.raise === undefined;
  const lineEnd = outside ? shift(b, textWidth(text, height) + 3, 0) : b;
  const extensions =
    Math.abs(style.offset) > gap
      ? [from, to].map((p) =>
          drawLine([shift(p, 0, side * gap), shift(p, 0, style.offset + side * beyond)], 'thin', style.link),
        )
      : [];
  return [
    ...extensions,
    drawLine([a, lineEnd], 'dimension', style.link),
    ...[a, b].map((p) => drawLine([strokeEnd(p, u, -1), strokeEnd(p, u, 1)], 'outline', style.link)),
    dimensionText(outside ? shift(b, 2, 0) : mid(a, b), text, { ...style, u, height, outside }),
  ];
}

function strokeEnd(p: Point, u: Point, sign: number): Point {
  // the stroke leans 45 degrees to the dimension line
  return { x: p.x + sign * stroke * (u.x - u.y), y: p.y + sign * stroke * (u.y + u.x) };
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
  const off = 1 + (style.raise ?? 0) * height * 1.35;
  const reversed = Math.cos(turn) * u.x + Math.sin(turn) * u.y < 0;
  return drawText({ x: at.x + up.x * off, y: at.y + up.y * off }, text, {
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

/** A row of dimensions between stations along a straight line; small ones are raised in turn so that texts stay apart. */
export function drawChain(
  stations: readonly Point[],
  texts: readonly string[],
  style: { readonly offset: number; readonly height?: number },
): readonly Mark[] {
  const height = style.height ?? lettering.usual;
  let row = 0;
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i] ?? to;
    const text = texts[i] ?? '';
    const tight = textWidth(text, height) > Math.hypot(to.x - from.x, to.y - from.y) - 1;
    row = tight ? (row % 2) + 1 : 0;
    return drawDimension(from, to, text, { ...style, height, ...(tight && { raise: row }) });
  });
}
