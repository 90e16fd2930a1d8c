import type { Point } from '#core/geometry';

/** A straight line through a point in a direction of length one; what lies to its left is kept. */
export interface Line {
  readonly at: Point;
  readonly along: Point;
}

const degrees = 180 / Math.PI;
const hair = 1e-9;

/** From one point to another, length one; along x when they are one point. */
export function wayTo(from: Point, to: Point): Point {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  return size < hair ? { x: 1, y: 0 } : { x: (to.x - from.x) / size, y: (to.y - from.y) / size };
}

/** Left of a direction. */
export const leftOf = ({ x, y }: Point): Point => ({ x: -y, y: x });

/** The line of a side moved to its left by a distance, mm. */
export function lineOf(from: Point, to: Point, inwards = 0): Line {
  const along = wayTo(from, to);
  return { at: step(from, leftOf(along), inwards), along };
}

/** A point some mm further in a direction. */
export function step({ x, y }: Point, way: Point, distance: number): Point {
  return { x: x + way.x * distance, y: y + way.y * distance };
}

/** The same line kept on its other side. */
export function flip({ at, along }: Line): Line {
  return { at, along: { x: -along.x, y: -along.y } };
}

/** Where two lines cross; null when they run alike. */
export function crossing(one: Line, other: Line): Point | null {
  const turn = one.along.x * other.along.y - one.along.y * other.along.x;
  if (Math.abs(turn) < hair) return null;
  const [dx, dy] = [other.at.x - one.at.x, other.at.y - one.at.y];
  return step(one.at, one.along, (dx * other.along.y - dy * other.along.x) / turn);
}

/** How far a point lies to the left of a line, mm. */
export function leftBy(point: Point, { at, along }: Line): number {
  return along.x * (point.y - at.y) - along.y * (point.x - at.x);
}

/** What of a convex polygon lies to the left of all lines; empty when nothing. */
export function keepLeft(polygon: readonly Point[], lines: readonly Line[]): readonly Point[] {
  return lines.reduce(keepLeftOfOne, polygon);
}

function keepLeftOfOne(polygon: readonly Point[], line: Line): readonly Point[] {
  return polygon.flatMap((here, i) => {
    const next = polygon[(i + 1) % polygon.length] ?? here;
    const [a, b] = [leftBy(here, line), leftBy(next, line)];
    const kept = a >= -hair ? [here] : [];
    if ((a > hair && b < -hair) || (a < -hair && b > hair)) {
      const share = a / (a - b);
      kept.push({ x: here.x + (next.x - here.x) * share, y: here.y + (next.y - here.y) * share });
    }
    return kept;
  });
}

/**
 * The polygon with each side moved in by its own distance, side i from point i to the next, mm; null when a side would
 * turn round, as nothing is left of it then.
 */
export function insetSides(points: readonly Point[], distances: readonly number[]): readonly Point[] | null {
  const count = points.length;
  const lines = points.map((from, i) => lineOf(from, points[(i + 1) % count] ?? from, distances[i] ?? 0));
  const corners = lines.map((line, i) => {
    const before = lines[(i + count - 1) % count] ?? line;
    return crossing(before, line) ?? line.at;
  });
  const kept = corners.every((corner, i) => {
    const next = corners[(i + 1) % count] ?? corner;
    const along = lines[i]?.along ?? { x: 1, y: 0 };
    return (next.x - corner.x) * along.x + (next.y - corner.y) * along.y > hair;
  });
  return kept ? corners : null;
}

/** The inside angle at a point of a counter-clockwise polygon, degrees. */
export function angleAt(points: readonly Point[], i: number): number {
  const count = points.length;
  const here = points[i % count] ?? { x: 0, y: 0 };
  const before = wayTo(here, points[(i + count - 1) % count] ?? here);
  const after = wayTo(here, points[(i + 1) % count] ?? here);
  const turn = Math.atan2(after.x * before.y - after.y * before.x, after.x * before.x + after.y * before.y);
  return (turn < 0 ? turn + 2 * Math.PI : turn) * degrees;
}

/** True when every corner of a counter-clockwise polygon points outwards. */
export function isConvex(points: readonly Point[]): boolean {
  return points.length >= 3 && points.every((_, i) => angleAt(points, i) < 180 - 1e-6);
}
