import type { Point } from '#core/geometry';

type Bounds = Readonly<Partial<Record<'x' | 'y', readonly [number, number]>>>;

/** A straight-sided outline cut off at upright and level lines; empty when nothing is left. After Sutherland and Hodgman, 1974. */
export function clipOutline(outline: readonly Point[], bounds: Bounds): readonly Point[] {
  return (['x', 'y'] as const).reduce<readonly Point[]>((left, axis) => {
    const range = bounds[axis];
    if (!range) return left;
    return keepSide(keepSide(left, axis, range[0], 1), axis, range[1], -1);
  }, outline);
}

/** What lies beyond `limit` (`side` 1) or below it (-1) along one axis. */
function keepSide(outline: readonly Point[], axis: 'x' | 'y', limit: number, side: 1 | -1): readonly Point[] {
  const inside = (point: Point) => side * (point[axis] - limit);
  return outline.flatMap((point, i) => {
    const next = outline[(i + 1) % outline.length] ?? point;
    const [here, there] = [inside(point), inside(next)];
    const crossing = here * there < 0 ? [between(point, next, here / (here - there))] : [];
    return here >= 0 ? [point, ...crossing] : crossing;
  });
}

function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}
