import { boxOfOutline, flattenOutline, type Outline, type Point } from '#core/geometry';

/** The line along which two outlines that share a blank are parted, from edge to edge of the blank. */
export interface LineBetween {
  readonly points: readonly Point[];
  /** One straight cut, so that the saw can follow it; else it is a jigsaw's. */
  readonly isStraight: boolean;
}

/** Arcs against their chords, mm; less than a tenth of the least gap. */
const flatness = 0.1;

/** Heights at which the two are looked at besides their corners, and directions tried for a straight cut. */
const samples = 240;
const directions = 720;

/** How far a line with few bends may lie from the middle between the two, mm. */
const bend = 0.3;

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
  const swap = ({ x, y }: Point): Point => ({ x: y, y: x });
  const upright = bentBetween(a, b, size, kerf);
  const points =
    upright ??
    bentBetween(a.map(swap), b.map(swap), { length: size.width, width: size.length }, kerf)?.map(swap);
  return points ? { points, isStraight: false } : null;
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

/** A line cut off at the edges of the blank; null when it misses it. */
function cutToBlank(
  { at, along }: { readonly at: Point; readonly along: Point },
  { length, width }: { readonly length: number; readonly width: number },
): readonly Point[] | null {
  let [from, to] = [-Infinity, Infinity];
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

/** Half way from the right of one to the left of the other wherever both lie at a height, led out to the edges of the blank. */
function bentBetween(
  a: readonly Point[],
  b: readonly Point[],
  size: { readonly length: number; readonly width: number },
  kerf: number,
): readonly Point[] | null {
  const [boxA, boxB] = [boxOfOutline(a), boxOfOutline(b)];
  const low = Math.max(boxA.minY, boxB.minY);
  const high = Math.min(boxA.maxY, boxB.maxY);
  if (high <= low) return null;
  const even = Array.from({ length: samples + 1 }, (_, i) => low + ((high - low) * i) / samples);
  const corners = [...a, ...b].map(({ y }) => y).filter((y) => y > low && y < high);
  const heights = [...even, ...corners].sort((p, q) => p - q);
  for (const [left, right] of [
    [a, b],
    [b, a],
  ] as const) {
    const middle = heights.map((y) => ({ x: (reach(left, y).max + reach(right, y).min) / 2, y }));
    const isClear = heights.every((y) => reach(right, y).min - reach(left, y).max > 0);
    if (!isClear) continue;
    const inner = straighten(middle, bend);
    const [first, last] = [inner[0], inner[inner.length - 1]];
    const down = first && leadOut(first, -1, { size, kerf, outlines: [a, b] });
    const up = last && leadOut(last, 1, { size, kerf, outlines: [a, b] });
    return down && up ? [down, ...inner, up] : null;
  }
  return null;
}

/** From the leftmost to the rightmost point of an outline at a height. */
function reach(points: readonly Point[], y: number): { readonly min: number; readonly max: number } {
  let [min, max] = [Infinity, -Infinity];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    if (y < Math.min(p.y, q.y) - 1e-9 || y > Math.max(p.y, q.y) + 1e-9) return;
    const crossings = p.y === q.y ? [p.x, q.x] : [p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y)];
    min = Math.min(min, ...crossings);
    max = Math.max(max, ...crossings);
  });
  return { min, max };
}

/** A line with fewer bends that nowhere lies farther off than allowed. */
function straighten(points: readonly Point[], allowed: number): readonly Point[] {
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last || points.length < 3) return points;
  const off = points.map((p) => distanceTo(p, first, last));
  const worst = off.indexOf(Math.max(...off));
  if ((off[worst] ?? 0) <= allowed) return [first, last];
  return [
    ...straighten(points.slice(0, worst + 1), allowed).slice(0, -1),
    ...straighten(points.slice(worst), allowed),
  ];
}

function distanceTo(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const long = dx * dx + dy * dy;
  const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / long));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}

const rays = 180;

/** Where the shortest straight way from the end of the line to an edge of the blank ends, a kerf's half off both; null for none. */
function leadOut(
  from: Point,
  way: 1 | -1,
  around: {
    readonly size: { readonly length: number; readonly width: number };
    readonly kerf: number;
    readonly outlines: readonly (readonly Point[])[];
  },
): Point | null {
  const far = around.size.length + around.size.width;
  const ways = Array.from({ length: rays + 1 }, (_, i) => {
    const angle = (Math.PI * i) / rays;
    const along = { x: Math.cos(angle) * far, y: Math.sin(angle) * far * way };
    const [dx, dy] = [
      along.x > 0 ? around.size.length - from.x : -from.x,
      along.y > 0 ? around.size.width - from.y : -from.y,
    ];
    const share = Math.min(along.x === 0 ? 1 : dx / along.x, along.y === 0 ? 1 : dy / along.y);
    return { x: from.x + along.x * share, y: from.y + along.y * share };
  });
  const clear = ways.filter((to) =>
    around.outlines.every((outline) => outline.every((p) => distanceTo(p, from, to) >= around.kerf / 2)),
  );
  const length = (to: Point) => Math.hypot(to.x - from.x, to.y - from.y);
  return clear.reduce<Point | null>((best, to) => (!best || length(to) < length(best) ? to : best), null);
}
