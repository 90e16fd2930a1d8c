import {
  boxOfOutline,
  circleOutline,
  crossProduct,
  flattenOutline,
  placePoint,
  rectangleOutline,
  subtractOutlines,
} from '#core/geometry';
import type { Box, Outline, Placement, Point } from '#core/geometry';
import type { Part, PartFace } from '#core/joinery';

/** What is seen of one copy of a part from the front of the piece, mm. */
export interface Silhouette {
  readonly part: Part;
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly box: Box;
  /** How far forward it reaches. */
  readonly front: number;
}

/** Narrower holes are of screws and would only clutter a view of the whole, mm. */
const leastSeen = 10;

const square = 0.999; // cosine; a face this near to facing the viewer is drawn with its true outline

/** Every copy of every part as seen from the front, the farthest first. */
export function paintersOrder(parts: readonly Part[]): readonly Silhouette[] {
  const shapes = parts.flatMap((part) => part.placements.map((placement) => seenFromFront(part, placement)));
  return shapes
    .map((shape, index) => ({
      shape,
      index,
      front: Math.round(shape.front * 1e6),
      takes: takesOthers(shape.part),
    }))
    .sort((a, b) => a.front - b.front || a.takes - b.takes || a.index - b.index)
    .map(({ shape }) => shape);
}

/** 1 for a part with mortises, housings or slots, which covers what enters it where both reach equally far forward; else 0. */
function takesOthers({ machining }: Part): 0 | 1 {
  const entered: readonly string[] = ['mortise', 'housing', 'slot'];
  const takes = machining.some(
    (one) => (one.kind === 'recess' || one.kind === 'prism') && entered.includes(one.name),
  );
  return takes ? 1 : 0;
}

function seenFromFront(part: Part, placement: Placement): Silhouette {
  const facing = crossProduct(placement.xAxis, placement.yAxis).z;
  const corners = [0, part.finished.thickness].flatMap((z) =>
    flattenOutline(part.outline).map((p) => placePoint(placement, { ...bevelled(part, p, z), z })),
  );
  const flat = Math.abs(facing) > square;
  const place = (outline: Outline): Outline =>
    outline.map((p) => {
      const at = placePoint(placement, { x: p.x, y: p.y, z: 0 });
      return { x: at.x, y: at.y, ...(p.bulge && { bulge: p.bulge * Math.sign(facing) }) };
    });
  const outline = flat ? place(withoutTenons(part, facing < 0)) : hullOf(corners);
  return {
    part,
    outline,
    holes: flat ? [...part.holes, ...boredHoles(part)].map(place) : [],
    box: boxOfOutline(outline),
    front: corners.reduce((most, p) => Math.max(most, p.z), -Infinity),
  };
}

/** Bored right through and wide enough to be seen: handle, keyhole, finger hole; holes of screws are left out. */
function boredHoles({ machining }: Part): readonly Outline[] {
  return machining.flatMap((one) =>
    one.kind === 'hole' &&
    one.depth === 'through' &&
    (one.from === 'face' || one.from === 'back') &&
    one.diameter >= leastSeen
      ? [circleOutline(one, one.diameter / 2)]
      : [],
  );
}

/** A point of the outline at depth z, where its edge or end is sawn at an angle through the thickness. */
function bevelled(part: Part, { x, y }: Point, z: number): Point {
  const { length, width, thickness } = part.finished;
  const lost = (edge: PartFace) =>
    part.machining.reduce((sum, one) => {
      if (one.kind !== 'bevel' || one.edge !== edge) return sum;
      const slope = Math.tan((one.degrees * Math.PI) / 180);
      return sum + (slope > 0 ? slope * (thickness - z) : -slope * z);
    }, 0);
  const [atStart, atEnd, low, high] = [x < 1e-6, x > length - 1e-6, y < 1e-6, y > width - 1e-6];
  return {
    x: x + (atStart ? lost('start') : 0) - (atEnd ? lost('end') : 0),
    y: y + (low ? lost('face-edge') : 0) - (high ? lost('far-edge') : 0),
  };
}

/** What is left of the seen side where tenons and laps go under the other part; the whole outline when nothing does. */
function withoutTenons(part: Part, faceSeen: boolean): Outline {
  const { thickness } = part.finished;
  const taken = part.machining.flatMap((one) => {
    if (one.kind !== 'recess' || (one.name !== 'shoulder' && one.name !== 'lap')) return [];
    const { min, max } = one.box;
    const open = faceSeen ? min.z <= 1e-6 : max.z >= thickness - 1e-6;
    return open ? [rectangleOutline(max.x - min.x, max.y - min.y, min)] : [];
  });
  if (taken.length === 0) return part.outline;
  return subtractOutlines([part.outline], taken)[0] ?? part.outline;
}

/** Convex hull, counter-clockwise (the monotone chain of A. M. Andrew, 1979; from memory). */
export function hullOf(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y).map(({ x, y }) => ({ x, y }));
  const half = (list: readonly Point[]) => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length > 1 && !turnsLeft(chain.at(-2) as Point, chain.at(-1) as Point, p)) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 1e-6; // mm², collinear within a hair
}

const sameStation = 0.5; // mm; edges nearer than this get one dimension

/** Where the part in view changes along an upright or level line through the piece, sorted, mm. */
export function stationsAlong(shapes: readonly Silhouette[], axis: 'x' | 'y', at: number): readonly number[] {
  const crossing = shapes.filter(({ box }) =>
    axis === 'x' ? box.minY < at && box.maxY > at : box.minX < at && box.maxX > at,
  );
  const span = ({ box }: Silhouette) =>
    (axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY]) as [number, number];
  const ends = [...new Set(crossing.flatMap(span))].sort((a, b) => a - b);
  const seenBetween = (low: number, high: number) => {
    const middle = (low + high) / 2;
    return crossing.findLast((shape) => span(shape)[0] < middle && span(shape)[1] > middle) ?? null;
  };
  const stations: number[] = [];
  ends.forEach((end, i) => {
    const before = i > 0 ? seenBetween(ends[i - 1] ?? end, end) : undefined;
    const after = i < ends.length - 1 ? seenBetween(end, ends[i + 1] ?? end) : undefined;
    const last = stations.at(-1);
    if (before !== after && (last === undefined || end - last > sameStation)) stations.push(end);
  });
  return stations;
}
