import type { Point } from './types.ts';

/** A side of a closed path of straight lines, by the place of its first point. */
interface Side {
  readonly at: number;
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
}

/**
 * Two sides of a closed path of straight lines that cross or touch each other, by the places of their first points; null when
 * it is simple. Neighbours count where one lies back along the other.
 */
export function findCrossing(path: readonly Point[]): readonly [number, number] | null {
  const sides = path
    .map((from, at): Side => {
      const to = path[(at + 1) % path.length] ?? from;
      return { at, from, to, left: Math.min(from.x, to.x), right: Math.max(from.x, to.x) };
    })
    .sort((a, b) => a.left - b.left);
  for (const [place, side] of sides.entries())
    for (let k = place + 1; k < sides.length; k++) {
      const other = sides[k];
      if (!other || other.left > side.right) break;
      if (meet(side, other, path.length)) return [Math.min(side.at, other.at), Math.max(side.at, other.at)];
    }
  return null;
}

function meet(a: Side, b: Side, count: number): boolean {
  if ((a.at + 1) % count === b.at) return foldsBack(a, b);
  if ((b.at + 1) % count === a.at) return foldsBack(b, a);
  const [c, d] = [turn(a.from, a.to, b.from), turn(a.from, a.to, b.to)];
  const [e, f] = [turn(b.from, b.to, a.from), turn(b.from, b.to, a.to)];
  if (c === 0 && d === 0) return overlap(a, b);
  return c * d <= 0 && e * f <= 0;
}

/** The second side, which begins where the first ends, runs back along it. */
function foldsBack(first: Side, second: Side): boolean {
  if (turn(first.from, first.to, second.to) !== 0) return false;
  const along =
    (first.to.x - first.from.x) * (second.to.x - second.from.x) +
    (first.to.y - first.from.y) * (second.to.y - second.from.y);
  return along < 0;
}

function overlap(a: Side, b: Side): boolean {
  const low = Math.min(a.from.y, a.to.y) <= Math.max(b.from.y, b.to.y);
  const high = Math.min(b.from.y, b.to.y) <= Math.max(a.from.y, a.to.y);
  return low && high && a.left <= b.right && b.left <= a.right;
}

function turn(a: Point, b: Point, c: Point): number {
  return Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
}
