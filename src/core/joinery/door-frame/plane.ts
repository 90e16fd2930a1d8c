import type { Placement, Point, Point3 } from '#core/geometry';
import type { FrameLayout } from './layout.ts';
import { sawable } from '../rules.ts';

/** A straight line in the plane of the frame; the inside of the frame is on its left. */
export interface Line {
  readonly at: Point;
  readonly direction: Point;
}

export type FrameSide = 'left' | 'right' | 'head' | 'sill';
export type FrameLines = Readonly<Record<FrameSide, Line>>;

/** Outside lines of a frame, counter-clockwise: sill to the right, right up, head to the left, left down. */
export function frameLines({ book, mode }: FrameLayout): FrameLines {
  const v = book.value;
  if (mode === 'square') {
    const [left, right, foot] = [v('xF'), v('xF') + v('Fw'), v('yF')];
    return {
      sill: { at: { x: left, y: foot }, direction: { x: 1, y: 0 } },
      right: { at: { x: right, y: foot }, direction: { x: 0, y: 1 } },
      head: { at: { x: right, y: foot + v('Fh') }, direction: { x: -1, y: 0 } },
      left: { at: { x: left, y: foot + v('Fh') }, direction: { x: 0, y: -1 } },
    };
  }
  const through = (from: string, to: string, inwards: string): Line =>
    moveIn(lineThrough(cornerOf(from), cornerOf(to)), v(inwards));
  const cornerOf = (name: string): Point => ({ x: v(`x${name}`), y: v(`y${name}`) });
  return {
    sill: through('BL', 'BR', 'o_sill'),
    right: through('BR', 'TR', 'o_right'),
    head: through('TR', 'TL', 'o_head'),
    left: through('TL', 'BL', 'o_left'),
  };
}

/**
 * Where a part on one side ends at the foot: on the sloping sill for a square frame without a timber sill, through the
 * foot of its outer edge; else along the sill line.
 */
export function footLine(layout: FrameLayout, lines: FrameLines, side: 'left' | 'right', part: FootOf): Line {
  const { book } = layout;
  if (!book.has('sill_tilt')) return moveIn(lines.sill, part.above);
  const addition = book.value(`foot_${side}`);
  const tilt = (book.value('sill_tilt') * Math.PI) / 180;
  const slopes = Math.abs(Math.tan(tilt)) * part.thickness >= sawable;
  const outer = crossOf(moveIn(lines[side], part.outer), lines.sill);
  return {
    at: { x: outer.x, y: outer.y - (addition >= sawable ? addition : 0) },
    direction: slopes ? { x: Math.cos(tilt), y: Math.sin(tilt) } : lines.sill.direction,
  };
}

/** `above`: how far over the sill line it ends where there is no slope to follow. */
export interface FootOf {
  readonly outer: number;
  readonly thickness: number;
  readonly above: number;
}

/** The same line moved towards the inside, mm. */
export function moveIn(line: Line, distance: number): Line {
  const { at, direction } = line;
  return { at: { x: at.x - direction.y * distance, y: at.y + direction.x * distance }, direction };
}

export function lineThrough(from: Point, to: Point): Line {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { at: from, direction: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
}

/** Where two lines cross; not a number where they do not, and the part with such a corner is reported and left out. */
export function crossOf(one: Line, other: Line): Point {
  const turn = one.direction.x * other.direction.y - one.direction.y * other.direction.x;
  if (Math.abs(turn) < 1e-9) return { x: NaN, y: NaN };
  const [dx, dy] = [other.at.x - one.at.x, other.at.y - one.at.y];
  const along = (dx * other.direction.y - dy * other.direction.x) / turn;
  return { x: one.at.x + one.direction.x * along, y: one.at.y + one.direction.y * along };
}

/** The figure between two lines along a side and two across it: outer edge in the side's direction, then back. */
export function figureBetween(outer: Line, inner: Line, from: Line, to: Line): readonly Point[] {
  return [crossOf(outer, from), crossOf(outer, to), crossOf(inner, to), crossOf(inner, from)];
}

/** How a part lies: on edge as a lining, flat to the viewer, or flat to the far side. */
export type Lie = 'lining' | 'flat-near' | 'flat-far';

/** A part's own plane figure: x along the part, t from its inner edge outwards; and where its frame sits. */
export interface LaidPart {
  readonly placement: Placement;
  readonly figure: readonly Point[];
  readonly length: number;
  readonly depth: number;
  /** A point of the frame's plane in the part's x and t. */
  toPart(point: Point): Point;
}

/**
 * Lays a part along a side of the frame. Lining: X against the side's direction, face side inwards, face edge to the
 * viewer at `z`. Flat: face side to the viewer (or the far side) at `z`, face edge inwards.
 */
export function layPart(figure: readonly Point[], inner: Line, lie: Lie, z: number): LaidPart {
  const sense = lie === 'flat-near' ? 1 : -1;
  const xAxis = { x: inner.direction.x * sense, y: inner.direction.y * sense, z: 0 };
  const outwards = { x: inner.direction.y, y: -inner.direction.x, z: 0 };
  const along = (p: Point, axis: Point3) => (p.x - inner.at.x) * axis.x + (p.y - inner.at.y) * axis.y;
  const start = Math.min(...figure.map((p) => along(p, xAxis)));
  const toPart = (p: Point): Point => ({ x: along(p, xAxis) - start, y: along(p, outwards) });
  const own = figure.map(toPart);
  return {
    placement: {
      origin: { x: inner.at.x + xAxis.x * start, y: inner.at.y + xAxis.y * start, z },
      xAxis,
      yAxis: lie === 'lining' ? { x: 0, y: 0, z: -1 } : outwards,
    },
    figure: counterClockwise(own),
    length: Math.max(...own.map((p) => p.x)),
    depth: Math.max(...own.map((p) => p.y)),
    toPart,
  };
}

/** The same figure counter-clockwise. */
export function counterClockwise(points: readonly Point[]): readonly Point[] {
  const twice = points.reduce((sum, p, i) => {
    const next = points[(i + 1) % points.length] ?? p;
    return sum + p.x * next.y - next.x * p.y;
  }, 0);
  return twice < 0 ? [...points].reverse() : points;
}
