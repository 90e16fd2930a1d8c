import { findCrossing, type Point } from '#core/geometry';
import type { Position } from './network.ts';

type Places = Position['points'];

/** Twice the area that the corners go round, positive counter-clockwise; 0 when one is not placed. */
export function areaRound(points: Places, corners: readonly string[]): number {
  const way = placed(points, corners);
  return way.reduce((sum, p, k) => sum + cross(p, way[(k + 1) % way.length] ?? p), 0);
}

/**
 * How ill a position suits the order of its corners: the number of those that point inwards, Infinity when a side crosses
 * another. Whether it goes round one way or the other does not count.
 */
export function disorderOf(points: Places, corners: readonly string[]): number {
  const way = placed(points, corners);
  if (way.length < 3) return 0;
  if (findCrossing(way)) return Infinity;
  const hand = Math.sign(areaRound(points, corners));
  const turns = way.map((p, k) => {
    const before = way[(k + way.length - 1) % way.length] ?? p;
    const after = way[(k + 1) % way.length] ?? p;
    return Math.sign(cross(minus(p, before), minus(after, p)));
  });
  return turns.filter((turn) => turn === -hand).length;
}

/** On which side of the way from `from` to `to` a corner lies if no corner points inwards: 1 left, -1 right; 0 not known. */
export function sideByOrder(corners: readonly string[], from: string, to: string, corner: string): number {
  const [i, j, k] = [corners.indexOf(from), corners.indexOf(to), corners.indexOf(corner)];
  if (i < 0 || j < 0 || k < 0) return 0;
  return Math.sign((j - i) * (k - j) * (k - i));
}

/** On which side of the way from `from` to `to` a point lies: 1 left, -1 right, 0 on it. */
export function sideOf(from: Point, to: Point, point: Point): number {
  return Math.sign(cross(minus(to, from), minus(point, from)));
}

function placed(points: Places, corners: readonly string[]): readonly Point[] {
  const way = corners.flatMap((corner) => (Object.hasOwn(points, corner) ? (points[corner] ?? []) : []));
  return way.length === corners.length ? way : [];
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}
