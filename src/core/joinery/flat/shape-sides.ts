import { flattenOutline, type Point, type Shape, type ShapeEdge } from '#core/geometry';
import { fail, succeed, type Problem, type Result } from '#core/problems';
import { cornerNames } from '../survey-fit.ts';

/** A side of what a flat piece fills, counter-clockwise: its ends, and the points between them where it is curved. */
export interface Side {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  readonly between: readonly Point[];
  /** Twice the standard deviation of its place, mm. */
  readonly u95: number;
  /** Greatest offset from straight that is not followed, mm. */
  readonly deviation: number;
  /** How far what is not followed comes in over the straight line, mm; left out: not at all. */
  readonly inwards?: number;
}

const worthFollowing = 0.5; // mm of bow; below it a saw goes straight
const usualSigma = 0.5; // mm, a tape reading (joinery A1)

/** The sides of a measured opening or outline in the frame of the shape, counter-clockwise; a `stop` when they do not go round. */
export function readSides(shape: Shape, name: string): Result<readonly Side[]> {
  const sides =
    shape.kind === 'outline' ? shape.edges.map((edge) => sideOf(shape, edge)) : openingSides(shape);
  const complete = sides.flatMap((side) => side ?? []);
  const area = complete.reduce((sum, { from, to }) => sum + (from.x * to.y - to.x * from.y) / 2, 0);
  if (complete.length < 3 || complete.length < sides.length || !(area > 0)) return fail(doesNotClose(name));
  return succeed(complete);
}

function openingSides(shape: Shape): readonly (Side | null)[] {
  return cornerNames.map((from, i) => {
    const to = cornerNames[(i + 1) % 4] ?? from;
    const edge = shape.edges.find(
      (one) => (one.from === from && one.to === to) || (one.from === to && one.to === from),
    );
    const turned = edge?.from === to;
    const bow = edge?.bow;
    const curve = edge?.curve && (turned ? [...edge.curve].reverse() : edge.curve);
    return sideOf(shape, {
      name: edge?.name ?? `${from}–${to}`,
      from,
      to,
      ...(bow !== undefined && { bow }),
      ...(curve && { curve }),
      ...(edge?.sigma !== undefined && { sigma: edge.sigma }),
    });
  });
}

function sideOf(shape: Shape, edge: ShapeEdge): Side | null {
  const [from, to] = [shape.points[edge.from], shape.points[edge.to]];
  if (!from || !to) return null;
  const bow = edge.bow ?? 0;
  const follows = edge.curve !== undefined || Math.abs(bow) >= worthFollowing;
  return {
    name: edge.name,
    from,
    to,
    between: edge.curve ? edge.curve.slice(1, -1) : follows ? bowed(from, to, bow) : [],
    u95: 2 * (edge.sigma ?? usualSigma),
    deviation: follows ? 0 : Math.abs(bow),
  };
}

/** Points of the arc over a side that bows outwards by so much. */
function bowed(from: Point, to: Point, bow: number): readonly Point[] {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const bulge = (2 * bow) / chord;
  const flat = flattenOutline([{ ...from, bulge }, to], 0.02);
  return flat.slice(
    1,
    flat.findIndex(({ x, y }) => x === to.x && y === to.y),
  );
}

function doesNotClose(name: string): Problem {
  return {
    severity: 'stop',
    code: 'outline-does-not-close',
    about: name,
    message: `The corners of ${name} do not go round anything.`,
    remedy: 'Check which corner is which, and that none is missing; look again from the side noted.',
    source: 'joinery 0.1, A5 E11',
  };
}
