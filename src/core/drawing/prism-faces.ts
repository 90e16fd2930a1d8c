import { crossProduct, flattenOutline, placePoint } from '#core/geometry';
import type { Outline, Placement, Point, Point3 } from '#core/geometry';
import type { Part } from '#core/joinery';

/** What is seen of a part with its true outline: its sides from the far to the near one, then the face or back; holes in that. */
export interface PrismFaces {
  readonly faces: readonly (readonly Point3[])[];
  readonly holes: readonly (readonly Point3[])[];
}

const smooth = Math.cos(Math.PI / 9); // sides that turn less than 20 degrees are one curved side
const flatness = 0.3; // mm, arcs against their chords

/** The faces of a part, its outline drawn out to its thickness, that point towards the viewer. */
export function prismFaces(part: Part, placement: Placement, nearness: (way: Point3) => number): PrismFaces {
  const { xAxis, yAxis } = placement;
  const zAxis = crossProduct(xAxis, yAxis);
  const far = nearness(zAxis) > 0;
  const { thickness } = part.finished;
  const lift = (points: readonly Point[], z: number) => points.map((p) => placePoint(placement, { ...p, z }));
  const flat = (outline: Outline) => flattenOutline(outline, flatness);
  const facesViewer = ({ x, y }: Point) =>
    nearness({
      x: xAxis.x * x + yAxis.x * y,
      y: xAxis.y * x + yAxis.y * y,
      z: xAxis.z * x + yAxis.z * y,
    }) > 1e-9;
  const sides = smoothRuns(flat(part.outline), facesViewer).map((run) => [
    ...lift(run, 0),
    ...lift(run, thickness).reverse(),
  ]);
  const middle = (face: readonly Point3[]) =>
    face.reduce((sum, p) => sum + nearness(p), 0) / Math.max(1, face.length);
  const caps = Math.abs(nearness(zAxis)) > 1e-9 ? [lift(flat(part.outline), far ? thickness : 0)] : [];
  return {
    faces: [...sides.sort((a, b) => middle(a) - middle(b)), ...caps],
    holes: caps.length > 0 ? part.holes.map((hole) => lift(flat(hole), far ? thickness : 0)) : [],
  };
}

/** Neighbouring sides of a counter-clockwise outline that are seen and turn little, as one path each. */
function smoothRuns(
  points: readonly Point[],
  isSeen: (outwards: Point) => boolean,
): readonly (readonly Point[])[] {
  const count = points.length;
  const sides = points.map((from, i) => {
    const to = points[(i + 1) % count] ?? from;
    const size = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    const way = { x: (to.x - from.x) / size, y: (to.y - from.y) / size };
    return { from, to, way, seen: isSeen({ x: way.y, y: -way.x }) };
  });
  const joins = (i: number): boolean => {
    const [one, next] = [sides[i], sides[(i + 1) % count]];
    return (
      one !== undefined &&
      next !== undefined &&
      one.seen &&
      next.seen &&
      one.way.x * next.way.x + one.way.y * next.way.y > smooth
    );
  };
  // begin where nothing runs through, so that no run is cut in two
  const start = Math.max(
    0,
    sides.findIndex((_, i) => !joins((i + count - 1) % count)),
  );
  const runs: Point[][] = [];
  for (let n = 0; n < count; n++) {
    const i = (start + n) % count;
    const side = sides[i];
    if (!side?.seen) continue;
    const last = runs.at(-1);
    if (n > 0 && last && joins((i + count - 1) % count)) last.push(side.to);
    else runs.push([side.from, side.to]);
  }
  return runs;
}
