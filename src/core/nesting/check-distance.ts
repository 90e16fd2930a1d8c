import { sideOf } from './check-side.ts';
import type { Corner } from './types.ts';

type Side = readonly [Corner, Corner];

/** A part where it lies: the sides of its outline and holes, and the box round them: minX, minY, maxX, maxY. */
export interface Body {
  readonly rings: readonly (readonly Corner[])[];
  readonly sides: readonly Side[];
  readonly box: readonly [number, number, number, number];
  /** Some points well inside. */
  readonly inner: readonly Corner[];
}

export function makeBody(rings: readonly (readonly Corner[])[]): Body {
  const xs = rings.flatMap((ring) => ring.map(([x]) => x));
  const ys = rings.flatMap((ring) => ring.map(([, y]) => y));
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), -Infinity);
  const sides = rings.flatMap((ring) =>
    ring.map((corner, i): Side => [corner, ring[(i + 1) % ring.length]!]),
  );
  const box: Body['box'] = [least(xs), least(ys), most(xs), most(ys)];
  return { rings, sides, box, inner: innerPoints(rings[0]!, sides) };
}

/**
 * What is wrong between two bodies, as the words between their names; null when they are at least the gap apart. They may
 * overlap by a slack, mm, and the gap may fall short by it.
 */
export function gapFault(a: Body, b: Body, gap: number, slack: number): string | null {
  if (!boxesMeet(a.box, b.box, gap)) return null;
  const depth = Math.max(depthOf(a, b), depthOf(b, a));
  if (depth > slack) return `overlaps by up to ${round(depth)} mm`;
  if (gap <= slack) return null;
  const distance = depth > 0 ? 0 : distanceOf(a, b, gap);
  return distance < gap - slack ? `lies ${round(distance)} mm, not ${gap} mm, from` : null;
}

