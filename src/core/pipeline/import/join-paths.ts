import type { PathPoint, Point } from '#core/geometry';

import type { DrawnPath } from './types.ts';

/** A closed line put together from one or several drawn ones. */
export interface JoinedPath {
  readonly layer: string;
  readonly points: readonly PathPoint[];
  /** The widest gap between two of its lines, in the unit of the file. */
  readonly gap: number;
}

interface Chain {
  readonly points: readonly PathPoint[];
  readonly gap: number;
}

/** Closed lines of one drawing: those drawn closed, and open ones joined end to end where they meet within `reach`. */
export function joinPaths(
  paths: readonly DrawnPath[],
  reach: number,
): { readonly closed: readonly JoinedPath[]; readonly open: number } {
  const closed = paths
    .filter((path) => path.closed)
    .map(({ layer, points }): JoinedPath => ({ layer, points: withoutRepeats(points), gap: 0 }));
  const layers = [...new Set(paths.map(({ layer }) => layer))];
  let open = 0;
  for (const layer of layers) {
    const loose = paths.filter((path) => !path.closed && path.layer === layer && path.points.length > 1);
    const { rings, left } = chainUp(loose, reach);
    closed.push(...rings.map(({ points, gap }) => ({ layer, points, gap })));
    open += left;
  }
  return { closed: closed.filter(isArea), open };
}

/** Three corners, or two with an arc between them. */
function isArea({ points }: JoinedPath): boolean {
  return points.length > 2 || (points.length === 2 && points.some(({ bulge }) => (bulge ?? 0) !== 0));
}

function chainUp(
  paths: readonly DrawnPath[],
  reach: number,
): { readonly rings: readonly Chain[]; readonly left: number } {
  const waiting = [...paths];
  const rings: Chain[] = [];
  let left = 0;
  for (let first = waiting.pop(); first; first = waiting.pop()) {
    let chain: Chain = { points: first.points, gap: 0 };
    let used = 1;
    while (gapOf(endOf(chain.points), chain.points[0]) > reach || chain.points.length < 3) {
      const next = nearest(endOf(chain.points), waiting, reach);
      if (!next) break;
      waiting.splice(next.at, 1);
      chain = { points: join(chain.points, next.points), gap: Math.max(chain.gap, next.gap) };
      used += 1;
    }
    const last = gapOf(endOf(chain.points), chain.points[0]);
    if (last <= reach) rings.push({ points: chain.points.slice(0, -1), gap: Math.max(chain.gap, last) });
    else left += used;
  }
  return { rings, left };
}

interface Next {
  readonly at: number;
  readonly points: readonly PathPoint[];
  readonly gap: number;
}

/** The line that begins or ends nearest to a point, turned so that it begins there. */
function nearest(end: Point | undefined, paths: readonly DrawnPath[], reach: number): Next | null {
  let best: Next | null = null;
  paths.forEach(({ points }, at) => {
    const [forward, backward] = [gapOf(end, points[0]), gapOf(end, endOf(points))];
    const gap = Math.min(forward, backward);
    if (gap > reach || (best && gap >= best.gap)) return;
    best = { at, points: forward <= backward ? points : turnRound(points), gap };
  });
  return best;
}

/** The second line follows on the first, whose last point gives way to its beginning. */
function join(first: readonly PathPoint[], second: readonly PathPoint[]): readonly PathPoint[] {
  return [...first.slice(0, -1), ...second];
}

/** The same line from its other end. */
function turnRound(points: readonly PathPoint[]): readonly PathPoint[] {
  return points
    .map(({ x, y }, at): PathPoint => {
      const bulge = points[at - 1]?.bulge ?? 0;
      return bulge === 0 ? { x, y } : { x, y, bulge: -bulge };
    })
    .toReversed();
}

function withoutRepeats(points: readonly PathPoint[]): readonly PathPoint[] {
  return points.filter((p, at) => gapOf(p, points[(at + 1) % points.length]) > 0);
}

function endOf(points: readonly PathPoint[]): PathPoint | undefined {
  return points.at(-1);
}

function gapOf(a: Point | undefined, b: Point | undefined): number {
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : Infinity;
}
