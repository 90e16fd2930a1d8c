import { arcBetween, type PathPoint, type Point } from '#core/geometry';
import { depthOf, stationAt, type Hull, type HullStation } from './hull.ts';

/** How far an outline drawn as arcs may lie from the curve it follows, mm: a pencil line. */
export const curveTolerance = 0.1;
/** Kept clear round what stands on the hull, mm (joinery A6). */
export const clearOfObstacle = 5;

const across = 16; // steps over the reach of the clearance

/** Depth that stays a clearance off the hull in every direction of the section, mm: its true offset. Joinery B7. */
export function clearDepth(station: HullStation, y: number, clearance: number): number {
  let least = depthOf(station, y) - clearance;
  for (let i = 1; i < across; i++) {
    const u = clearance * Math.cos((i * Math.PI) / across);
    least = Math.min(least, depthOf(station, y + u) - Math.sqrt(clearance ** 2 - u ** 2));
  }
  return least;
}

/** What limits the depth of wood before a hull. mm. */
export interface Reach {
  readonly hull: Hull;
  readonly clearance: number;
  /** What stands before the wood, taken off its depth: the thickness of the front. */
  readonly before: number;
  /** Of an upright panel whose faces differ: `most` where its edge is to be bevelled to the hull. */
  readonly faces?: 'least' | 'most';
}

/** How deep wood may be over a range of heights at one place along the boat, clear of hull and obstacles, mm. */
export function leastDepth(reach: Reach, at: number, [low, high]: readonly [number, number]): number {
  const { hull, clearance, before } = reach;
  const station = stationAt(hull, at, [low - 2 * clearance - 1, high + 2 * clearance + 1]);
  const count = Math.max(1, Math.ceil((high - low) / 10));
  const free = Array.from({ length: count + 1 }, (_, i) =>
    clearDepth(station, low + ((high - low) * i) / count, clearance),
  );
  const blocked = obstaclesAt(hull, at).filter(({ minY, maxY }) => minY < high && maxY > low);
  return Math.min(...free, ...blocked.map(({ minX }) => minX)) - before;
}

/** Boxes that wood keeps clear of at a place along the boat, the clearance round them included. */
function obstaclesAt({ obstacles }: Hull, at: number) {
  return obstacles
    .filter(({ from, to }) => at >= from - clearOfObstacle && at <= to + clearOfObstacle)
    .map(({ box }) => ({
      minX: box.minX - clearOfObstacle,
      minY: box.minY - clearOfObstacle,
      maxY: box.maxY + clearOfObstacle,
    }));
}

/**
 * The back edge of an upright panel from its foot to its top, x being depth: the smaller of the hull at its two faces
 * (or the greater), notched for obstacles, as arcs and lines within `curveTolerance`.
 */
export function uprightBack(
  reach: Reach,
  faces: readonly [number, number],
  [low, high]: readonly [number, number],
): readonly PathPoint[] {
  const { hull, clearance, before } = reach;
  const range = [low - 2 * clearance - 10, high + 2 * clearance + 10] as const;
  const stations = [...new Set(faces)].map((at) => stationAt(hull, at, range));
  const pick = reach.faces === 'most' ? Math.max : Math.min;
  const depthAt = (y: number) =>
    pick(...stations.map((station) => clearDepth(station, y, clearance))) - before;
  const notches = obstaclesAt(hull, faces[0])
    .map((box) => ({ ...box, minX: box.minX - before }))
    .filter(
      ({ minX, minY, maxY }) => maxY > low && minY < high && minX < Math.max(depthAt(minY), depthAt(maxY)),
    );
  const levels = [low, high, ...notches.flatMap(({ minY, maxY }) => [minY, maxY])]
    .filter((y) => y >= low && y <= high)
    .sort((a, b) => a - b);
  return levels.slice(1).flatMap((to, i) => {
    const from = levels[i] ?? to;
    if (to - from < 1e-6) return [];
    const middle = (from + to) / 2;
    const inNotch = notches.filter(({ minY, maxY }) => minY < middle && maxY > middle);
    const most = Math.min(...inNotch.map(({ minX }) => minX));
    return fitArcs(samples(from, to).map((y) => ({ x: Math.min(depthAt(y), most), y })));
  });
}

/** The back edge of a level board from left to right, y being depth; `level` the heights it lies between. */
export function levelBack(
  reach: Reach,
  [left, right]: readonly [number, number],
  level: readonly [number, number],
): readonly PathPoint[] {
  const { hull } = reach;
  const edges = hull.obstacles.flatMap(({ from, to }) => [from - clearOfObstacle, to + clearOfObstacle]);
  const breaks = [left, right, ...edges.filter((at) => at > left && at < right)].sort((a, b) => a - b);
  const hair = 1e-4; // to the inner side of a break
  return breaks.slice(1).flatMap((to, i) => {
    const from = breaks[i] ?? to;
    if (to - from < 4 * hair) return [];
    const straight = hull.stations.length < 3;
    const places = straight ? [from, to] : samples(from, to, 25);
    const inside = (at: number) => Math.min(Math.max(at, from + hair), to - hair);
    return fitArcs(places.map((at) => ({ x: at, y: leastDepth(reach, inside(at), level) })));
  });
}

function samples(from: number, to: number, step = 10): readonly number[] {
  const count = Math.min(400, Math.max(2, Math.ceil((to - from) / step)));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

/** Points of a curve joined by as few arcs and lines as stay within `curveTolerance` of all; the last is a plain point. */
export function fitArcs(points: readonly Point[], tolerance = curveTolerance): readonly PathPoint[] {
  const found: PathPoint[] = [];
  let i = 0;
  while (i < points.length - 1) {
    let [best, bulge] = [i + 1, 0];
    for (let j = i + 2; j < points.length; j++) {
      const through = bulgeThrough(points, i, j);
      if (!staysNear(points, [i, j], through, tolerance)) break;
      [best, bulge] = [j, through];
    }
    const here = points[i] as Point;
    found.push(bulge === 0 ? { x: here.x, y: here.y } : { x: here.x, y: here.y, bulge });
    i = best;
  }
  const last = points[points.length - 1];
  return last ? [...found, { x: last.x, y: last.y }] : found;
}

/** The bulge of the arc from one point to another through the one halfway between; 0 when straight. */
function bulgeThrough(points: readonly Point[], i: number, j: number): number {
  const [a, b, m] = [points[i], points[j], points[(i + j) >> 1]];
  if (!a || !b || !m) return 0;
  const side = (b.x - a.x) * (m.y - a.y) - (b.y - a.y) * (m.x - a.x);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  if (Math.abs(side) < 1e-6 * chord * chord) return 0;
  const [u, v] = [
    { x: a.x - m.x, y: a.y - m.y },
    { x: b.x - m.x, y: b.y - m.y },
  ];
  const seen = Math.atan2(Math.abs(u.x * v.y - u.y * v.x), u.x * v.x + u.y * v.y);
  return -Math.sign(side) * Math.tan((Math.PI - seen) / 2);
}

function staysNear(
  points: readonly Point[],
  [i, j]: readonly [number, number],
  bulge: number,
  tolerance: number,
): boolean {
  const [a, b] = [points[i], points[j]];
  if (!a || !b || Math.abs(bulge) > 0.4) return false;
  const arc = arcBetween(a, b, bulge);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  return points.slice(i + 1, j).every((p) => {
    if (arc) return Math.abs(Math.hypot(p.x - arc.centre.x, p.y - arc.centre.y) - arc.radius) <= tolerance;
    return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) <= tolerance * chord;
  });
}