function round(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

function boxesMeet(a: Body['box'], b: Body['box'], gap: number): boolean {
  return a[0] < b[2] + gap && b[0] < a[2] + gap && a[1] < b[3] + gap && b[1] < a[3] + gap;
}

/** Whether a side reaches a box widened by a gap. */
function isNear([p, q]: Side, box: Body['box'], gap: number): boolean {
  return (
    Math.max(p[0], q[0]) >= box[0] - gap &&
    Math.min(p[0], q[0]) <= box[2] + gap &&
    Math.max(p[1], q[1]) >= box[1] - gap &&
    Math.min(p[1], q[1]) <= box[3] + gap
  );
}

/**
 * How deep one body goes into another: every side is cut where it crosses the other's sides, and the ends and middles of
 * the pieces that lie inside are measured from the border. So are some points within, for bodies with the same border.
 * 0 when nothing goes in.
 */
function depthOf(body: Body, other: Body): number {
  const near = other.sides.filter((side) => isNear(side, body.box, 0));
  const level = other.sides.filter((side) => isLevel(side, body.box, other.box));
  const points = [...body.inner];
  for (const side of body.sides) {
    if (!isNear(side, other.box, 0)) continue;
    const crossing = near.filter((each) => !areAside(side, each));
    const cuts = [0, 1, ...crossing.flatMap((each) => cutsOf(side, each))].sort((p, q) => p - q);
    // the end of a side is where the next one begins
    for (let k = 0; k + 1 < cuts.length; k++)
      points.push(along(side, cuts[k]!), along(side, (cuts[k]! + cuts[k + 1]!) / 2));
  }
  return points.reduce(
    (deepest, point) =>
      isInside(level, other.box, point) ? Math.max(deepest, borderDistance(other.sides, point)) : deepest,
    0,
  );
}

/** The middle of the widest stretch within a body at some heights. */
function innerPoints(outline: readonly Corner[], sides: readonly Side[]): Corner[] {
  const heights = [...new Set(outline.map(([, y]) => y))].sort((a, b) => a - b);
  const step = Math.max(1, Math.floor(heights.length / 8));
  return heights.slice(1).flatMap((high, k) => {
    if (k % step !== 0) return [];
    const y = (heights[k]! + high) / 2;
    const xs = sides
      .filter(([p, q]) => p[1] > y !== q[1] > y)
      .map(([p, q]) => p[0] + ((y - p[1]) * (q[0] - p[0])) / (q[1] - p[1]))
      .sort((a, b) => a - b);
    let widest: readonly [number, number] = [0, 0];
    for (let i = 0; i + 1 < xs.length; i += 2)
      if (xs[i + 1]! - xs[i]! > widest[1] - widest[0]) widest = [xs[i]!, xs[i + 1]!];
    return widest[1] > widest[0] ? [[(widest[0] + widest[1]) / 2, y] as const] : [];
  });
}

function along([p, q]: Side, t: number): Corner {
  return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
}

/** Whether the boxes of two sides have nothing in common. */
function areAside([p, q]: Side, [r, s]: Side): boolean {
  return (
    Math.max(p[0], q[0]) < Math.min(r[0], s[0]) ||
    Math.min(p[0], q[0]) > Math.max(r[0], s[0]) ||
    Math.max(p[1], q[1]) < Math.min(r[1], s[1]) ||
    Math.min(p[1], q[1]) > Math.max(r[1], s[1])
  );
}

/** Where a side is crossed or touched by another, as shares of it. */
function cutsOf(side: Side, other: Side): readonly number[] {
  const [p, q] = side;
  const [r, s] = other;
  const sideR = sideOf(p, q, r);
  const sideS = sideOf(p, q, s);
  if (sideR * sideS > 0 || (sideR === 0 && sideS === 0)) return [];
  if (sideOf(r, s, p) * sideOf(r, s, q) > 0) return [];
  const [ux, uy] = [q[0] - p[0], q[1] - p[1]];
  const [vx, vy] = [s[0] - r[0], s[1] - r[1]];
  const t = ((r[0] - p[0]) * vy - (r[1] - p[1]) * vx) / (ux * vy - uy * vx);
  return t > 0 && t < 1 ? [t] : [];
}

/** Rounding moves a point on a side by far less, mm. */
const stray = 1e-6;

/** Whether a line to the right meets a side, from some point that lies in both of two boxes. */
function isLevel([p, q]: Side, a: Body['box'], b: Body['box']): boolean {
  return (
    Math.max(p[0], q[0]) >= Math.max(a[0], b[0]) - stray &&
    Math.max(p[1], q[1]) >= Math.max(a[1], b[1]) - stray &&
    Math.min(p[1], q[1]) <= Math.min(a[3], b[3]) + stray
  );
}

/** Whether a point lies within the outline and outside all holes; by the count of sides to its right. */
function isInside(sides: readonly Side[], box: Body['box'], point: Corner): boolean {
  if (point[0] < box[0] || point[0] > box[2] || point[1] < box[1] || point[1] > box[3]) return false;
  let inside = false;
  for (const [p, q] of sides) {
    if (p[1] > point[1] === q[1] > point[1]) continue;
    const side = sideOf(p, q, point);
    if (q[1] > p[1] ? side > 0 : side < 0) inside = !inside;
  }
  return inside;
}

function borderDistance(sides: readonly Side[], point: Corner): number {
  return sides.reduce((least, side) => Math.min(least, pointDistance(side, point)), Infinity);
}

function pointDistance([p, q]: Side, point: Corner): number {
  const ux = q[0] - p[0];
  const uy = q[1] - p[1];
  const share = ((point[0] - p[0]) * ux + (point[1] - p[1]) * uy) / (ux * ux + uy * uy || 1);
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(p[0] + t * ux - point[0], p[1] + t * uy - point[1]);
}

/** Distance between the borders of two bodies that do not cross, if below the gap: from a corner of one to a side of the other. */
function distanceOf(a: Body, b: Body, gap: number): number {
  const fromCorners = (body: Body, other: Body) => {
    const sides = other.sides.filter((side) => isNear(side, body.box, gap));
    return body.rings
      .flat()
      .filter((corner) => isNear([corner, corner], other.box, gap))
      .reduce((least, corner) => Math.min(least, borderDistance(sides, corner)), Infinity);
  };
  return Math.min(fromCorners(a, b), fromCorners(b, a));
}
