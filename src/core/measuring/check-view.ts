import type { Point } from '#core/geometry';
import type { Adjustment, Reading, Survey } from './types.ts';

/** Points as listed; `hand` is -1 where they are listed mirrored. */
export interface View {
  readonly points: ReadonlyMap<string, Point>;
  /** Degrees; null where upright is not known. */
  readonly tilt: number | null;
  readonly hand: number;
  /** By the names of both ends, in either order. */
  readonly bows: ReadonlyMap<string, number>;
  readonly boards: ReadonlyMap<string, Board>;
}

/** A board as it lies: the start of its lower edge and the direction of that edge, radians. */
export interface Board extends Point {
  readonly turn: number;
}

/** Where each board lies by the answer, from the two of its ticks that lie furthest apart. */
export function adjustedBoards(survey: Survey, adjustment: Adjustment): ReadonlyMap<string, Board> {
  const boards = new Map<string, Board>();
  for (const { board } of survey.readings.flatMap((r) => (r.kind === 'tick' ? [r] : []))) {
    const ticks = survey.readings.flatMap((reading) => {
      const answer = adjustment.readings.find(({ id }) => id === reading.id);
      const point = adjustment.points.find(({ id }) => reading.kind === 'tick' && id === reading.point);
      if (reading.kind !== 'tick' || reading.board !== board || !answer?.station || !point) return [];
      return [{ u: answer.station.adjusted, v: answer.adjusted, x: point.x, y: point.y }];
    });
    const [a] = ticks;
    const far = (t: { readonly u: number; readonly v: number }) =>
      Math.hypot(t.u - (a?.u ?? 0), t.v - (a?.v ?? 0));
    const b = [...ticks].sort((p, q) => far(q) - far(p))[0];
    if (!a || !b) continue;
    const turn = Math.atan2(b.y - a.y, b.x - a.x) - Math.atan2(b.v - a.v, b.u - a.u);
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    boards.set(board, { x: a.x - a.u * cos + a.v * sin, y: a.y - a.u * sin - a.v * cos, turn });
  }
  return boards;
}

/** The bows, of which only the readings tell. */
export function adjustedBows(survey: Survey, adjustment: Adjustment): ReadonlyMap<string, number> {
  return new Map(
    survey.readings.flatMap((reading) => {
      const answer = adjustment.readings.find(({ id }) => id === reading.id);
      return reading.kind === 'bow' && answer
        ? [[nameEdge([reading.from, reading.to]), answer.adjusted]]
        : [];
    }),
  );
}

export function nameEdge(ends: readonly string[]): string {
  return JSON.stringify([...ends].sort());
}

/** What a reading, or its station, would be on the points; null where one of them is left open. */
export function measureOn(view: View, reading: Reading, part?: 'station'): number | null {
  if (reading.kind === 'width') {
    const left = pointOn(view, reading.left, reading.at);
    const right = pointOn(view, reading.right, reading.at);
    const bow = [reading.left, reading.right].reduce(
      (sum, ends) => sum + (view.bows.get(nameEdge(ends)) ?? 0),
      0,
    );
    const swell = 4 * reading.at * (1 - reading.at) * bow;
    return left && right ? Math.hypot(right.x - left.x, right.y - left.y) + swell : null;
  }
  if (reading.kind === 'bow') return view.bows.get(nameEdge([reading.from, reading.to])) ?? null;
  if (reading.kind === 'tick') return tickOn(view, reading, part);
  if (reading.kind === 'twist' || reading.kind === 'thickness') return null;
  const [from, to] = [view.points.get(reading.from), view.points.get(reading.to)];
  if (reading.kind === 'ordinate') {
    const three = [from, to, view.points.get(reading.point)] as const;
    return part === 'station' ? stationOn(three) : offsetOn(view, three);
  }
  if (reading.kind === 'offset') return offsetOn(view, [from, to, view.points.get(reading.point)]);
  if (reading.kind === 'angle') return angleOn(view, reading, [from, to, view.points.get(reading.at)]);
  if (!from || !to) return null;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (reading.kind === 'distance') return Math.hypot(dx, dy);
  if (view.tilt === null) return null;
  const angle = (view.tilt * Math.PI) / 180;
  const upright = dy * Math.cos(angle) - dx * Math.sin(angle);
  const across = dx * Math.cos(angle) + dy * Math.sin(angle);
  return reading.kind === 'level' ? upright : view.hand * across;
}

type Three = readonly [from: Point | undefined, to: Point | undefined, third: Point | undefined];

/** Twice the area of the triangle over its base, positive to the left. */
function offsetOn({ hand }: View, [from, to, point]: Three): number | null {
  if (!from || !to || !point) return null;
  const area = from.x * (to.y - point.y) + to.x * (point.y - from.y) + point.x * (from.y - to.y);
  return (hand * area) / Math.hypot(to.x - from.x, to.y - from.y);
}

/** From the first point to the foot of the square, by the cosine rule. */
function stationOn([from, to, point]: Three): number | null {
  if (!from || !to || !point) return null;
  const square = (a: Point, b: Point) => (a.x - b.x) ** 2 + (a.y - b.y) ** 2;
  const base = square(from, to);
  return (square(from, point) + base - square(to, point)) / (2 * Math.sqrt(base));
}

function tickOn(view: View, reading: Extract<Reading, { kind: 'tick' }>, part?: 'station'): number | null {
  const [point, board] = [view.points.get(reading.point), view.boards.get(reading.board)];
  if (!point || !board) return null;
  const reach = Math.hypot(point.x - board.x, point.y - board.y);
  const direction = Math.atan2(point.y - board.y, point.x - board.x) - board.turn;
  return reach * (part === 'station' ? Math.cos(direction) : Math.sin(direction));
}

/** Degrees, in the turn nearest to the reading. */
function angleOn({ hand }: View, reading: Reading, [from, to, at]: Three): number | null {
  if (!from || !to || !at) return null;
  const direction = (end: Point) => (Math.atan2(end.y - at.y, end.x - at.x) * 180) / Math.PI;
  const turn = hand * (direction(to) - direction(from));
  return turn + 360 * Math.round((reading.value - turn) / 360);
}

function pointOn(view: View, [from, to]: readonly [string, string], at: number): Point | null {
  const [a, b] = [view.points.get(from), view.points.get(to)];
  return a && b ? { x: a.x + at * (b.x - a.x), y: a.y + at * (b.y - a.y) } : null;
}
