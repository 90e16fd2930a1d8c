import type { Box3, Placement, Point, Point3 } from './types.ts';

/** A part lying as drawn: its own frame is the frame of the piece. */
export const placedAsDrawn: Placement = {
  origin: { x: 0, y: 0, z: 0 },
  xAxis: { x: 1, y: 0, z: 0 },
  yAxis: { x: 0, y: 1, z: 0 },
};

/** Vector a cross b. */
export function crossProduct(a: Point3, b: Point3): Point3 {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

/** A point of the part's own frame in the frame of the piece, mm. */
export function placePoint(placement: Placement, point: Point3): Point3 {
  const { origin, xAxis, yAxis } = placement;
  const zAxis = crossProduct(xAxis, yAxis);
  const along = (key: 'x' | 'y' | 'z') =>
    origin[key] + xAxis[key] * point.x + yAxis[key] * point.y + zAxis[key] * point.z;
  return { x: along('x'), y: along('y'), z: along('z') };
}

/** A point of the frame of the piece in the part's own frame, mm: the inverse of `placePoint`. */
export function unplacePoint(placement: Placement, point: Point3): Point3 {
  const { origin, xAxis, yAxis } = placement;
  const zAxis = crossProduct(xAxis, yAxis);
  const from = { x: point.x - origin.x, y: point.y - origin.y, z: point.z - origin.z };
  const dot = (axis: Point3) => from.x * axis.x + from.y * axis.y + from.z * axis.z;
  return { x: dot(xAxis), y: dot(yAxis), z: dot(zAxis) };
}

/** The eight corners of a box. */
export function cornersOfBox(box: Box3): readonly Point3[] {
  const xs = [box.min.x, box.max.x];
  const ys = [box.min.y, box.max.y];
  const zs = [box.min.z, box.max.z];
  return xs.flatMap((x) => ys.flatMap((y) => zs.map((z) => ({ x, y, z }))));
}

/** Smallest box round some points in space; throws when there are none. */
export function boxOfPoints3(points: readonly Point3[]): Box3 {
  if (points.length === 0) throw new Error('no points to put a box round');
  const least = (key: 'x' | 'y' | 'z') => points.reduce((low, p) => Math.min(low, p[key]), Infinity);
  const most = (key: 'x' | 'y' | 'z') => points.reduce((high, p) => Math.max(high, p[key]), -Infinity);
  return {
    min: { x: least('x'), y: least('y'), z: least('z') },
    max: { x: most('x'), y: most('y'), z: most('z') },
  };
}

/** Smallest box round several. */
export function joinBoxes3(boxes: readonly Box3[]): Box3 {
  return boxOfPoints3(boxes.flatMap((box) => [box.min, box.max]));
}

/** Distance between two points, mm. */
export function distanceBetween(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
