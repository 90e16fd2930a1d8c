import type { Point } from '#core/geometry';
import { namesOf } from './network.ts';
import type { Position } from './network.ts';
import type { Reading } from './types.ts';

/** Where the coordinates begin: `origin` is (0, 0), the x axis runs to `along`. */
export interface Datum {
  readonly origin: string;
  readonly along: string;
}

export const openingCorners = ['BL', 'BR', 'TR', 'TL'] as const;

/** True when these points are among the four corners of an opening, so that their names tell left from right. */
export function isOpening(points: readonly string[]): boolean {
  return points.length > 0 && points.every((point) => openingCorners.some((corner) => corner === point));
}

/** True when the names of the points tell left from right: all are corners of an opening, or all its corners are there. */
export function knowsHand(points: readonly string[]): boolean {
  return isOpening(points) || openingCorners.every((corner) => points.includes(corner));
}

/** True when the corners of an opening go round clockwise, as in a mirror. */
export function goesClockwise(position: Position): boolean {
  const corners = openingCorners.map((corner) => position.points[corner] ?? { x: 0, y: 0 });
  const area = corners.reduce((sum, p, k) => {
    const q = corners[(k + 1) % corners.length] ?? p;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  return area < 0;
}

/** All points in the order in which the readings first mention them. */
export function pointsOf(readings: readonly Reading[]): readonly string[] {
  return [...new Set(readings.flatMap(namesOf))];
}

/** The datum of a survey: the first distance, else the first two points named; null without two points. */
export function datumOf(readings: readonly Reading[]): Datum | null {
  const first = readings.find((reading) => reading.kind === 'distance');
  if (first?.kind === 'distance') return { origin: first.from, along: first.to };
  const [origin, along] = pointsOf(readings);
  return origin === undefined || along === undefined ? null : { origin, along };
}

/** The same position moved and turned so that it starts at the datum. */
export function alignToDatum(position: Position, datum: Datum): Position {
  const origin = position.points[datum.origin] ?? { x: 0, y: 0 };
  const along = position.points[datum.along] ?? { x: 1, y: 0 };
  const angle = Math.atan2(along.y - origin.y, along.x - origin.x);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turn = (p: Point): Point => {
    const [dx, dy] = [p.x - origin.x, p.y - origin.y];
    return { x: dx * cos + dy * sin, y: dy * cos - dx * sin };
  };
  const points = Object.fromEntries(Object.entries(position.points).map(([name, p]) => [name, turn(p)]));
  points[datum.origin] = { x: 0, y: 0 };
  points[datum.along] = { x: points[datum.along]?.x ?? 1, y: 0 };
  return { ...position, points, tilt: normaliseAngle(position.tilt - angle) };
}

/** The mirror image in the x axis; upright is mirrored with it. */
export function mirrorPosition(position: Position): Position {
  const points = Object.fromEntries(
    Object.entries(position.points).map(([name, p]) => [name, { x: p.x, y: 0 - p.y }]),
  );
  return { ...position, points, tilt: normaliseAngle(Math.PI - position.tilt) };
}

/** The first point named that does not lie on the x axis; undefined when all do. */
export function firstOffAxis(position: Position, order: readonly string[]): string | undefined {
  const size = Math.max(...Object.values(position.points).map((p) => Math.hypot(p.x, p.y)));
  return order.find((name) => Math.abs(position.points[name]?.y ?? 0) > 1e-9 * size);
}

/** The same angle between -pi and pi. */
export function normaliseAngle(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
