import type { Outline, PathPoint, Point } from '#core/geometry';
import { step } from '../flat/polygon.ts';
import type { SurroundLayout } from './sizes.ts';

/** A piece of the ring in the plane of the ring, the lower left corner of the aperture at the origin. */
export interface RingPiece {
  readonly kind: 'straight-A' | 'straight-B' | 'segment';
  readonly outline: Outline;
  /** Along its grain. */
  readonly along: Point;
  /** Counted from 0 in its corner, where the segments of a corner are not alike. */
  readonly place: number;
  /** Its two end joints: middle of the joint line, the way into the piece, square to it, and the way out of the ring. */
  readonly joints: readonly { readonly at: Point; readonly into: Point; readonly out: Point }[];
  /** What is taken from its face or its back, half its thickness deep, where it lies over its neighbours. */
  readonly laps: readonly { readonly from: 'face' | 'back'; readonly outline: Outline }[];
}

const quarter = Math.PI / 2;

/** The point of the ring at a distance from the middle of a corner's arcs, counter-clockwise from straight right. */
function atAngle(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** Middles of the corner arcs, counter-clockwise from the lower left; corner i turns from (i + 2) to (i + 3) quarters. */
function centres({ book }: SurroundLayout): readonly Point[] {
  const v = book.value;
  const [left, right, low, high] = [v('r'), v('A') - v('r'), v('r'), v('B') - v('r')];
  return [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
}

/** The pieces of the ring counter-clockwise: in each corner its segments, then the straight that follows. */
export function ringPieces(layout: SurroundLayout): readonly RingPiece[] {
  const middles = centres(layout);
  return middles.flatMap((centre, i) => {
    const k = layout.choices.segments;
    const start = (i + 2) * quarter;
    const segments = Array.from({ length: k }, (_, n) =>
      segment(layout, centre, {
        ...{ place: n, last: n === k - 1 },
        ...{ from: start + (n * quarter) / k, to: start + ((n + 1) * quarter) / k },
      }),
    );
    return [...segments, straight(layout, { centre, next: middles[(i + 1) % 4] ?? centre, corner: i })];
  });
}

const isLapped = ({ choices }: SurroundLayout) => choices.joint === 'half-lap';

/** One segment of a corner, from angle to angle. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly place: number;
  readonly last: boolean;
}

function segment(layout: SurroundLayout, centre: Point, span: Span): RingPiece {
  const { from, to } = span;
  const mean = (layout.book.value('Ri') + layout.book.value('Ro')) / 2;
  const turned = (angle: number, sign: number): Point => ({
    x: -Math.sin(angle) * sign,
    y: Math.cos(angle) * sign,
  });
  const outwards = (angle: number): Point => ({ x: Math.cos(angle), y: Math.sin(angle) });
  const lapped = isLapped(layout) ? lapSegment(layout, centre, span) : null;
  return {
    kind: 'segment',
    place: lapped ? span.place : 0,
    outline: lapped?.outline ?? sector(layout, centre, [from, to]),
    along: turned((from + (lapped?.end ?? to)) / 2, 1),
    joints: [
      { at: atAngle(centre, mean, from), into: turned(from, 1), out: outwards(from) },
      { at: atAngle(centre, mean, to), into: turned(to, -1), out: outwards(to) },
    ],
    laps: lapped?.laps ?? [],
  };
}

/** The ring between two angles. */
function sector(
  { book }: SurroundLayout,
  centre: Point,
  [from, to]: readonly [number, number],
): readonly PathPoint[] {
  const [Ri, Ro] = [book.value('Ri'), book.value('Ro')];
  const bulge = Math.tan((to - from) / 4);
  return [
    { ...atAngle(centre, Ro, from), bulge },
    atAngle(centre, Ro, to),
    { ...atAngle(centre, Ri, to), bulge: -bulge },
    atAngle(centre, Ri, from),
  ];
}

/** The ring straight on from a joint line at an angle, `way` 1 counter-clockwise and -1 back. */
function tongue(
  { book }: SurroundLayout,
  centre: Point,
  { angle, way, long }: { readonly angle: number; readonly way: 1 | -1; readonly long: number },
): Outline {
  const [Ri, Ro] = [book.value('Ri'), book.value('Ro')];
  const on = { x: -Math.sin(angle) * way, y: Math.cos(angle) * way };
  const [outer, inner] = [atAngle(centre, Ro, angle), atAngle(centre, Ri, angle)];
  const ring = [outer, step(outer, on, long), step(inner, on, long), inner];
  return way === 1 ? ring : ring.toReversed();
}

/** Play at the end of a lap, mm (joinery C6). */
const lapPlay = 0.1;

/**
 * A segment that lies over what follows it with its face half, and over the straight before it when it is the first; what
 * comes before it lies over it in the same way (joinery C6).
 */
function lapSegment(
  layout: SurroundLayout,
  centre: Point,
  { from, to, place, last }: Span,
): Pick<RingPiece, 'outline' | 'laps'> & { readonly end: number } {
  const lap = layout.book.value('lap');
  const turn = (layout.book.value('lambda') * Math.PI) / 180;
  const mean = (layout.book.value('Ri') + layout.book.value('Ro')) / 2;
  const first = place === 0;
  const body = sector(layout, centre, [from, last ? to : to + turn]);
  const before = first ? tongue(layout, centre, { angle: from, way: -1, long: lap }) : [];
  const after = last ? tongue(layout, centre, { angle: to, way: 1, long: lap }) : [];
  const [outerFrom, outerTo, innerTo, innerFrom] = body;
  const laid = [outerFrom, outerTo, innerTo, innerFrom].flatMap((point) => point ?? []);
  // both tongues run from the outer edge to the inner one; their first and last points are those of the body
  const outline: Outline = [
    ...laid.slice(0, 2),
    ...(last ? after.slice(1, 3) : []),
    ...laid.slice(2),
    ...(first ? [before[1], before[2]].flatMap((point) => point ?? []) : []),
  ];
  const over = last ? after : sector(layout, centre, [to, to + turn]);
  return {
    outline,
    end: last ? to : to + turn,
    laps: [
      { from: 'back', outline: over },
      first
        ? { from: 'back', outline: before }
        : { from: 'face', outline: sector(layout, centre, [from, from + turn + lapPlay / mean]) },
    ],
  };
}

function straight(
  layout: SurroundLayout,
  { centre, next, corner }: { readonly centre: Point; readonly next: Point; readonly corner: number },
): RingPiece {
  const { book } = layout;
  const [Ri, Ro] = [book.value('Ri'), book.value('Ro')];
  const out = (corner + 3) * quarter;
  const along = { x: Math.cos(out + quarter), y: Math.sin(out + quarter) };
  const outwards = { x: Math.cos(out), y: Math.sin(out) };
  const mean = (Ri + Ro) / 2;
  const long = isLapped(layout) ? book.value('lap') + lapPlay : 0;
  return {
    kind: corner % 2 === 0 ? 'straight-A' : 'straight-B',
    place: 0,
    outline: [
      atAngle(centre, Ri, out),
      atAngle(centre, Ro, out),
      atAngle(next, Ro, out),
      atAngle(next, Ri, out),
    ],
    along,
    joints: [
      { at: atAngle(centre, mean, out), into: along, out: outwards },
      { at: atAngle(next, mean, out), into: { x: -along.x, y: -along.y }, out: outwards },
    ],
    laps: isLapped(layout)
      ? [
          { from: 'face', outline: tongue(layout, centre, { angle: out, way: 1, long }) },
          { from: 'face', outline: tongue(layout, next, { angle: out, way: -1, long }) },
        ]
      : [],
  };
}

/** The slot for a loose tenon or a spline at a joint, within the piece; a spline's runs right across the ring. */
export function slotAt(
  { book, choices }: SurroundLayout,
  { kind, joints }: RingPiece,
  joint: RingPiece['joints'][number] | undefined = joints[0],
): Outline {
  if (!joint) return [];
  const d = book.value('d');
  const at = (x: number, y: number) => step(step(joint.at, joint.into, x), joint.out, y);
  if (choices.joint === 'mitre-and-spline') {
    const half = book.value('w') / 2;
    const Ri = book.value('Ri');
    if (kind !== 'segment') return [at(0, -half), at(d, -half), at(d, half), at(0, half)];
    // the arcs fall away from the square of the joint line; the slot ends with the wood
    const Ro = book.value('Ro');
    const [inner, outer] = [Math.sqrt(Ri * Ri - d * d), Math.sqrt(Ro * Ro - d * d)];
    const mean = (Ri + Ro) / 2;
    const hand = joint.into.x * joint.out.y - joint.into.y * joint.out.x;
    const bulge = hand * Math.tan(Math.atan2(d, outer) / 4);
    return [at(0, -half), at(d, inner - mean), { ...at(d, outer - mean), bulge }, at(0, half)];
  }
  const half = (book.value('tenon_W') + 1) / 2;
  return [at(0, -half), at(d, -half), at(d, half), at(0, half)];
}

/** True when a slot lies within its piece: a narrow segment has no room for a deep one. */
export function slotFits(layout: SurroundLayout, piece: RingPiece): boolean {
  if (layout.choices.joint === 'mitre-and-spline') return splineFits(layout, piece);
  const inner = layout.book.value('Ri');
  const depth = layout.book.value('d');
  if (piece.kind !== 'segment')
    return depth * 2 < layout.book.value(piece.kind === 'straight-A' ? 'straight_A' : 'straight_B');
  // the far corner of the slot on the inside of the ring, seen from the middle of the arc
  const near = (inner + layout.book.value('Ro')) / 2 + (layout.book.value('tenon_W') + 1) / 2;
  const low = near - layout.book.value('tenon_W') - 1;
  const halfAngle = (layout.book.value('alpha') * Math.PI) / 360;
  return Math.hypot(near, depth) < layout.book.value('Ro') - 3 && Math.atan2(depth, low) < halfAngle - 1e-9;
}

/** True when the slots of a spline at both ends of a piece leave wood between them. */
function splineFits({ book }: SurroundLayout, { kind }: RingPiece): boolean {
  const d = book.value('d');
  if (kind !== 'segment') return d * 2 < book.value(kind === 'straight-A' ? 'straight_A' : 'straight_B');
  return (
    d < book.value('Ri') && Math.atan2(d, book.value('Ri')) < (book.value('alpha') * Math.PI) / 360 - 1e-9
  );
}
