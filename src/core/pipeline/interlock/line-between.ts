import { flattenOutline, offsetOutline, type Outline, type Point } from '#core/geometry';

/** The line along which two outlines that share a blank are parted, from edge to edge of the blank. */
export interface LineBetween {
  readonly points: readonly Point[];
  /** One straight cut, so that the saw can follow it; else it is a jigsaw's. */
  readonly isStraight: boolean;
}

/** Arcs against their chords, mm; less than a tenth of the least gap. */
const flatness = 0.1;

/** Directions tried for a straight cut, besides those of the sides. */
const directions = 720;

/**
 * Where to saw between two outlines in a blank of this size: straight where a kerf has room between them, else half way from
 * one to the other. Null where neither is found: then each is cut along its own outline.
 */
export function lineBetween(
  one: Outline,
  two: Outline,
  size: { readonly length: number; readonly width: number },
  kerf: number,
): LineBetween | null {
  const [a, b] = [flattenOutline(one, flatness), flattenOutline(two, flatness)];
  const straight = straightBetween(a, b, kerf);
  if (straight) {
    const points = cutToBlank(straight, size);
    return points && { points, isStraight: true };
  }
  const points = bentBetween(a, b, size, kerf);
  return points && { points, isStraight: false };
}

/** A point and a direction of the straight line with most room on either side; null where a kerf has none. */
function straightBetween(
  a: readonly Point[],
  b: readonly Point[],
  kerf: number,
): { readonly at: Point; readonly along: Point } | null {
  let best = { room: 0, offset: 0, angle: 0 };
  const look = (angle: number): void => {
    const [nx, ny] = [-Math.sin(angle), Math.cos(angle)];
    const heights = (points: readonly Point[]) => points.map(({ x, y }) => x * nx + y * ny);
    const [ha, hb] = [heights(a), heights(b)];
    const over = Math.min(...hb) - Math.max(...ha);
    const under = Math.min(...ha) - Math.max(...hb);
    const room = Math.max(over, under);
    if (room <= best.room) return;
    const low = over >= under ? Math.max(...ha) : Math.max(...hb);
    best = { room, offset: low + room / 2, angle };
  };
  const step = Math.PI / directions;
  for (let i = 0; i < directions; i++) look(i * step);
  // parallel sides have their room at one angle only: seek it between those tried
  const sides = [...a, ...b].map((p, i, all) =>
    Math.atan2((all[i + 1]?.y ?? p.y) - p.y, (all[i + 1]?.x ?? p.x) - p.x),
  );
  sides.forEach(look);
  if (best.room < kerf) return null;
  const [c, s] = [Math.cos(best.angle), Math.sin(best.angle)];
  return { at: { x: -s * best.offset, y: c * best.offset }, along: { x: c, y: s } };
}

/** A line, or the stretch of it that is asked for, cut off at the edges of the blank; null when that misses it. */
function cutToBlank(
  { at, along }: { readonly at: Point; readonly along: Point },
  { length, width }: { readonly length: number; readonly width: number },
  stretch: readonly [number, number] = [-Infinity, Infinity],
): readonly [Point, Point] | null {
  let [from, to] = stretch;
  for (const [start, step, end] of [
    [at.x, along.x, length],
    [at.y, along.y, width],
  ] as const) {
    if (Math.abs(step) < 1e-12) {
      if (start < 0 || start > end) return null;
      continue;
    }
    const ends = [-start / step, (end - start) / step] as const;
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  const point = (t: number): Point => ({ x: at.x + along.x * t, y: at.y + along.y * t });
  return from < to ? [point(from), point(to)] : null;
}

/**
 * Round the first at half the distance to the second, on the side where that lies: never nearer to either. Null when its way
 * round the first does not run from edge to edge.
 */
function bentBetween(
  a: readonly Point[],
  b: readonly Point[],
  size: { readonly length: number; readonly width: number },
  kerf: number,
): readonly Point[] | null {
  const apart = distanceOf(a, b);
  if (apart < kerf) return null;
  const [round] = offsetOutline(a, apart / 2);
  if (!round) return null;
  const runs = runsInside(flattenOutline(round, flatness), size);
  const far = (run: readonly Point[]): number => distanceOf(run, b);
  return runs.reduce<readonly Point[] | null>(
    (best, run) => (!best || far(run) < far(best) ? run : best),
    null,
  );
}

/** The stretches of a closed line that lie in the blank, each from edge to edge. */
function runsInside(
  points: readonly Point[],
  { length, width }: { readonly length: number; readonly width: number },
): readonly (readonly Point[])[] {
  const isInside = ({ x, y }: Point) => x > 0 && x < length && y > 0 && y < width;
  const start = points.findIndex((point) => !isInside(point));
  if (start < 0) return [];
  const ring = points.map((_, i) => points[(start + i) % points.length] as Point);
  const runs: Point[][] = [];
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length] as Point;
    const along = { x: to.x - from.x, y: to.y - from.y };
    const piece = cutToBlank({ at: from, along }, { length, width }, [0, 1]);
    if (!piece) return;
    const [enters, leaves] = piece;
    if (isInside(from)) runs[runs.length - 1]?.push(leaves);
    else runs.push([enters, leaves]);
  });
  return runs;
}

/** How near two lines of points come to each other, the first open and the second closed. */
function distanceOf(a: readonly Point[], b: readonly Point[]): number {
  const sides = b.map((from, i) => [from, b[(i + 1) % b.length] as Point] as const);
  const own = a.slice(1).map((to, i) => [a[i] as Point, to] as const);
  let least = Infinity;
  for (const p of a) for (const [from, to] of sides) least = Math.min(least, distanceTo(p, from, to));
  for (const p of b) for (const [from, to] of own) least = Math.min(least, distanceTo(p, from, to));
  return least;
}

function distanceTo(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const long = dx * dx + dy * dy;
  const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / long));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}
