import {
  flattenOutline,
  placePoint,
  trapezoidsOf,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';
import { slicePart, type BuiltPiece, type PartId, type PartSlice } from '#core/joinery';
import { pullApart } from './pull-apart.ts';

/** One copy of a part as a solid to look at, in the frame of the piece, mm. */
export interface ModelBody {
  readonly part: PartId;
  readonly name: string;
  /** Triangles, three points each, counter-clockwise seen from outside: x, y, z one after the other. */
  readonly faces: readonly number[];
  /** Edges as pairs of points. */
  readonly edges: readonly number[];
  readonly centre: Point3;
  /** Where it moves when the piece is pulled apart. */
  readonly shift: Point3;
}

/** How far curves may stray from their chords on a screen, mm. */
const flatness = 0.3;

/** A piece as solids with their joints cut, together or to be pulled apart. */
export function modelOf(built: BuiltPiece): readonly ModelBody[] {
  const slices = new Map(built.parts.map((part) => [part.id, slicePart(part).map(flatten)]));
  return pullApart(built.parts).map(({ part, placement, centre, shift }) => {
    const own = slices.get(part.id) ?? [];
    return {
      part: part.id,
      name: part.name,
      faces: own.flatMap((slice) => facesOf(slice, placement)),
      edges: edgesOf(own, placement),
      centre,
      shift,
    };
  });
}

interface Flat extends Pick<PartSlice, 'axis' | 'from' | 'to'> {
  readonly rings: readonly (readonly Point[])[];
}

function flatten({ axis, from, to, outlines }: PartSlice): Flat {
  return { axis, from, to, rings: outlines.map((outline) => thin(flattenOutline(outline, flatness))) };
}

/** Without points nearer to the one before than a curve may stray. */
function thin(ring: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of ring) {
    const last = kept.at(-1);
    if (!last || Math.hypot(point.x - last.x, point.y - last.y) > flatness / 3) kept.push(point);
  }
  return kept;
}

type Lift = (point: Point, level: number) => readonly [number, number, number];

function lifter(axis: PartSlice['axis'], placement: Placement): Lift {
  return ({ x, y }, level) => {
    const at = placePoint(placement, axis === 'z' ? { x, y, z: level } : { x: level, y: x, z: y });
    return [at.x, at.y, at.z];
  };
}

function facesOf(slice: Flat, placement: Placement): readonly number[] {
  const { axis, rings, from, to } = slice;
  const lift = lifter(axis, placement);
  const walls = rings.flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a;
      return [
        ...[lift(a, from), lift(b, from), lift(b, to)].flat(),
        ...[lift(a, from), lift(b, to), lift(a, to)].flat(),
      ];
    }),
  );
  const caps = trapezoidsOf(rings, flatness).flatMap(([a, b, c, d]) => [
    ...[lift(a, to), lift(b, to), lift(c, to)].flat(),
    ...[lift(a, to), lift(c, to), lift(d, to)].flat(),
    ...[lift(a, from), lift(c, from), lift(b, from)].flat(),
    ...[lift(a, from), lift(d, from), lift(c, from)].flat(),
  ]);
  return [...walls, ...caps];
}

type Side = readonly [Point, Point];

/** The edges one would feel: where a wall begins or ends, not where one slice goes on in the next. */
function edgesOf(slices: readonly Flat[], placement: Placement): readonly number[] {
  return slices.flatMap((slice, i) => {
    const lift = lifter(slice.axis, placement);
    const sides = sidesOf(slice);
    const level = (at: number, neighbour: Flat | undefined) => {
      const same = new Set(neighbour ? sidesOf(neighbour).map(keyOf) : []);
      return sides
        .filter((side) => !same.has(keyOf(side)))
        .flatMap(([a, b]) => [...lift(a, at), ...lift(b, at)]);
    };
    const upright = slice.rings
      .flatMap((ring) => ring.filter((_, k) => isCorner(ring, k)))
      .flatMap((corner) => [...lift(corner, slice.from), ...lift(corner, slice.to)]);
    return [...level(slice.from, slices[i - 1]), ...level(slice.to, slices[i + 1]), ...upright];
  });
}

function sidesOf({ rings }: Flat): readonly Side[] {
  return rings.flatMap((ring) => ring.map((a, i): Side => [a, ring[(i + 1) % ring.length] ?? a]));
}

function keyOf([a, b]: Side): string {
  const ends = [a, b].map(({ x, y }) => `${Math.round(x * 100)} ${Math.round(y * 100)}`);
  return ends.sort().join(' ');
}

const smooth = Math.cos((25 * Math.PI) / 180); // a bend of less than this is a curve drawn with chords

function isCorner(ring: readonly Point[], index: number): boolean {
  const at = ring[index] as Point;
  const before = ring[(index + ring.length - 1) % ring.length] ?? at;
  const after = ring[(index + 1) % ring.length] ?? at;
  const [ux, uy] = [at.x - before.x, at.y - before.y];
  const [wx, wy] = [after.x - at.x, after.y - at.y];
  return ux * wx + uy * wy < smooth * Math.hypot(ux, uy) * Math.hypot(wx, wy);
}
