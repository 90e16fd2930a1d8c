import { flattenOutline, placePoint, type Point, type Shape, type ShapeEdge } from '#core/geometry';
import type { BuiltPiece, Part } from '#core/joinery';

/** What a piece leaves free along an edge of the shape it is fitted to, mm. */
export interface EdgeGap {
  readonly edge: ShapeEdge;
  /** The narrowest place. */
  readonly gap: number;
  /** How much wider it is elsewhere. */
  readonly deviation: number;
  /** How far the parts that lie over the edge reach beyond it. */
  readonly cover?: number;
}

/** A part that reaches further than this over an edge covers it, mm. */
const over = 1;
/** The ends of an edge, as shares of its length, where the gap is taken. */
const ends = { low: 0.35, high: 0.65 } as const;
/** Narrower than this a piece stands on the edge. */
const standing = 0.5;

/** The gaps between a piece and the edges of its opening, by the places of its parts; edges that it stands on are left out. */
export function edgeGaps(piece: BuiltPiece, shape: Shape): readonly EdgeGap[] {
  const { opening } = piece;
  if (!opening) return [];
  const parts = piece.parts.map(pointsOfPart);
  return shape.edges.flatMap((edge): readonly EdgeGap[] => {
    const [from, to] = [opening[edge.from], opening[edge.to]];
    if (!from || !to) return [];
    const seen = parts.map((points) => points.map((p) => fromEdge(p, from, to)));
    const covers = seen.map(leastOf).filter((least) => least < -over);
    const inside = seen.filter((points) => leastOf(points) >= -over);
    const nearest = inside.toSorted((a, b) => leastOf(a) - leastOf(b))[0];
    if (!nearest) return [];
    const gaps = gapsAlong(nearest, edge.bow ?? 0);
    const gap = Math.min(...gaps);
    if (gap < standing) return [];
    const cover = covers.length > 0 ? { cover: -Math.max(...covers) } : {};
    return [{ edge, gap, deviation: Math.max(...gaps) - gap, ...cover }];
  });
}

/** Corners of a part in the plane of the opening, face and back. */
function pointsOfPart(part: Part): readonly Point[] {
  const outline = flattenOutline(part.outline, 0.5);
  return part.placements.flatMap((placement) =>
    [0, part.finished.thickness].flatMap((z) =>
      outline.map(({ x, y }) => placePoint(placement, { x, y, z })),
    ),
  );
}

/** A point as seen from an edge: its share of the way along, and how far it lies inside. */
interface FromEdge {
  readonly share: number;
  readonly inside: number;
}

function fromEdge(p: Point, from: Point, to: Point): FromEdge {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy) || 1;
  const [x, y] = [p.x - from.x, p.y - from.y];
  return { share: (x * dx + y * dy) / length ** 2, inside: (dx * y - dy * x) / length };
}

function leastOf(points: readonly FromEdge[]): number {
  return Math.min(...points.map(({ inside }) => inside));
}

/** The gap at both ends of an edge, and in the middle with its bow. */
function gapsAlong(points: readonly FromEdge[], bow: number): readonly number[] {
  const least = leastOf(points);
  const at = (near: readonly FromEdge[]): number => (near.length > 0 ? leastOf(near) : least);
  const start = at(points.filter(({ share }) => share < ends.low));
  const end = at(points.filter(({ share }) => share > ends.high));
  return [start, end, (start + end) / 2 + bow];
}
