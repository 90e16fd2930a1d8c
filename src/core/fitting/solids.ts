import {
  crossProduct,
  boxOfPoints3,
  joinBoxes3,
  placePoint,
  simplifyOutlines,
  trapezoidsOf,
  type Box3,
  type Outline,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';
import { mergeConvex } from './merge-convex.ts';
import { slicePart, type Part, type PartSlice } from '#core/joinery';

/** A convex piece of wood in the frame of the piece: its corners, and the directions of its faces and edges. */
export interface Solid {
  readonly corners: readonly Point3[];
  readonly normals: readonly Point3[];
  readonly edges: readonly Point3[];
  readonly box: Box3;
}

/** One copy of a part as convex solids; `id` is its address, with the number of the copy where there are several. */
export interface Body {
  readonly id: string;
  readonly part: string;
  readonly solids: readonly Solid[];
  readonly box: Box3;
  /** Of all its solids. */
  readonly corners: readonly Point3[];
  /** The directions its faces look in, each once, up to a sign. */
  readonly normals: readonly Point3[];
  /** Along its length, width and thickness. */
  readonly axes: readonly Point3[];
}

/** Curves against their chords here, mm: what blocks a part is looked at no finer. */
const flatness = 0.5;

/** Every copy of the parts, as convex solids without what the joints take away; screw holes are left out. */
export function bodiesOf(parts: readonly Part[]): readonly Body[] {
  return parts.flatMap((part) => {
    const cells = cellsOf(part);
    if (cells.length === 0) return [];
    return part.placements.map((placement, i) => {
      const solids = cells.map((cell) => placeCell(cell, placement));
      return {
        id: part.placements.length > 1 ? `${part.id}/${i + 1}` : part.id,
        part: part.id,
        solids,
        box: joinBoxes3(solids.map(({ box }) => box)),
        corners: solids.flatMap(({ corners }) => corners),
        normals: distinctLines(solids.flatMap(({ normals }) => normals)),
        axes: [placement.xAxis, placement.yAxis, crossProduct(placement.xAxis, placement.yAxis)],
      };
    });
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
    convexPiecesOf(outlines).map((polygon) => ({ axis, polygon, from, to })),
  );
}

/** Outlines with their holes as convex polygons: one where that is all it is, else trapezoids. */
function convexPiecesOf(outlines: readonly Outline[]): readonly (readonly Point[])[] {
  const simple = simplifyOutlines(outlines, flatness);
  const [first] = simple;
  if (simple.length === 1 && first && isConvex(first)) return [first];
  return mergeConvex(trapezoidsOf(simple, flatness));
}

function isConvex(ring: readonly Point[]): boolean {
  return ring.every((at, i) => {
    const before = ring[(i + ring.length - 1) % ring.length] ?? at;
    const after = ring[(i + 1) % ring.length] ?? at;
    return (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x) >= -1e-6;
  });
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
    box: boxOfPoints3(corners),
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

/** Directions without repeats; one and its opposite are the same. */
function distinctLines(directions: readonly Point3[]): readonly Point3[] {
  const kept: Point3[] = [];
  for (const one of directions)
    if (!kept.some((other) => Math.abs(one.x * other.x + one.y * other.y + one.z * other.z) > 0.99999))
      kept.push(one);
  return kept;
}
