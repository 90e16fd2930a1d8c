import { crossProduct, placePoint } from '#core/geometry';
import type { Placement, Point3 } from '#core/geometry';
import type { Part } from '#core/joinery';

/** How near a point is to whoever looks along (1, 1, 1); mm times the root of three. */
export const nearness = (p: Point3): number => p.x + p.y + p.z;
const drawable = 1; // mm, less is not seen at the scale of such a view

/** A plain block: four square corners and nothing cut through. */
export function isBlock({ outline, holes, finished }: Part): boolean {
  const square = outline.every(
    ({ x, y, bulge }) =>
      !bulge && Math.min(x, finished.length - x) < drawable && Math.min(y, finished.width - y) < drawable,
  );
  return holes.length === 0 && outline.length === 4 && square;
}

/** The faces of the part's block that can be seen. */
export function facesSeen(part: Part, placement: Placement): readonly (readonly Point3[])[] {
  const { length: l, width: w, thickness: t } = part.finished;
  const at = (x: number, y: number, z: number) => placePoint(placement, { x, y, z });
  const { xAxis, yAxis } = placement;
  const zAxis = crossProduct(xAxis, yAxis);
  const pairs: readonly [Point3, (far: boolean) => readonly Point3[]][] = [
    [
      xAxis,
      (far) =>
        [
          [0, 0],
          [w, 0],
          [w, t],
          [0, t],
        ].map(([y = 0, z = 0]) => at(far ? l : 0, y, z)),
    ],
    [
      yAxis,
      (far) =>
        [
          [0, 0],
          [l, 0],
          [l, t],
          [0, t],
        ].map(([x = 0, z = 0]) => at(x, far ? w : 0, z)),
    ],
    [
      zAxis,
      (far) =>
        [
          [0, 0],
          [l, 0],
          [l, w],
          [0, w],
        ].map(([x = 0, y = 0]) => at(x, y, far ? t : 0)),
    ],
  ];
  return pairs
    .filter(([axis]) => Math.abs(nearness(axis)) > 1e-9)
    .map(([axis, face]) => face(nearness(axis) > 0));
}
