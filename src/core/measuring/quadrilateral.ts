import type { Point } from '#core/geometry';

/** The six distances of an opening, mm. */
export interface SixDistances {
  readonly wb: number;
  readonly wt: number;
  readonly hl: number;
  readonly hr: number;
  readonly d1: number;
  readonly d2: number;
}

export interface Quadrilateral {
  /** Top corners with BL at (0, 0) and BR at (wb, 0); the top width is not used. */
  readonly topRight: Point;
  readonly topLeft: Point;
  /** Top width as read less the one the five others give, mm. */
  readonly closureTop: number;
  /** By how much the six miss closing, in mm of tape: as exact as one reading in a near-rectangle (Euler's identity). */
  readonly closure: number;
}

/** An opening from its six distances in closed form (joinery A2); null when no triangle has such sides. */
export function closeQuadrilateral({ wb, wt, hl, hr, d1, d2 }: SixDistances): Quadrilateral | null {
  const right = (d1 ** 2 + wb ** 2 - hr ** 2) / (2 * wb);
  const left = (hl ** 2 + wb ** 2 - d2 ** 2) / (2 * wb);
  const topRight = { x: right, y: Math.sqrt(d1 ** 2 - right ** 2) };
  const topLeft = { x: left, y: Math.sqrt(hl ** 2 - left ** 2) };
  const [dx, dy] = [topRight.x - topLeft.x, topRight.y - topLeft.y];
  if (!Number.isFinite(dx + dy) || wb <= 0) return null;
  const fourM2 = (dx - wb) ** 2 + dy ** 2;
  const sum = wb ** 2 + wt ** 2 + hl ** 2 + hr ** 2 - d1 ** 2 - d2 ** 2 - fourM2;
  return { topRight, topLeft, closureTop: wt - Math.hypot(dx, dy), closure: sum / (2 * (d1 + d2)) };
}
