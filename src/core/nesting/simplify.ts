import { ringArea } from './rings.ts';
import type { Ring } from './rings.ts';

/** Corners may go while there are more than these and what is added stays below that share of the area. */
const fewCorners = { count: 16, mostAdded: 0.001 } as const;
const manyCorners = { count: 64, mostAdded: 0.005 } as const;

type Point = readonly [number, number];

/** A ring being made simpler: places of corners, and which comes before and after. */
interface Chain {
  readonly points: Point[];
  readonly before: number[];
  readonly after: number[];
  /** What leaving out a corner would add, mm²; Infinity when it must stay. */
  readonly added: number[];
  first: number;
  count: number;
}

/**
 * A ring of fewer corners round the same material, which lies to its left: dents are filled, blunt corners sharpened,
 * never anything cut away. A hole goes clockwise. `area`: of the part, mm²; `added`: what was added to it before.
 */
export function simplifyRing(ring: Ring, area: number, added = 0): Ring {
  return leaveOutWhile(ring, fewCorners.count, (count, more) => {
    const { mostAdded } = count > manyCorners.count ? manyCorners : fewCorners;
    return added + more <= mostAdded * area;
  });
}

/** The same for a ring of many corners until it has no more than many, where no more than an area is added, mm². */
export function thinOutRing(ring: Ring, most: number): Ring {
  return leaveOutWhile(ring, manyCorners.count, (_, added) => added <= most);
}

/** Leaves out the corner that adds least, again and again, while more are left than so many and what is added in all is allowed. */
function leaveOutWhile(
  ring: Ring,
  least: number,
  isAllowed: (count: number, added: number) => boolean,
): Ring {
  if (ring.length / 2 <= least) return ring;
  const chain = makeChain(ring);
  let added = 0;
  while (chain.count > least) {
    const corner = cheapestOf(chain);
    const cost = chain.added[corner] ?? Infinity;
    if (!isAllowed(chain.count, added + cost)) break;
    if (!leaveOut(chain, corner)) chain.added[corner] = Infinity;
    else added += cost;
  }
  const simple = readChain(chain);
  // what the arithmetic may have spoilt is not taken
  return ringArea(simple) * ringArea(ring) > 0 ? simple : ring;
}

function makeChain(ring: Ring): Chain {
  const count = ring.length / 2;
  const points = Array.from({ length: count }, (_, i): Point => [ring[2 * i]!, ring[2 * i + 1]!]);
  const chain: Chain = {
    points,
    before: points.map((_, i) => (i + count - 1) % count),
    after: points.map((_, i) => (i + 1) % count),
    added: new Array<number>(count).fill(Infinity),
    first: 0,
    count,
  };
  points.forEach((_, i) => price(chain, i));
  return chain;
}

function readChain({ points, after, first, count }: Chain): Ring {
  const ring = new Float64Array(2 * count);
  for (let k = 0, i = first; k < count; k++, i = after[i]!) ring.set(points[i]!, 2 * k);
  return ring;
}

function cheapestOf({ added, after, first, count }: Chain): number {
  let best = first;
  for (let k = 0, i = first; k < count; k++, i = after[i]!) if (added[i]! < added[best]!) best = i;
  return best;
}

/** Twice the signed area of a triangle, positive when it turns left. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function price(chain: Chain, i: number): void {
  const { points, before, after, added } = chain;
  const dent = -turn(points[before[i]!]!, points[i]!, points[after[i]!]!);
  if (dent >= 0) {
    added[i] = dent / 2;
    return;
  }
  const by = sharpened(chain, i);
  added[i] = by ? Math.abs(turn(points[i]!, by, points[after[i]!]!)) / 2 : Infinity;
}

/** Where the sides before a corner and after the next one meet beyond them; null when they do not. */
function sharpened({ points, before, after }: Chain, i: number): Point | null {
  const next = after[i]!;
  const [a, b, c, d] = [points[before[i]!]!, points[i]!, points[next]!, points[after[next]!]!];
  if (turn(a, b, c) <= 0 || turn(b, c, d) <= 0) return null;
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (cross <= 1e-9 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return null;
  const t = ((c[0] - b[0]) * vy - (c[1] - b[1]) * vx) / cross;
  return t > 0 ? [b[0] + t * ux, b[1] + t * uy] : null;
}

/** Leaves a corner out, or it and the next for the one beyond them; false, and nothing done, where sides would meet. */
function leaveOut(chain: Chain, i: number): boolean {
  const { points, before, after } = chain;
  const isDent = turn(points[before[i]!]!, points[i]!, points[after[i]!]!) <= 0;
  const by = isDent ? null : sharpened(chain, i);
  if (!isDent && !by) return false;
  const last = isDent ? after[i]! : after[after[i]!]!;
  const path = by ? [points[before[i]!]!, by, points[last]!] : [points[before[i]!]!, points[last]!];
  if (!staysSimple(chain, before[i]!, last, path)) return false;
  const gone = by ? after[i]! : i;
  if (by) points[i] = by;
  after[before[gone]!] = after[gone]!;
  before[after[gone]!] = before[gone]!;
  if (chain.first === gone) chain.first = after[gone]!;
  chain.count--;
  let near = before[before[after[gone]!]!]!;
  for (let k = 0; k < 4; k++, near = after[near]!) price(chain, near);
  return true;
}

/** Whether a new path between two corners meets no side that it does not replace or touch. */
function staysSimple(
  { points, before, after }: Chain,
  from: number,
  to: number,
  path: readonly Point[],
): boolean {
  const end = before[from]!;
  const [minX, minY, maxX, maxY] = boxOf(path);
  let q = points[after[to]!]!;
  for (let i = after[to]!; i !== end; i = after[i]!) {
    const p = q;
    q = points[after[i]!]!;
    // nearly all sides lie clear of the path's box: this is where rings of many corners spend their time
    if ((p[0] < minX && q[0] < minX) || (p[0] > maxX && q[0] > maxX)) continue;
    if ((p[1] < minY && q[1] < minY) || (p[1] > maxY && q[1] > maxY)) continue;
    for (let s = 0; s + 1 < path.length; s++) if (sidesMeet(path[s]!, path[s + 1]!, p, q)) return false;
  }
  return true;
}

function boxOf(path: readonly Point[]): readonly [minX: number, minY: number, maxX: number, maxY: number] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of path) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return [minX, minY, maxX, maxY];
}

function sidesMeet(a: Point, b: Point, p: Point, q: Point): boolean {
  // sides on one line far from each other do not meet
  if (Math.max(a[0], b[0]) < Math.min(p[0], q[0]) || Math.min(a[0], b[0]) > Math.max(p[0], q[0]))
    return false;
  if (Math.max(a[1], b[1]) < Math.min(p[1], q[1]) || Math.min(a[1], b[1]) > Math.max(p[1], q[1]))
    return false;
  return turn(a, b, p) * turn(a, b, q) <= 0 && turn(p, q, a) * turn(p, q, b) <= 0;
}
