import type { Point, Shape } from '#core/geometry';
import type { Problem } from '#core/problems';
import type { BuildContext } from '../types.ts';
import { wayTo } from '../flat/polygon.ts';
import type { TrimRunParameters } from './types.ts';

/** A wall of the run in plan, from its left end; a return is a wall of no length. */
export interface RunWall {
  readonly name: string;
  readonly length: number;
  readonly from: Point;
  readonly along: Point;
  readonly bow: number;
  readonly isReturn: boolean;
}

/** The walls and the angles between them; of a closed room also from the last to the first. */
export interface Walls {
  readonly walls: readonly RunWall[];
  readonly angles: readonly number[];
  readonly closed: boolean;
  readonly source: string;
}

const turn = Math.PI / 180;

/** The walls of the shape, or those entered; a `stop` when there are none. */
export function chooseWalls(
  parameters: TrimRunParameters,
  context: BuildContext,
  name: string,
): { readonly walls: Walls; readonly problems: readonly Problem[] } {
  const { shape, shapeName = 'the shape' } = context;
  const plain = shape ? wallsOf(shape, shapeName) : wallsEntered(parameters);
  if (plain.walls.length === 0) return { walls: plain, problems: [noWalls(name)] };
  return { walls: plain.closed ? plain : withReturns(plain, parameters), problems: [] };
}

function wallsOf(shape: Shape, name: string): Walls {
  const walls = shape.edges.flatMap((edge): readonly RunWall[] => {
    const [from, to] = [shape.points[edge.from], shape.points[edge.to]];
    if (!from || !to) return [];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    return [{ name: edge.name, length, from, along: wayTo(from, to), bow: edge.bow ?? 0, isReturn: false }];
  });
  const closed = walls.length > 2 && shape.edges.at(-1)?.to === shape.edges[0]?.from;
  const between = walls.slice(0, closed ? walls.length : -1);
  const angles = between.map((wall, i) =>
    roomAngle(wall.along, walls[(i + 1) % walls.length]?.along ?? wall.along),
  );
  return { walls, angles, closed, source: `shape ${name}` };
}

/** The angle on the right of the way, degrees: the room lies there. */
function roomAngle(one: Point, next: Point): number {
  return 180 + Math.atan2(one.x * next.y - one.y * next.x, one.x * next.x + one.y * next.y) / turn;
}

function wallsEntered({ wallLengths = [], cornerAngles = [] }: TrimRunParameters): Walls {
  const angles = wallLengths.slice(1).map((_, i) => cornerAngles[i] ?? 90);
  let at: Point = { x: 0, y: 0 };
  let way = 0;
  const walls = wallLengths.map((length, i) => {
    if (i > 0) way += ((angles[i - 1] ?? 90) - 180) * turn;
    const along = { x: Math.cos(way), y: Math.sin(way) };
    const from = at;
    at = { x: from.x + along.x * length, y: from.y + along.y * length };
    return { name: `wall ${i + 1}`, length, from, along, bow: 0, isReturn: false };
  });
  return { walls, angles, closed: false, source: 'you' };
}

/** A returned end is an outside corner of 270° to a wall of no length. */
function withReturns(run: Walls, { leftEnd, rightEnd }: TrimRunParameters): Walls {
  const [first, last] = [run.walls[0], run.walls.at(-1)];
  if (!first || !last) return run;
  const end = { x: last.from.x + last.along.x * last.length, y: last.from.y + last.along.y * last.length };
  const bare = { name: 'return', length: 0, bow: 0, isReturn: true };
  const left = { ...bare, from: first.from, along: { x: first.along.y, y: -first.along.x } };
  const right = { ...bare, from: end, along: { x: -last.along.y, y: last.along.x } };
  const [onLeft, onRight] = [leftEnd === 'return', rightEnd === 'return'];
  return {
    ...run,
    walls: [...(onLeft ? [left] : []), ...run.walls, ...(onRight ? [right] : [])],
    angles: [...(onLeft ? [270] : []), ...run.angles, ...(onRight ? [270] : [])],
  };
}

function noWalls(name: string): Problem {
  return {
    severity: 'stop',
    code: 'walls-missing',
    message: `${name} has no walls to run along yet.`,
    remedy: 'Fit it to a measured run of walls, or enter the lengths of the walls from left to right.',
    source: 'joinery A10, B11',
  };
}
