import {
  crossProduct,
  flattenOutline,
  placePoint,
  rectangleOutline,
  subtractOutlines,
  type Outline,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';
import type { Machining, Part } from '#core/joinery';

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

/** A convex polygon drawn out between two levels: along z where `axis` is z, else along the length with y and z in it. */
interface Cell {
  readonly axis: 'x' | 'z';
  readonly polygon: readonly Point[];
  readonly from: number;
  readonly to: number;
}

/** The wood of a part, cut into convex cells: slices between the levels of its joints, each slice into trapezoids. */
function cellsOf(part: Part): readonly Cell[] {
  const axis = hasEndSockets(part) ? 'x' : 'z';
  const { length, width, thickness } = part.finished;
  const whole = axis === 'z' ? thickness : length;
  const outlines =
    axis === 'z' ? [part.outline, ...part.holes.map(reversed)] : [rectangleOutline(width, thickness)];
  const taken = part.machining.flatMap((work) => takenBy(work, axis, whole));
  const levels = [...new Set([0, whole, ...taken.flatMap(({ from, to }) => [from, to])])]
    .filter((level) => level >= 0 && level <= whole)
    .sort((one, other) => one - other);
  return levels.slice(1).flatMap((to, i) => {
    const from = levels[i] ?? 0;
    if (to - from < 1e-6) return [];
    const middle = (from + to) / 2;
    const away = taken
      .filter((each) => each.from <= middle && each.to >= middle)
      .map(({ outline }) => outline);
    const left = subtractOutlines(outlines, away);
    return trapezoidsOf(left).map((polygon) => ({ axis, polygon, from, to }));
  });
}

const reversed = (outline: Outline): Outline => [...flattenOutline(outline, flatness)].reverse();

/** Sockets worked from an end, as of dovetails, in a part that is a plain board: sliced along its length. */
function hasEndSockets(part: Part): boolean {
  return part.machining.some(
    (work) => work.kind === 'prism' && (work.from === 'start' || work.from === 'end'),
  );
}

interface Taken {
  readonly outline: Outline;
  readonly from: number;
  readonly to: number;
}

function takenBy(work: Machining, axis: 'x' | 'z', whole: number): readonly Taken[] {
  if (work.kind === 'recess') {
    const { min, max } = work.box;
    const flat =
      axis === 'z'
        ? { x: [min.x, max.x], y: [min.y, max.y], level: [min.z, max.z] }
        : { x: [min.y, max.y], y: [min.z, max.z], level: [min.x, max.x] };
    return [{ outline: boxOutline(flat.x, flat.y), from: flat.level[0] ?? 0, to: flat.level[1] ?? 0 }];
  }
  if (work.kind !== 'prism') return [];
  const near = axis === 'z' ? 'face' : 'start';
  const far = axis === 'z' ? 'back' : 'end';
  if (work.from !== near && work.from !== far) return [];
  const begin = work.below ?? 0;
  return work.from === near
    ? [{ outline: work.outline, from: begin, to: work.depth }]
    : [{ outline: work.outline, from: whole - work.depth, to: whole - begin }];
}

function boxOutline(x: readonly number[], y: readonly number[]): Outline {
  const [x0 = 0, x1 = 0] = x;
  const [y0 = 0, y1 = 0] = y;
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

interface Side {
  readonly from: Point;
  readonly to: Point;
}

/** Outlines with their holes as trapezoids between the heights of all corners. */
function trapezoidsOf(outlines: readonly Outline[]): readonly (readonly Point[])[] {
  const sides: Side[] = outlines.flatMap((outline) => {
    const points = flattenOutline(outline, flatness);
    return points.map((from, i) => ({ from, to: points[(i + 1) % points.length] ?? from }));
  });
  const heights = [...new Set(sides.map(({ from }) => from.y))].sort((one, other) => one - other);
  return heights.slice(1).flatMap((high, i) => {
    const low = heights[i] ?? 0;
    return high - low < 1e-6 ? [] : bandOf(sides, low, high);
  });
}

function bandOf(sides: readonly Side[], low: number, high: number): readonly (readonly Point[])[] {
  const middle = (low + high) / 2;
  const crossing = sides
    .filter(({ from, to }) => Math.min(from.y, to.y) <= middle && Math.max(from.y, to.y) > middle)
    .sort((one, other) => xAt(one, middle) - xAt(other, middle));
  return Array.from({ length: Math.floor(crossing.length / 2) }, (_, k) => {
    const left = crossing[2 * k] as Side;
    const right = crossing[2 * k + 1] as Side;
    return [
      { x: xAt(left, low), y: low },
      { x: xAt(right, low), y: low },
      { x: xAt(right, high), y: high },
      { x: xAt(left, high), y: high },
    ];
  }).filter((polygon) => widthOf(polygon) > 1e-6);
}

function xAt({ from, to }: Side, y: number): number {
  return from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
}

function widthOf(polygon: readonly Point[]): number {
  const [a, b, c, d] = polygon.map(({ x }) => x) as [number, number, number, number];
  return Math.max(b - a, c - d);
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
