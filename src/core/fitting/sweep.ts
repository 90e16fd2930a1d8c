import { crossProduct, type Point3 } from '#core/geometry';
import { unit, type Body, type Solid } from './solids.ts';

/** What parts may rub on their way, mm: joints are cut with less play than this, and no hand feels it. */
const rub = 0.3;

/** Whether a body moved along a direction (of length one) by a travel in mm would meet another that stays. */
export function isBlocked(moving: Body, staying: Body, { way, travel }: Motion): boolean {
  return moving.solids.some((solid) =>
    staying.solids.some((other) => meets(solid, other, { way, travel }) && !overlaps(solid, other)),
  );
}

export interface Motion {
  readonly way: Point3;
  readonly travel: number;
}

const still: Motion = { way: { x: 0, y: 0, z: 1 }, travel: 0 };

/** Two solids drawn into each other from the start say nothing of what blocks: their joint is drawn simpler than it is cut. */
function overlaps(one: Solid, other: Solid): boolean {
  return meets(one, other, still);
}

const axes: readonly Point3[] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
];

/** Exact for convex bodies: no plane parts the room swept by the first from the second (separating axis theorem). */
function meets(moving: Solid, staying: Solid, motion: Motion): boolean {
  const parted = (axis: Point3 | null) => axis !== null && isParted(moving, staying, { axis, motion });
  if (axes.some(parted) || moving.normals.some(parted) || staying.normals.some(parted)) return false;
  const moves = motion.travel > 0 ? [...moving.edges, motion.way] : moving.edges;
  if (moves.some((edge) => staying.edges.some((other) => parted(unit(crossProduct(edge, other))))))
    return false;
  return motion.travel === 0 || !moving.edges.some((edge) => parted(unit(crossProduct(edge, motion.way))));
}

function isParted(
  moving: Solid,
  staying: Solid,
  { axis, motion }: { readonly axis: Point3; readonly motion: Motion },
): boolean {
  const a = extentOf(moving, axis);
  const b = extentOf(staying, axis);
  const run = motion.travel * dot(motion.way, axis);
  return Math.min(a.high + Math.max(run, 0) - b.low, b.high - a.low - Math.min(run, 0)) <= rub;
}

function extentOf({ corners }: Solid, axis: Point3): { readonly low: number; readonly high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const corner of corners) {
    const at = dot(corner, axis);
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return { low, high };
}

function dot(a: Point3, b: Point3): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
