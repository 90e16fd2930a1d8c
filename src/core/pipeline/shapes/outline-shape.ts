import { findCrossing, type Point, type Shape, type ShapeEdge } from '#core/geometry';
import type { Problem } from '#core/problems';

import { shapeFinding } from './shape-findings.ts';

/** The way round an outline as straight lines, with the edge that each line belongs to. */
export function wayRound(shape: Shape): readonly { readonly point: Point; readonly edge: string }[] {
  return shape.edges.flatMap((edge) => {
    const way = edge.curve ?? [shape.points[edge.from], shape.points[edge.to]].filter((p) => p !== undefined);
    return way.slice(0, -1).map((point) => ({ point, edge: edge.name }));
  });
}

/** Twice the area within, mm², negative where the corners go round clockwise. */
export function signedArea(path: readonly Point[]): number {
  return path.reduce((sum, p, at) => {
    const q = path[(at + 1) % path.length] ?? p;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
}

/** A finding where an outline crosses itself: its corners are in the wrong order, or a reading is wrong. */
export function findSelfCrossing(name: string, shape: Shape): readonly Problem[] {
  const way = wayRound(shape);
  const crossing = findCrossing(way.map(({ point }) => point));
  if (!crossing) return [];
  const [first, second] = crossing.map((at) => way[at]?.edge ?? '');
  const what =
    first === second ? `the edge ${first} crosses itself` : `the edges ${first} and ${second} cross`;
  return [
    shapeFinding('stop', 'outline-crosses', undefined, {
      message: `${name} crosses itself: ${what}.`,
      remedy:
        'Look whether the corners are listed in the order round it, and measure again what belongs to these edges.',
    }),
  ];
}

/** Corners that point into the outline, by name. */
export function hollowCorners(shape: Shape): readonly string[] {
  const edges = shape.edges;
  return edges.flatMap((edge, at) => {
    const before = edges[(at + edges.length - 1) % edges.length] ?? edge;
    const here = shape.points[edge.from];
    const [back, on] = [directionAt(shape, before, 'to'), directionAt(shape, edge, 'from')];
    if (!here || !back || !on) return [];
    return back.x * on.y - back.y * on.x < 0 ? [edge.from] : [];
  });
}

/** Which way an edge runs at one of its ends. */
function directionAt(shape: Shape, edge: ShapeEdge, end: 'from' | 'to'): Point | null {
  const ends = [shape.points[edge.from], shape.points[edge.to]].filter((p) => p !== undefined);
  const way = edge.curve ?? ends;
  const [a, b] = end === 'from' ? [way[0], way[1]] : [way[way.length - 2], way[way.length - 1]];
  return a && b ? { x: b.x - a.x, y: b.y - a.y } : null;
}
