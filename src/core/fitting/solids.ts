import {
  crossProduct,
  placePoint,
  trapezoidsOf,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';
import { slicePart, type Part, type PartSlice } from '#core/joinery';

/** A convex piece of wood in the frame of the piece: its corners, and the directions of its faces and edges. */
export interface Solid {
  readonly corners: readonly Point3[];
  readonly normals: readonly Point3[];
  readonly edges: readonly Point3[];
}

/** One copy of a part as convex solids; `id` is its address, with the number of the copy where there are several. */
export interface Body {
  readonly id: string;
  readonly part: string;
  readonly solids: readonly Solid[];
}

/** Curves against their chords here, mm: what blocks a part is looked at no finer. */
const flatness = 0.5;

/** Every copy of the parts, as convex solids without what the joints take away; screw holes are left out. */
export function bodiesOf(parts: readonly Part[]): readonly Body[] {
  return parts.flatMap((part) => {
    const cells = cellsOf(part);
    return part.placements.map((placement, i) => ({
      id: part.placements.length > 1 ? `${part.id}/${i + 1}` : part.id,
      part: part.id,
      solids: cells.map((cell) => placeCell(cell, placement)),
    }));
  });
}

/** A convex polygon drawn out between two levels, as a slice of a part is. */
interface Cell {
  readonly axis: PartSlice['axis'];
  readonly polygon: readonly Point[];
  readonly from: number;
  readonly to: number;
}

/** The wood of a part, cut into convex cells: slices between the levels of its joints, each slice into trapezoids. */
function cellsOf(part: Part): readonly Cell[] {
  return slicePart(part).flatMap(({ axis, outlines, from, to }) =>
    trapezoidsOf(outlines, flatness).map((polygon) => ({ axis, polygon, from, to })),
  );
}

function placeCell({ axis, polygon, from, to }: Cell, placement: Placement): Solid {
  const lift = ({ x, y }: Point, level: number): Point3 =>
    axis === 'z' ? { x, y, z: level } : { x: level, y: x, z: y };
  const corners = [from, to].flatMap((level) =>
    polygon.map((point) => placePoint(placement, lift(point, level))),
  );
  const count = polygon.length;
  const way = (i: number, j: number) => unit(minus(corners[j] as Point3, corners[i] as Point3));
  const up = way(0, count);
  const sides = polygon
    .map((_, i) => way(i, (i + 1) % count))
    .filter((side): side is Point3 => side !== null);
  const along = up ?? { x: 0, y: 0, z: 1 };
  return {
    corners,
    edges: [along, ...sides],
    normals: [along, ...sides.flatMap((side) => unit(crossProduct(side, along)) ?? [])],
  };
}

function minus(a: Point3, b: Point3): Point3 {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

/** The vector at length one; null for one too short to have a direction. */
export function unit(vector: Point3): Point3 | null {
  const size = Math.hypot(vector.x, vector.y, vector.z);
  return size < 1e-9 ? null : { x: vector.x / size, y: vector.y / size, z: vector.z / size };
}
