import type { Box, Outline, PathPoint, Point } from '#core/geometry';

/** Which sides of a pocket run out at an edge of the part, and by how much the cutter is to run past it, mm; 0 is a closed side. */
export interface OpenSides {
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
  readonly left: number;
}

const rootTwo = Math.SQRT2;
const quarter = Math.tan(Math.PI / 8); // bulge of a quarter circle

/**
 * Closed contour of a rectangular pocket, counter-clockwise, mm. Open sides run past the edge. With a relief radius, closed
 * inside corners are widened so that a square corner fits (joinery C19): by a circle through the corner, or, where the pocket
 * is too narrow for two, by running past the end wall by that radius.
 */
export function makePocketContour(box: Box, open: OpenSides, relief: number): Outline {
  const wide: Box = {
    minX: box.minX - open.left,
    minY: box.minY - open.bottom,
    maxX: box.maxX + open.right,
    maxY: box.maxY + open.top,
  };
  const corners: readonly Point[] = [
    { x: wide.minX, y: wide.minY },
    { x: wide.maxX, y: wide.minY },
    { x: wide.maxX, y: wide.maxY },
    { x: wide.minX, y: wide.maxY },
  ];
  const closed = [open.bottom, open.right, open.top, open.left].map((by) => by === 0);
  if (relief <= 0) return corners;
  const points = corners.flatMap((_, side) => {
    const [v, next] = [corners[side] as Point, corners[(side + 1) % 4] as Point];
    const before = closed[(side + 3) % 4] === true;
    const after = closed[(side + 1) % 4] === true;
    const here = closed[side] === true;
    const length = Math.hypot(next.x - v.x, next.y - v.y);
    if (here && before && after && isNarrow(length, relief)) return endWall(v, next, relief);
    const previousSide = sideLength(corners, (side + 3) % 4);
    const earlierOpen = closed[(side + 2) % 4] === true;
    const handled = before && here && earlierOpen && isNarrow(previousSide, relief);
    if (handled || !here || !before) return [v];
    return Math.min(length, previousSide) < relief * rootTwo
      ? [v]
      : throughCorner(v, corners[(side + 3) % 4] as Point, next, relief);
  });
  return dropRepeats(points);
}

function sideLength(corners: readonly Point[], side: number): number {
  const [a, b] = [corners[side] as Point, corners[(side + 1) % 4] as Point];
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** Too narrow for a relief circle at both ends. */
function isNarrow(length: number, relief: number): boolean {
  return length < 2 * rootTwo * relief;
}

/** The corner replaced by a half circle whose line passes exactly through it. */
function throughCorner(v: Point, previous: Point, next: Point, r: number): readonly PathPoint[] {
  const back = direction(v, previous);
  const on = direction(v, next);
  return [
    { x: v.x + back.x * r * rootTwo, y: v.y + back.y * r * rootTwo, bulge: 1 },
    { x: v.x + on.x * r * rootTwo, y: v.y + on.y * r * rootTwo },
  ];
}

/** The wall from v to next pushed outwards by r between two quarter circles; both its corners are then clear. */
function endWall(v: Point, next: Point, r: number): readonly PathPoint[] {
  const d = direction(v, next);
  const out = { x: d.y, y: -d.x };
  return [
    { x: v.x, y: v.y, bulge: quarter },
    { x: v.x + d.x * r + out.x * r, y: v.y + d.y * r + out.y * r },
    { x: next.x - d.x * r + out.x * r, y: next.y - d.y * r + out.y * r, bulge: quarter },
  ];
}

function direction(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

const same = 1e-6; // mm; points nearer than this would make a side without length

function dropRepeats(points: readonly PathPoint[]): Outline {
  return points.filter((p, i) => {
    const next = points[(i + 1) % points.length] as PathPoint;
    return Math.hypot(next.x - p.x, next.y - p.y) > same;
  });
}
