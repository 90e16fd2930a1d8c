import { crossProduct, type Box3, type Point3 } from '#core/geometry';
import { unit, type Body, type Solid } from './solids.ts';

/** What parts may rub on their way, mm: joints are cut with less play than this, and no hand feels it. */
const rub = 0.3;

/** Whether a body moved along a direction (of length one) by a travel in mm would meet another that stays; `looks` counts down. */
export function isBlocked(moving: Body, staying: Body, motion: Motion, looks: { left: number }): boolean {
  if (!boxesMeet(moving.box, staying.box, motion) || isWholeParted(moving, staying, motion)) return false;
  return moving.solids.some(
    (solid) =>
      boxesMeet(solid.box, staying.box, motion) &&
      staying.solids.some(
        (other) =>
          boxesMeet(solid.box, other.box, motion) &&
          looks.left-- > 0 &&
          meets(solid, other, motion) &&
          !overlaps(solid, other),
      ),
  );
}

/** Whether a plane along a face of either parts the whole of both: most that do not touch part so. */
function isWholeParted(moving: Body, staying: Body, motion: Motion): boolean {
  const parts = (axis: Point3) => isParted(moving, staying, { axis, motion });
  return moving.normals.some(parts) || staying.normals.some(parts);
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

/** Whether the box round the room swept by the first meets the second, by more than what may rub. */
function boxesMeet(moving: Box3, staying: Box3, { way, travel }: Motion): boolean {
  return (['x', 'y', 'z'] as const).every((axis) => {
    const run = travel * way[axis];
    const high = moving.max[axis] + Math.max(run, 0) - staying.min[axis];
    const low = staying.max[axis] - moving.min[axis] - Math.min(run, 0);
    return Math.min(high, low) > rub;
  });
}

/**
 * Exact for convex bodies: no plane parts the room swept by the first from the second (separating axis theorem). Of two
 * prisms drawn out along the same line the edges bring no planes of their own.
 */
function meets(moving: Solid, staying: Solid, motion: Motion): boolean {
  const parted = (axis: Point3 | null) => axis !== null && isParted(moving, staying, { axis, motion });
  if (moving.normals.some(parted) || staying.normals.some(parted)) return false;
  const crossed = (one: Point3, edges: readonly Point3[]) =>
    edges.some((edge) => parted(unit(crossProduct(one, edge))));
  if (!isAlike(moving, staying) && moving.edges.some((edge) => crossed(edge, staying.edges))) return false;
  return motion.travel === 0 || !(crossed(motion.way, moving.edges) || crossed(motion.way, staying.edges));
}

/** Both drawn out along the same line, which is the first of their edges. */
function isAlike(one: Solid, other: Solid): boolean {
  const [a, b] = [one.edges[0], other.edges[0]];
  return a !== undefined && b !== undefined && Math.abs(dot(a, b)) > 1 - 1e-9;
}

function isParted(
  moving: Pick<Solid, 'corners'>,
  staying: Pick<Solid, 'corners'>,
  { axis, motion }: { readonly axis: Point3; readonly motion: Motion },
): boolean {
  const a = extentOf(moving, axis);
  const b = extentOf(staying, axis);
  const run = motion.travel * dot(motion.way, axis);
  return Math.min(a.high + Math.max(run, 0) - b.low, b.high - a.low - Math.min(run, 0)) <= rub;
}

function extentOf(
  { corners }: Pick<Solid, 'corners'>,
  axis: Point3,
): { readonly low: number; readonly high: number } {
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
