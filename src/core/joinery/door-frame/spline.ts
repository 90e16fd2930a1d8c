import type { Point } from '#core/geometry';
import { cornerFigure, type Corner, type FrameNumbers, type Member } from './members.ts';
import { counterClockwise } from './plane.ts';
import type { Machining } from '../types.ts';

const usualSpan = [0.25, 0.85] as const; // of the mitre from its outer corner, common practice, no source
const besideSlot = 3; // mm of wood between a slot and the outer edge (joinery C14)

/** Spline slot in the middle of a mitre: a quarter of the thickness, clear of both corners (joinery C14). */
export function splineSlot(numbers: FrameNumbers, member: Member, corner: Corner): Machining {
  const [outer, , inner] = mitreFigure(numbers, corner).map(member.laid.toPart);
  const depth = splineDepth(numbers);
  const [first, last] = splineSpan(numbers, corner);
  const [a, b] = [at(outer, inner, first), at(outer, inner, last)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const normal = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const middle = member.laid.length / 2;
  const sense = Math.sign((middle - a.x) * normal.x) * depth;
  const inwards = (p: Point): Point => ({ x: p.x + normal.x * sense, y: p.y + normal.y * sense });
  const width = splineWidth(member.thickness);
  const below = (member.thickness - width) / 2;
  return {
    kind: 'prism',
    name: 'slot',
    from: 'face',
    outline: counterClockwise([a, b, inwards(b), inwards(a)]),
    below,
    depth: below + width,
    note: 'spline, grain across the mitre',
  };
}

/** Where a spline begins and ends, as shares of the mitre from its outer corner: it must not break out of either outer edge. */
export function splineSpan(numbers: FrameNumbers, corner: Corner): readonly [number, number] {
  const [outer, byJamb, inner, byOther] = mitreFigure(numbers, corner);
  if (!outer || !inner || !byJamb || !byOther) return usualSpan;
  const angles = [byJamb, byOther].map((along) => angleBetween(outer, inner, along));
  const mitre = Math.hypot(inner.x - outer.x, inner.y - outer.y);
  const least = (splineDepth(numbers) + besideSlot) / Math.tan(Math.min(...angles)) / mitre;
  return [Math.min(0.7, Math.max(usualSpan[0], least)), usualSpan[1]];
}

/** Outer corner, along the jamb, inner corner, along the other. */
function mitreFigure(numbers: FrameNumbers, corner: Corner): readonly Point[] {
  const other = corner[1] === 'head' ? numbers.headInside : numbers.sill;
  return cornerFigure(numbers.lines, corner, [0, numbers.jamb], [0, other]);
}

function angleBetween(from: Point, to: Point, other: Point): number {
  const [a, b] = [to, other].map((p) => Math.atan2(p.y - from.y, p.x - from.x));
  const turn = Math.abs((a ?? 0) - (b ?? 0));
  return Math.min(turn, 2 * Math.PI - turn);
}

/** Depth of a spline in each member, and its thickness, mm (joinery C14). */
export function splineDepth(numbers: FrameNumbers): number {
  const { jamb, head, sill } = numbers;
  return Math.min(10, 0.3 * Math.min(jamb, head, sill > 0 ? sill : head));
}
export function splineWidth(thickness: number): number {
  return thickness / 4;
}

function at(from: Point | undefined, to: Point | undefined, share: number): Point {
  if (!from || !to) throw new Error('a corner without its points');
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}
