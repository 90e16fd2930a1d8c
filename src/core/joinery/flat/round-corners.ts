import type { Outline, Point } from '#core/geometry';
import { angleAt, step, wayTo } from './polygon.ts';

/** From a corner to where its arc begins, mm: the tangent length of a radius at an inside angle. */
export function tangentLength(radius: number, degrees: number): number {
  return radius / Math.tan((degrees * Math.PI) / 360);
}

/** A polygon with its corners rounded, each by its own radius; 0 leaves it sharp. The arcs must fit on the sides. */
export function roundCorners(points: readonly Point[], radii: readonly number[]): Outline {
  const count = points.length;
  return points.flatMap((here, i) => {
    const radius = radii[i] ?? 0;
    const angle = angleAt(points, i);
    if (radius <= 0 || Math.abs(angle - 180) < 1e-6) return [{ x: here.x, y: here.y }];
    const reach = Math.abs(tangentLength(radius, angle));
    const start = step(here, wayTo(here, points[(i + count - 1) % count] ?? here), reach);
    const end = step(here, wayTo(here, points[(i + 1) % count] ?? here), reach);
    return [{ ...start, bulge: Math.tan(((180 - angle) * Math.PI) / 720) }, end];
  });
}

/** The first side on which two arcs do not find room, by its number from 0, with what they want and what is there; null when all do. */
export function findCrowdedSide(
  points: readonly Point[],
  radii: readonly number[],
): { readonly side: number; readonly need: number; readonly have: number } | null {
  const count = points.length;
  for (const [i, from] of points.entries()) {
    const next = (i + 1) % count;
    const to = points[next] ?? from;
    const need = [i, next].reduce((sum, k) => {
      const radius = radii[k] ?? 0;
      return sum + (radius > 0 ? Math.abs(tangentLength(radius, angleAt(points, k))) : 0);
    }, 0);
    const have = Math.hypot(to.x - from.x, to.y - from.y);
    if (need > have + 1e-6) return { side: i, need, have };
  }
  return null;
}
