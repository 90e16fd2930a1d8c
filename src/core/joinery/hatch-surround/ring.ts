import type { Outline, Point } from '#core/geometry';
import { leftOf, step } from '../flat/polygon.ts';
import type { SurroundLayout } from './sizes.ts';

/** A piece of the ring in the plane of the ring, the lower left corner of the aperture at the origin. */
export interface RingPiece {
  readonly kind: 'straight-A' | 'straight-B' | 'segment';
  readonly outline: Outline;
  /** Along its grain. */
  readonly along: Point;
  /** Its two end joints: middle of the joint line, and the way into the piece, square to it. */
  readonly joints: readonly { readonly at: Point; readonly into: Point }[];
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
      segment(layout, centre, { from: start + (n * quarter) / k, to: start + ((n + 1) * quarter) / k }),
    );
    return [...segments, straight(layout, { centre, next: middles[(i + 1) % 4] ?? centre, corner: i })];
  });
}

function segment(
  { book }: SurroundLayout,
  centre: Point,
  { from, to }: { readonly from: number; readonly to: number },
): RingPiece {
  const [Ri, Ro] = [book.value('Ri'), book.value('Ro')];
  const bulge = Math.tan((to - from) / 4);
  const middle = (from + to) / 2;
  const mean = (Ri + Ro) / 2;
  const turned = (angle: number, sign: number): Point => ({
    x: -Math.sin(angle) * sign,
    y: Math.cos(angle) * sign,
  });
  return {
    kind: 'segment',
    outline: [
      { ...atAngle(centre, Ro, from), bulge },
      atAngle(centre, Ro, to),
      { ...atAngle(centre, Ri, to), bulge: -bulge },
      atAngle(centre, Ri, from),
    ],
    along: turned(middle, 1),
    joints: [
      { at: atAngle(centre, mean, from), into: turned(from, 1) },
      { at: atAngle(centre, mean, to), into: turned(to, -1) },
    ],
  };
}

function straight(
  { book }: SurroundLayout,
  { centre, next, corner }: { readonly centre: Point; readonly next: Point; readonly corner: number },
): RingPiece {
  const [Ri, Ro] = [book.value('Ri'), book.value('Ro')];
  const out = (corner + 3) * quarter;
  const along = { x: Math.cos(out + quarter), y: Math.sin(out + quarter) };
  const mean = (Ri + Ro) / 2;
  return {
    kind: corner % 2 === 0 ? 'straight-A' : 'straight-B',
    outline: [
      atAngle(centre, Ri, out),
      atAngle(centre, Ro, out),
      atAngle(next, Ro, out),
      atAngle(next, Ri, out),
    ],
    along,
    joints: [
      { at: atAngle(centre, mean, out), into: along },
      { at: atAngle(next, mean, out), into: { x: -along.x, y: -along.y } },
    ],
  };
}

/** The slot for a loose tenon at a joint, within the piece. */
export function slotAt({ book }: SurroundLayout, joint: RingPiece['joints'][number]): readonly Point[] {
  const aside = leftOf(joint.into);
  const half = (book.value('tenon_W') + 1) / 2;
  const d = book.value('d');
  const at = (x: number, y: number) => step(step(joint.at, joint.into, x), aside, y);
  return [at(0, -half), at(d, -half), at(d, half), at(0, half)];
}

/** True when a slot lies within its piece: a narrow segment has no room for a deep one. */
export function slotFits(layout: SurroundLayout, piece: RingPiece): boolean {
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
