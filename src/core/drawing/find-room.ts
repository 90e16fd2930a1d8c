import { isInside } from '#core/geometry';
import type { Box, Outline, Point } from '#core/geometry';
import { boxesOverlap } from './marks.ts';

/** The box of this size centred on a point. */
export function boxAround(at: Point, width: number, height: number): Box {
  return { minX: at.x - width / 2, maxX: at.x + width / 2, minY: at.y - height / 2, maxY: at.y + height / 2 };
}

const step = 1.5; // mm of paper between places tried

/** Centre of the place nearest to `wanted` where something of this size lies within a box, its centre inside an outline when one is given, and clear of what is taken; null when there is none. */
export function findRoom(
  size: { readonly width: number; readonly height: number; readonly inside?: Outline },
  within: Box,
  taken: readonly Box[],
  wanted: Point,
): Point | null {
  const [w, h] = [size.width, size.height];
  const places: Point[] = [];
  const spanX = within.maxX - within.minX - w;
  const spanY = within.maxY - within.minY - h;
  if (spanX < 0 || spanY < 0) return null;
  const [nx, ny] = [Math.ceil(spanX / step), Math.ceil(spanY / step)];
  for (let i = 0; i <= nx; i++) {
    for (let j = 0; j <= ny; j++) {
      const x = within.minX + w / 2 + (nx === 0 ? spanX / 2 : (spanX * i) / nx);
      const y = within.minY + h / 2 + (ny === 0 ? spanY / 2 : (spanY * j) / ny);
      places.push({ x, y });
    }
  }
  const far = (p: Point) => Math.abs(p.x - wanted.x) + Math.abs(p.y - wanted.y);
  const { inside } = size;
  const free = places.filter((p) => !taken.some((box) => boxesOverlap(box, boxAround(p, w, h))));
  const nearer = (best: Point | null, p: Point) => best === null || far(p) < far(best);
  return free.reduce<Point | null>(
    (best, p) => (nearer(best, p) && (!inside || isInside(p, inside)) ? p : best),
    null,
  );
}
