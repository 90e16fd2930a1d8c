import type { Box, Outline, PathPoint, Point } from './types.ts';

/** A rectangle with its lower left corner at the origin, counter-clockwise. */
export function rectangleOutline(length: number, width: number, at: Point = { x: 0, y: 0 }): Outline {
  return [
    { x: at.x, y: at.y },
    { x: at.x + length, y: at.y },
    { x: at.x + length, y: at.y + width },
    { x: at.x, y: at.y + width },
  ];
}

/** A full circle as two half arcs, counter-clockwise. */
export function circleOutline(centre: Point, radius: number): Outline {
  return [
    { x: centre.x - radius, y: centre.y, bulge: 1 },
    { x: centre.x + radius, y: centre.y, bulge: 1 },
  ];
}

/** An arc by centre, radius and angles (radians); `sweep` is positive counter-clockwise. */
export interface Arc {
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/** The arc from one point to another with a bulge; null when it is straight. Source: published DXF reference, group 42. */
export function arcBetween(from: Point, to: Point, bulge: number): Arc | null {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (bulge === 0 || chord === 0) return null;
  const sweep = 4 * Math.atan(bulge);
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  // from mid chord to the centre, measured to the left of the way from -> to
  const offset = (chord * (1 - bulge * bulge)) / (4 * bulge);
  const left = { x: -(to.y - from.y) / chord, y: (to.x - from.x) / chord };
  const centre = {
    x: (from.x + to.x) / 2 + left.x * offset,
    y: (from.y + to.y) / 2 + left.y * offset,
  };
  return { centre, radius, start: Math.atan2(from.y - centre.y, from.x - centre.x), sweep };
}

/** The pairs of neighbouring points of a closed path, with the bulge of each. */
export function sidesOf(outline: Outline): readonly { from: PathPoint; to: PathPoint; bulge: number }[] {
  return outline.map((from, i) => ({
    from,
    to: outline[(i + 1) % outline.length] ?? from,
    bulge: from.bulge ?? 0,
  }));
}

/** The outline with arcs replaced by chords that stray at most `tolerance` mm from them. */
export function flattenOutline(outline: Outline, tolerance = 0.05): readonly Point[] {
  const points: Point[] = [];
  for (const { from, to, bulge } of sidesOf(outline)) {
    points.push({ x: from.x, y: from.y });
    const arc = arcBetween(from, to, bulge);
    if (!arc) continue;
    const step = 2 * Math.acos(Math.max(0, 1 - tolerance / arc.radius));
    const pieces = Math.max(2, Math.ceil(Math.abs(arc.sweep) / Math.max(step, 1e-3)));
    for (let i = 1; i < pieces; i++) points.push(pointOnArc(arc, i / pieces));
  }
  return points;
}

/** The point at a fraction (0 to 1) of an arc. */
export function pointOnArc(arc: Arc, fraction: number): Point {
  const angle = arc.start + arc.sweep * fraction;
  return { x: arc.centre.x + arc.radius * Math.cos(angle), y: arc.centre.y + arc.radius * Math.sin(angle) };
}

/** Area in mm², positive when counter-clockwise; arcs counted exactly. */
export function outlineArea(outline: Outline): number {
  return sidesOf(outline).reduce((sum, { from, to, bulge }) => {
    const arc = arcBetween(from, to, bulge);
    const segment = arc ? (arc.radius ** 2 / 2) * (arc.sweep - Math.sin(arc.sweep)) : 0;
    return sum + (from.x * to.y - to.x * from.y) / 2 + segment;
  }, 0);
}

/** Length all round, mm. */
export function outlinePerimeter(outline: Outline): number {
  return sidesOf(outline).reduce((sum, { from, to, bulge }) => {
    const arc = arcBetween(from, to, bulge);
    return sum + (arc ? Math.abs(arc.sweep) * arc.radius : Math.hypot(to.x - from.x, to.y - from.y));
  }, 0);
}

/** Smallest upright box round some points; throws when there are none. */
export function boxOfPoints(points: readonly Point[]): Box {
  const first = points[0];
  if (!first) throw new Error('no points to put a box round');
  return points.reduce<Box>(
    (box, { x, y }) => ({
      minX: Math.min(box.minX, x),
      minY: Math.min(box.minY, y),
      maxX: Math.max(box.maxX, x),
      maxY: Math.max(box.maxY, y),
    }),
    { minX: first.x, minY: first.y, maxX: first.x, maxY: first.y },
  );
}

/** Smallest upright box round an outline, arcs included exactly. */
export function boxOfOutline(outline: Outline): Box {
  const points: Point[] = [];
  for (const { from, to, bulge } of sidesOf(outline)) {
    points.push(from);
    const arc = arcBetween(from, to, bulge);
    if (arc) points.push(...quarterPoints(arc));
  }
  return boxOfPoints(points);
}

/** The points of an arc that lie furthest right, up, left or down of its circle, as far as it reaches them. */
function quarterPoints(arc: Arc): readonly Point[] {
  const found: Point[] = [];
  const low = Math.min(arc.start, arc.start + arc.sweep);
  const high = Math.max(arc.start, arc.start + arc.sweep);
  for (let k = Math.ceil(low / (Math.PI / 2)); k * (Math.PI / 2) <= high; k++) {
    const angle = k * (Math.PI / 2);
    found.push({
      x: arc.centre.x + arc.radius * Math.cos(angle),
      y: arc.centre.y + arc.radius * Math.sin(angle),
    });
  }
  return found;
}

/** The outline walked the other way round; the same area with the other sign. */
export function reverseOutline(outline: Outline): Outline {
  const count = outline.length;
  return outline.map((_, i) => {
    const here = outline[(count - i) % count] as PathPoint;
    const before = outline[(count - i - 1 + count) % count] as PathPoint;
    return makePoint(here, -(before.bulge ?? 0));
  });
}

/** The mirror image across the vertical line x = `axis`, still counter-clockwise when it was. */
export function mirrorOutline(outline: Outline, axis = 0): Outline {
  const mirrored = outline.map((point) =>
    makePoint({ x: 2 * axis - point.x, y: point.y }, -(point.bulge ?? 0)),
  );
  return reverseOutline(mirrored);
}

/** The outline moved by dx, dy. */
export function moveOutline(outline: Outline, dx: number, dy: number): Outline {
  return outline.map((point) => makePoint({ x: point.x + dx, y: point.y + dy }, point.bulge ?? 0));
}

/** The outline turned counter-clockwise about the origin, radians. */
export function turnOutline(outline: Outline, angle: number): Outline {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return outline.map((p) => makePoint({ x: p.x * c - p.y * s, y: p.x * s + p.y * c }, p.bulge ?? 0));
}

/** True when a point lies inside an outline; on the edge either answer may come. */
export function isInside(point: Point, outline: Outline): boolean {
  const corners = flattenOutline(outline);
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [a, b] = [corners[i] as Point, corners[j] as Point];
    const crosses = a.y > point.y !== b.y > point.y;
    if (crosses && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

function makePoint(point: Point, bulge: number): PathPoint {
  return bulge === 0 ? { x: point.x, y: point.y } : { x: point.x, y: point.y, bulge };
}
