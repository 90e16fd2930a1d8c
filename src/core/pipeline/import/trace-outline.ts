import { arcBetween, type Outline, type PathPoint, type Point } from '#core/geometry';
import type { MeasuredOutline, TracedOutline } from '#core/project';

import { wallPoint } from '../shapes/adjust-walls.ts';
import type { OutlineCandidate } from './types.ts';

/** How an outline from a drawing is called, and what is known of its scale. */
export interface TraceOptions {
  readonly id: string;
  readonly name: string;
  readonly seenFrom: string;
  /** The name of the file. */
  readonly source?: string;
  readonly bars?: TracedOutline['bars'];
}

/** A bend sharper than this is a corner, radians (15°; common practice, no source). */
const sharpBend = Math.PI / 12;
/** More corners than this are not drawn but digitised: then only sharp bends count. */
const mostCorners = 60;

/**
 * A contour of a drawing as a shape of the project. Corners are where it bends sharply or a straight line meets an arc, named
 * A, B, C, … counter-clockwise from the lowest at the left.
 */
export function traceOutline(candidate: OutlineCandidate, options: TraceOptions): MeasuredOutline {
  const { id, name, seenFrom, source, bars } = options;
  const { points, cornersAt } = startLow(candidate.outline, findCorners(candidate.outline));
  return {
    ...{ id, name, kind: 'outline', seenFrom, readings: [] },
    corners: cornersAt.map((_, at) => wallPoint(at)),
    traced: { points, cornersAt, ...(bars && { bars }), ...(source !== undefined && { source }) },
  };
}

/** Places of the corners in the outline; two at least, the second then as far from the first as can be. */
function findCorners(outline: Outline): readonly number[] {
  const bends = outline.map((_, at) => bendAt(outline, at));
  const sharp = outline.flatMap((_, at) => (Math.abs(bends[at] ?? 0) > sharpBend ? [at] : []));
  const all = outline.flatMap((_, at) =>
    sharp.includes(at) || isArc(outline[at]) !== isArc(before(outline, at)) ? [at] : [],
  );
  const found = all.length > mostCorners ? sharp : all;
  if (found.length > 1) return found;
  const [first = 0] = found;
  const here = outline[first];
  const apart = (p: Point): number => (here ? Math.hypot(p.x - here.x, p.y - here.y) : 0);
  const far = outline.reduce((best, p, at) => (apart(p) > apart(outline[best] ?? p) ? at : best), first);
  return far === first ? [first] : [first, far].sort((a, b) => a - b);
}

function isArc(point: PathPoint | undefined): boolean {
  return (point?.bulge ?? 0) !== 0;
}

function before(outline: Outline, at: number): PathPoint | undefined {
  return outline[(at + outline.length - 1) % outline.length];
}

/** By how much the way turns at a point, radians. */
function bendAt(outline: Outline, at: number): number {
  const [back, here, next] = [before(outline, at), outline[at], outline[(at + 1) % outline.length]];
  if (!back || !here || !next) return 0;
  const turn = headingOf(here, next, 'start') - headingOf(back, here, 'end');
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

/** Which way a side runs at one of its ends. */
function headingOf(from: PathPoint, to: Point, end: 'start' | 'end'): number {
  const chord = Math.atan2(to.y - from.y, to.x - from.x);
  const sweep = arcBetween(from, to, from.bulge ?? 0)?.sweep ?? 0;
  return end === 'start' ? chord - sweep / 2 : chord + sweep / 2;
}

/** The same outline, its points counted from the corner that lies lowest, of those the one furthest left. */
function startLow(outline: Outline, corners: readonly number[]): Pick<TracedOutline, 'points' | 'cornersAt'> {
  const height = (at: number): number => (outline[at]?.y ?? 0) + 1e-3 * (outline[at]?.x ?? 0);
  const start = corners.reduce((low, at) => (height(at) < height(low) ? at : low), corners[0] ?? 0);
  const count = outline.length;
  return {
    points: outline.map((_, at) => outline[(start + at) % count] ?? { x: 0, y: 0 }),
    cornersAt: corners.map((at) => (at - start + count) % count).sort((a, b) => a - b),
  };
}
