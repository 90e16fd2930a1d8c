import { flattenOutline, sidesOf } from '#core/geometry';
import type { Outline, Point } from '#core/geometry';
import type { Part, PartEdge } from '#core/joinery';
import { seenPoint } from './part-view.ts';

type EdgeName = PartEdge['edge'];

/** Which way an edge faces, as a unit step in the part's own frame. */
const outwards: Readonly<Record<EdgeName, Point>> = {
  'face-edge': { x: 0, y: -1 },
  'far-edge': { x: 0, y: 1 },
  start: { x: -1, y: 0 },
  end: { x: 1, y: 0 },
};

/** True when a side of a counter-clockwise outline faces more towards this edge than towards any other. */
function faces(from: Point, to: Point, edge: EdgeName): boolean {
  const out = outwards[edge];
  const normal = { x: to.y - from.y, y: from.x - to.x };
  const along = normal.x * out.x + normal.y * out.y;
  const across = Math.abs(normal.x * out.y) + Math.abs(normal.y * out.x);
  return along > 0 && along >= across;
}

/** The outline with an edge moved outwards by what is left on, mm; arcs stay arcs. */
export function growEdge(outline: Outline, edge: EdgeName, amount: number): Outline {
  const out = outwards[edge];
  const moved = new Set<Point>();
  for (const { from, to } of sidesOf(outline)) {
    if (!faces(from, to, edge)) continue;
    moved.add(from);
    moved.add(to);
  }
  return outline.map((p) => (moved.has(p) ? { ...p, x: p.x + out.x * amount, y: p.y + out.y * amount } : p));
}

function edgeLines(outline: Outline, edge: EdgeName, amount: number): readonly (readonly Point[])[] {
  const out = outwards[edge];
  const points = flattenOutline(outline, 0.5);
  const move = (p: Point) => ({ x: p.x + out.x * amount, y: p.y + out.y * amount });
  const lines: Point[][] = [];
  sidesOf(points).forEach(({ from, to }) => {
    if (!faces(from, to, edge)) return;
    const last = lines.at(-1);
    const start = move(from);
    const end = last?.at(-1);
    if (last && end && Math.hypot(end.x - start.x, end.y - start.y) < 1e-6) last.push(move(to));
    else lines.push([start, move(to)]);
  });
  return lines;
}

/** The line of an edge moved outwards, as seen from the face side (`asSeen`), in pieces where it is interrupted; mm. */
export function seenEdgeLines(part: Part, edge: EdgeName, amount: number): readonly (readonly Point[])[] {
  return edgeLines(part.outline, edge, amount).map((line) => line.map((p) => seenPoint(p, part)));
}

/** What the saw or router leaves on at an edge, to be scribed or flushed later, mm; 0 when nothing is. */
export function leftOnAt(part: Part, edge: EdgeName): number {
  return part.edges.find((candidate) => candidate.edge === edge && isLeftOn(candidate))?.amount ?? 0;
}

function isLeftOn({ treatment }: PartEdge): boolean {
  return treatment === 'scribed' || treatment === 'flushed';
}

/** The outline as cut: the finished one with all that is scribed or flushed later left on. */
export function cutOutline(part: Part): Outline {
  return part.edges.reduce<Outline>(
    (outline, each) => (isLeftOn(each) && each.amount ? growEdge(outline, each.edge, each.amount) : outline),
    part.outline,
  );
}
