import { boxOfOutline, type Point } from '#core/geometry';

type Polygon = readonly Point[];

/** What a merged polygon may hold more than its pieces, mm²: rounding, no wood. */
const slack = 0.05;

/**
 * Convex polygons that lie side by side as fewer convex ones: two are taken as one wherever what bounds them together holds
 * no more than they do. A part of curves comes in a third of the pieces.
 */
export function mergeConvex(polygons: readonly Polygon[]): readonly Polygon[] {
  const merged: Polygon[] = [];
  for (const polygon of polygons) {
    let grown = polygon;
    for (let i = merged.length - 1; i >= 0; i--) {
      const joined = join(merged[i] ?? [], grown);
      if (!joined) continue;
      merged.splice(i, 1);
      grown = joined;
      i = merged.length; // what has grown may take in others now
    }
    merged.push(grown);
  }
  return merged;
}

/** Both as one convex polygon; null when that would hold more. */
function join(one: Polygon, other: Polygon): Polygon | null {
  if (!touch(one, other)) return null;
  const round = wrap([...one, ...other]);
  return areaOf(round) - areaOf(one) - areaOf(other) <= slack ? round : null;
}

function touch(one: Polygon, other: Polygon): boolean {
  const [a, b] = [boxOfOutline(one), boxOfOutline(other)];
  return (
    a.minX <= b.maxX + slack &&
    b.minX <= a.maxX + slack &&
    a.minY <= b.maxY + slack &&
    b.minY <= a.maxY + slack
  );
}

function areaOf(polygon: Polygon): number {
  const doubled = polygon.reduce((sum, at, i) => {
    const next = polygon[(i + 1) % polygon.length] ?? at;
    return sum + at.x * next.y - next.x * at.y;
  }, 0);
  return Math.abs(doubled) / 2;
}

/** The convex polygon round some points, counter-clockwise (Andrew's monotone chain, 1979; from memory). */
function wrap(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (ordered: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const point of ordered) {
      while (kept.length > 1 && isTurningBack(kept, point)) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

function isTurningBack(kept: readonly Point[], point: Point): boolean {
  const [a, b] = [kept[kept.length - 2], kept[kept.length - 1]];
  if (!a || !b) return false;
  return (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x) <= 1e-9;
}
