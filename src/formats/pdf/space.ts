import type { Point } from '#core/geometry';
import type { Tone } from '#core/drawing';

/** PDF points in a millimetre (ISO 32000-1: the default unit is 1/72 inch). */
export const points = 72 / 25.4;

/** From mm of a drawing, y up, to points of the page, y down. */
export type Space = (point: Point) => Point;

/** The space of a drawing moved by `by` mm on a page of this height. */
export function withPage(height: number, by: Point): Space {
  return ({ x, y }) => ({ x: (x + by.x) * points, y: (height - y - by.y) * points });
}

export const pdfColours: Readonly<Record<Tone, string>> = {
  ink: '#14181c',
  soft: '#3d4650',
  guide: '#7d868e',
  fault: '#a3201a',
  paper: '#ffffff',
};
