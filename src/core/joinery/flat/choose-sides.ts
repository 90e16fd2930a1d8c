import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { readSides, type Side } from './shape-sides.ts';
import type { BuildContext } from '../types.ts';

/** A size or corners entered for something flat; `corners` holds x and y in turn, counter-clockwise. mm. */
export interface EnteredOutline {
  readonly width?: number;
  readonly height?: number;
  readonly corners?: readonly number[];
}

/** What is to be filled, its lower left corner at the origin, before any gap. */
export interface ChosenSides {
  readonly sides: readonly Side[];
  /** Where it comes from: `shape Hatch`, or `you`. */
  readonly source: string;
  /** A plain rectangle of this size was entered. */
  readonly rectangle: boolean;
  /** The point of the shape that became the origin. */
  readonly corner: Point;
}

/** The outline of a flat piece: of its measured shape, of the corners entered, or a rectangle; a `stop` when there is none. */
export function chooseSides(
  entered: EnteredOutline,
  context: BuildContext,
  name: string,
): { readonly chosen: ChosenSides | null; readonly findings: readonly Problem[] } {
  const { shape, shapeName = 'The shape' } = context;
  if (shape) {
    const read = readSides(shape, shapeName);
    if (!read.ok) return { chosen: null, findings: read.problems };
    return { chosen: atOrigin(read.value, `shape ${shapeName}`, false), findings: [] };
  }
  const { width, height, corners } = entered;
  if (corners && corners.length > 0) return cornersEntered(corners, name);
  if (width !== undefined && height !== undefined && width > 0 && height > 0) {
    const points = [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ];
    return { chosen: atOrigin(straight(points), 'you', true), findings: [] };
  }
  return { chosen: null, findings: [noOutline(name)] };
}

function cornersEntered(corners: readonly number[], name: string): ReturnType<typeof chooseSides> {
  const points = Array.from({ length: Math.floor(corners.length / 2) }, (_, i) => ({
    x: corners[2 * i] ?? 0,
    y: corners[2 * i + 1] ?? 0,
  }));
  const area = points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
  const odd = corners.length % 2 === 1;
  if (odd || points.length < 3 || !(Math.abs(area) > 1) || crossesItself(points)) {
    const message = odd
      ? `${corners.length} numbers were entered for the corners of ${name}: they go in pairs, x and y.`
      : `The ${points.length} corners entered for ${name} do not go round anything.`;
    return { chosen: null, findings: [unusable(message)] };
  }
  const round = area > 0 ? points : [...points].reverse();
  return { chosen: atOrigin(straight(round), 'you', false), findings: [] };
}

const straight = (points: readonly Point[]): readonly Side[] =>
  points.map((from, i) => ({
    name: `side ${i + 1}`,
    from,
    to: points[(i + 1) % points.length] ?? from,
    between: [],
    u95: 0,
    deviation: 0,
  }));

/** Points nearer to a line than this make no turn: twice the area of the triangle, mm². */
const noTurn = 1e-6;

/** True when two sides that are no neighbours cross or touch; corners along one straight line are none. */
function crossesItself(points: readonly Point[]): boolean {
  const count = points.length;
  return points.some((a, i) =>
    points.some((c, j) => {
      if (j <= i + 1 || (i === 0 && j === count - 1)) return false;
      const [b, d] = [points[(i + 1) % count] ?? a, points[(j + 1) % count] ?? c];
      const crossed = turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
      return crossed || liesOn(c, a, b) || liesOn(d, a, b) || liesOn(a, c, d) || liesOn(b, c, d);
    }),
  );
}

/** Twice the area of a triangle, positive when it goes counter-clockwise; 0 when it is next to none. */
function turn(a: Point, b: Point, c: Point): number {
  const area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return Math.abs(area) < noTurn ? 0 : area;
}

function liesOn(point: Point, a: Point, b: Point): boolean {
  const within = (p: number, one: number, other: number) =>
    p >= Math.min(one, other) - noTurn && p <= Math.max(one, other) + noTurn;
  return turn(a, b, point) === 0 && within(point.x, a.x, b.x) && within(point.y, a.y, b.y);
}

function atOrigin(sides: readonly Side[], source: string, rectangle: boolean): ChosenSides {
  const points = sides.flatMap(({ from, between }) => [from, ...between]);
  const corner = {
    x: Math.min(...points.map(({ x }) => x)),
    y: Math.min(...points.map(({ y }) => y)),
  };
  const move = ({ x, y }: Point): Point => ({ x: x - corner.x, y: y - corner.y });
  return {
    sides: sides.map((side) => ({
      ...side,
      from: move(side.from),
      to: move(side.to),
      between: side.between.map(move),
    })),
    source,
    rectangle,
    corner,
  };
}

function noOutline(name: string): Problem {
  return {
    severity: 'stop',
    code: 'outline-missing',
    message: `${name} has no outline yet.`,
    remedy: 'Fit it to a measured shape, or enter width and height, or its corners.',
    source: 'joinery A10',
  };
}

function unusable(message: string): Problem {
  return {
    severity: 'stop',
    code: 'outline-does-not-close',
    message,
    remedy: 'Enter x and y of each corner in order round the outline, three corners at least.',
    source: 'joinery A10',
  };
}
