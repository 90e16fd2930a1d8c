import type { Point } from '#core/geometry';
import type { BoardPlace, Network, Observation } from './network.ts';

/** A point by its station and its height over a base line. */
interface Ordinate {
  readonly from: string;
  readonly to: string;
  readonly place: Point;
}

/** What puts points straight where they belong: ordinates from base lines, and ticks on boards. */
export interface Givens {
  readonly ordinates: ReadonlyMap<string, readonly Ordinate[]>;
  /** By board, the ticked points in the board's own axes. */
  readonly boards: ReadonlyMap<string, ReadonlyMap<string, Point>>;
}

/** The ordinates and boards of a network. */
export function givensOf(network: Network): Givens {
  const ordinates = new Map<string, Ordinate[]>();
  const boards = new Map<string, Map<string, Point>>();
  for (const along of network.observations) {
    const up = along.part === undefined ? undefined : partnerOf(along, network.observations);
    const point = along.terms[0]?.[0];
    if (!up || point === undefined) continue;
    const place = { x: along.value, y: up.value };
    if (along.board !== undefined) {
      const board = boards.get(along.board) ?? new Map<string, Point>();
      boards.set(along.board, board.set(point, place));
      continue;
    }
    const [to, from] = [along.base?.[0]?.[0], along.base?.[1]?.[0]];
    if (to === undefined || from === undefined) continue;
    ordinates.set(point, [...(ordinates.get(point) ?? []), { from, to, place }]);
  }
  return { ordinates, boards };
}

function partnerOf({ id }: Observation, observations: readonly Observation[]): Observation | undefined {
  return observations.find((seen) => seen.id === id && seen.part === undefined);
}

/** Where an ordinate or a board puts a point; null when neither does. */
export function placeByGivens(
  { ordinates, boards }: Givens,
  name: string,
  placed: ReadonlyMap<string, Point>,
): Point | null {
  for (const { from, to, place } of ordinates.get(name) ?? []) {
    const [a, b] = [placed.get(from), placed.get(to)];
    if (a && b) return setOut({ ...a, turn: Math.atan2(b.y - a.y, b.x - a.x) }, place);
  }
  for (const board of boards.values()) {
    const place = board.get(name);
    const pairs = place ? pairsOn(board, placed) : [];
    if (place && pairs.length >= 2) return setOut(seatBoard(pairs), place);
  }
  return null;
}

/** How far two points lie apart on a board that has both; undefined when none has. */
export function apartOnBoard({ boards }: Givens, a: string, b: string): number | undefined {
  for (const board of boards.values()) {
    const [p, q] = [board.get(a), board.get(b)];
    if (p && q) return Math.hypot(q.x - p.x, q.y - p.y);
  }
  return undefined;
}

/** The place of every board that fits its points best. */
export function seatBoards(
  network: Network,
  points: Readonly<Record<string, Point>>,
): Readonly<Record<string, BoardPlace>> {
  const placed = new Map(Object.entries(points));
  const { boards } = givensOf(network);
  return Object.fromEntries([...boards].map(([name, board]) => [name, seatBoard(pairsOn(board, placed))]));
}

type Pair = readonly [onBoard: Point, aboard: Point];

function pairsOn(board: ReadonlyMap<string, Point>, placed: ReadonlyMap<string, Point>): readonly Pair[] {
  return [...board].flatMap(([name, place]): Pair[] => {
    const aboard = placed.get(name);
    return aboard ? [[place, aboard]] : [];
  });
}

function setOut({ x, y, turn }: BoardPlace, place: Point): Point {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: x + place.x * cos - place.y * sin, y: y + place.x * sin + place.y * cos };
}

/** The rigid motion that brings the points on the board nearest to those aboard: least squares in closed form. */
function seatBoard(pairs: readonly Pair[]): BoardPlace {
  const mean = (of: (pair: Pair) => number) =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / Math.max(1, pairs.length);
  const [ux, uy] = [mean(([u]) => u.x), mean(([u]) => u.y)];
  const [px, py] = [mean(([, p]) => p.x), mean(([, p]) => p.y)];
  const cross = mean(([u, p]) => (u.x - ux) * (p.y - py) - (u.y - uy) * (p.x - px));
  const dot = mean(([u, p]) => (u.x - ux) * (p.x - px) + (u.y - uy) * (p.y - py));
  const turn = Math.atan2(cross, dot);
  const start = setOut({ x: 0, y: 0, turn }, { x: -ux, y: -uy });
  return { x: px + start.x, y: py + start.y, turn };
}
