import { flattenOutline, type PathPoint, type Point } from '#core/geometry';
import type { DrawnPath } from '#core/pipeline';
import type {
  IArcEntity,
  IBlock,
  ICircleEntity,
  IEllipseEntity,
  IEntity,
  IInsertEntity,
  ILineEntity,
  ILwpolylineEntity,
  IPolylineEntity,
  ISplineEntity,
} from 'dxf-parser';

import { flattenSpline } from './flatten-spline.ts';

/** Where a block stands, and how deep within others. */
export interface Placing {
  readonly scaleX: number;
  readonly scaleY: number;
  /** Radians. */
  readonly turn: number;
  readonly at: Point;
  readonly depth: number;
}

export interface Drawing {
  readonly blocks: Readonly<Record<string, IBlock>>;
  /** How far chords may stray, in the unit of the file. */
  readonly tolerance: number;
  /** What was left out, counted by kind. */
  readonly skipped: Map<string, number>;
}

/** No lines, and nothing that anyone would miss in an outline. */
const quiet = [
  'TEXT',
  'MTEXT',
  'DIMENSION',
  'ATTDEF',
  'ATTRIB',
  'POINT',
  'HATCH',
  'VIEWPORT',
  'SEQEND',
  'LEADER',
];
/** Blocks within blocks, at most. */
const deepest = 8;

/** The lines of one entity; those of a block where it was put. */
export function readDrawnEntity(entity: IEntity, placing: Placing, drawing: Drawing): readonly DrawnPath[] {
  if (entity.type === 'INSERT') return readInsert(entity as IInsertEntity, placing, drawing);
  const line = lineOf(entity, drawing);
  if (!line) {
    if (!quiet.includes(entity.type))
      drawing.skipped.set(entity.type, (drawing.skipped.get(entity.type) ?? 0) + 1);
    return [];
  }
  const isTurnedOver = extrusionOf(entity) < 0;
  const points = isTurnedOver ? line.points.map(turnOver) : line.points;
  return [{ layer: entity.layer ?? '0', closed: line.closed, points: points.map((p) => place(p, placing)) }];
}

type Line = Pick<DrawnPath, 'points' | 'closed'>;

function lineOf(entity: IEntity, { tolerance }: Drawing): Line | null {
  switch (entity.type) {
    case 'LINE':
      return { points: ((entity as ILineEntity).vertices ?? []).map(flat), closed: false };
    case 'LWPOLYLINE':
    case 'POLYLINE': {
      const { vertices = [], shape } = entity as ILwpolylineEntity | IPolylineEntity;
      return { points: vertices.map(flat), closed: shape };
    }
    case 'CIRCLE': {
      const { center, radius } = entity as ICircleEntity;
      const points = [1, -1].map((side) => ({ x: center.x - side * radius, y: center.y, bulge: 1 }));
      return { points, closed: true };
    }
    case 'ARC':
      return arcLine(entity as IArcEntity);
    case 'ELLIPSE':
      return ellipseLine(entity as IEllipseEntity, tolerance);
    case 'SPLINE': {
      const spline = entity as ISplineEntity;
      return { points: flattenSpline(spline, tolerance), closed: spline.closed };
    }
    default:
      return null;
  }
}

function flat({
  x,
  y,
  bulge,
}: {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}): PathPoint {
  return bulge ? { x, y, bulge } : { x, y };
}

/** Counter-clockwise from its start; angles in radians. */
function arcLine({ center, radius, startAngle, endAngle }: IArcEntity): Line {
  const full = 2 * Math.PI;
  const sweep = (((endAngle - startAngle) % full) + full) % full || full;
  const on = (angle: number): Point => ({
    x: center.x + radius * Math.cos(angle),
    y: center.y + radius * Math.sin(angle),
  });
  const [middle, end] = [startAngle + sweep / 2, startAngle + sweep];
  const bulge = Math.tan(sweep / 8);
  return { points: [{ ...on(startAngle), bulge }, { ...on(middle), bulge }, on(end)], closed: false };
}

function ellipseLine(
  { center, majorAxisEndPoint: major, axisRatio, startAngle, endAngle }: IEllipseEntity,
  tolerance: number,
): Line {
  const full = 2 * Math.PI;
  const sweep = (((endAngle - startAngle) % full) + full) % full || full;
  const radius = Math.hypot(major.x, major.y);
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / Math.max(radius, tolerance)));
  const count = Math.min(2000, Math.max(8, Math.ceil(sweep / step)));
  const points = Array.from({ length: count + 1 }, (_, k) => {
    const angle = startAngle + (sweep * k) / count;
    const [c, s] = [Math.cos(angle), Math.sin(angle) * axisRatio];
    return { x: center.x + major.x * c - major.y * s, y: center.y + major.y * c + major.x * s };
  });
  const closed = sweep > full - 1e-9;
  return { points: closed ? points.slice(0, -1) : points, closed };
}

function readInsert(insert: IInsertEntity, placing: Placing, drawing: Drawing): readonly DrawnPath[] {
  const block = drawing.blocks[insert.name];
  if (!block || placing.depth >= deepest) return [];
  const inner: Placing = {
    scaleX: insert.xScale ?? 1,
    scaleY: insert.yScale ?? 1,
    turn: ((insert.rotation ?? 0) * Math.PI) / 180,
    at: insert.position ?? { x: 0, y: 0 },
    depth: placing.depth + 1,
  };
  const base = block.position ?? { x: 0, y: 0 };
  return (block.entities ?? [])
    .flatMap((entity) => readDrawnEntity(entity, { ...unplaced, depth: inner.depth }, drawing))
    .map((path) => ({
      ...path,
      points: chordsWhereUneven(path, inner, drawing.tolerance).map((p) =>
        place(place({ ...p, x: p.x - base.x, y: p.y - base.y }, inner), placing),
      ),
    }));
}

/** An arc stretched one way is an arc no more. */
function chordsWhereUneven(
  { points, closed }: DrawnPath,
  { scaleX, scaleY }: Placing,
  tolerance: number,
): readonly PathPoint[] {
  if (Math.abs(scaleX) === Math.abs(scaleY) || !points.some(({ bulge }) => bulge)) return points;
  const last = points.at(-1);
  // an open line does not lead back, so its last point bends nothing
  const path = closed || !last ? points : [...points.slice(0, -1), { x: last.x, y: last.y }];
  return flattenOutline(path, tolerance);
}

const unplaced = { scaleX: 1, scaleY: 1, turn: 0, at: { x: 0, y: 0 } } as const;

/** A point of a block where the block stands; in a mirrored one arcs turn the other way. */
function place({ x, y, bulge }: PathPoint, { scaleX, scaleY, turn, at }: Placing): PathPoint {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [dx, dy] = [x * scaleX, y * scaleY];
  const placed = { x: at.x + dx * c - dy * s, y: at.y + dx * s + dy * c };
  if (!bulge) return placed;
  return { ...placed, bulge: scaleX * scaleY < 0 ? -bulge : bulge };
}

/** Drawn on the back of the plane: seen from the front left is right. */
function turnOver({ x, y, bulge }: PathPoint): PathPoint {
  return bulge ? { x: -x, y, bulge: -bulge } : { x: -x, y };
}

/** z of the direction an entity was drawn from; the reader says it in two ways. */
function extrusionOf(entity: IEntity): number {
  const known = entity as {
    readonly extrusionDirectionZ?: number;
    readonly extrusionDirection?: { readonly z?: number };
  };
  return known.extrusionDirectionZ ?? known.extrusionDirection?.z ?? 1;
}
