import { flattenOutline, outlineArea, type Outline } from '#core/geometry';

/** What is coated: so many copies of a board of this outline with these holes, mm. */
export interface CoatedBoard {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly thickness: number;
  readonly count: number;
}

/** Areas to be coated, m². */
export interface CoatedArea {
  /** Face sides and the edges all round, holes included. */
  readonly shown: number;
  /** Backs. */
  readonly hidden: number;
}

/** Chords of curves stray by less than this, mm. */
const flatness = 0.1;
const perSquareMetre = 1e6;

/** The areas of boards that get a finish; joints are not taken off, as they are coated up to their shoulders (common practice). */
export function coatedArea(boards: readonly CoatedBoard[]): CoatedArea {
  const faces = boards.reduce((sum, board) => sum + board.count * faceOf(board), 0);
  const edges = boards.reduce((sum, board) => sum + board.count * edgesOf(board), 0);
  return { shown: (faces + edges) / perSquareMetre, hidden: faces / perSquareMetre };
}

function faceOf({ outline, holes }: CoatedBoard): number {
  return Math.max(
    0,
    Math.abs(outlineArea(outline)) - holes.reduce((sum, hole) => sum + Math.abs(outlineArea(hole)), 0),
  );
}

function edgesOf({ outline, holes, thickness }: CoatedBoard): number {
  return thickness * [outline, ...holes].reduce((sum, ring) => sum + lengthRound(ring), 0);
}

function lengthRound(ring: Outline): number {
  const points = flattenOutline(ring, flatness);
  return points.reduce((sum, p, i) => {
    const next = points[(i + 1) % points.length] ?? p;
    return sum + Math.hypot(next.x - p.x, next.y - p.y);
  }, 0);
}
