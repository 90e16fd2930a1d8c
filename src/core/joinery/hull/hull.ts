import type { Box, Shape } from '#core/geometry';
import { fitSpline, readSpline } from '#core/numerics';
import { fail, succeed, type Problem, type Result } from '#core/problems';

/** The bare hull at one place along the boat: depth behind the plane of the fronts by height, rising. mm. */
export interface HullStation {
  readonly at: number;
  readonly name?: string;
  readonly heights: readonly number[];
  readonly depths: readonly number[];
  /** As the bevel gauge read it: radians against square to the section, positive where the hull falls away beyond it. */
  readonly bevels?: readonly { readonly height: number; readonly angle: number }[];
}

/** Something on the hull that wood must keep clear of, between two places along the boat; x is depth, y height. mm. */
export interface HullObstacle {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly box: Box;
}

/** The hull behind a piece, its stations from left to right as seen. */
export interface Hull {
  readonly stations: readonly HullStation[];
  /** Distance of the ordinates it was drawn through, mm: slopes are taken over it, up and down. */
  readonly pitch: number;
  /** Twice the standard deviation of a point of it, mm. */
  readonly u95: number;
  readonly source: string;
  readonly obstacles: readonly HullObstacle[];
}

/** Ordinates entered by hand: from the plane of the fronts to the hull at the same heights at the left and the right end. */
export interface EnteredHull {
  readonly heights?: readonly number[];
  readonly left?: readonly number[];
  readonly right?: readonly number[];
  readonly width?: number;
}

const sampled = 10; // mm between points of the lines
const usualPitch = 100; // mm (joinery A6)
const usualU95 = 2; // mm, ordinates from a batten (joinery A1)
/** What stands at one section only is taken to reach this far to both sides, mm (common practice, no source). */
export const guessedReach = 50;

/** The hull of a measured shape, or of ordinates entered; a `stop` when there is none. Joinery A6, A10, B7. */
export function readHull(shape: Shape | null, name: string, entered: EnteredHull): Result<Hull> {
  if (!shape) return enteredHull(entered);
  const sections = [...(shape.sections ?? [])].sort((a, b) => a.at - b.at);
  if (sections.length === 0) return fail(lacking(`${name} has no section of the hull that makes a line.`));
  const stations = sections.map(({ at, line, name: section, bevels }) => ({
    ...{ at, name: section, bevels },
    heights: line.map(({ y }) => y),
    depths: line.map(({ x }) => x),
  }));
  const last = stations[stations.length - 1]?.at ?? 0;
  return succeed({
    stations,
    pitch: usualPitch,
    u95: 2 * Math.max(...sections.map(({ sigma }) => sigma)),
    source: `shape ${name}`,
    obstacles: (shape.obstructions ?? []).map(({ name: what, box, section }) => {
      const at = sections.find((one) => one.name === section)?.at;
      return at === undefined
        ? { name: what, box, from: 0, to: last }
        : { name: what, box, from: at - guessedReach, to: at + guessedReach };
    }),
  });
}

function enteredHull({ heights = [], left = [], right = [], width = 0 }: EnteredHull): Result<Hull> {
  const other = right.length > 0 ? right : left;
  if (heights.length < 2 || left.length !== heights.length || other.length !== heights.length) {
    const counts = `${heights.length} heights, ${left.length} left and ${other.length} right`;
    return fail(
      lacking(
        heights.length + left.length + right.length === 0
          ? 'The hull behind it has not been measured.'
          : `The ordinates do not go together: ${counts}; two of each at least.`,
      ),
    );
  }
  const steps = heights.slice(1).map((y, i) => y - (heights[i] ?? 0));
  const all = [...heights, ...left, ...other];
  if (!steps.every((step) => step > 0) || !all.every((one) => Number.isFinite(one) && Math.abs(one) < 1e5))
    return fail(
      lacking(`The ${heights.length} heights of the ordinates do not rise, or a depth is no size.`),
    );
  return succeed({
    stations: [drawStation(0, heights, left), drawStation(Math.max(width, 1), heights, other)],
    pitch: Math.min(...steps),
    u95: usualU95,
    source: 'you',
    obstacles: [],
  });
}

function drawStation(at: number, heights: readonly number[], depths: readonly number[]): HullStation {
  const spline = fitSpline(heights, depths, 'curved');
  const fine = heights.flatMap((from, i) => {
    const to = heights[i + 1];
    if (to === undefined) return [from];
    const count = Math.min(100, Math.max(1, Math.ceil((to - from) / sampled)));
    return Array.from({ length: count }, (_, k) => from + ((to - from) * k) / count);
  });
  return { at, heights: fine, depths: fine.map((y) => readSpline(spline, y).value) };
}

function lacking(message: string): Problem {
  return {
    severity: 'stop',
    code: 'hull-not-measured',
    message,
    remedy:
      'Choose a shape of hull sections, or enter heights and the depths at both ends, from the plane of the fronts to the bare hull every 100.',
    source: 'joinery A6, A10, B7',
  };
}

/** Depth of a station at a height, straight on beyond its ends, mm. */
export function depthOf({ heights, depths }: HullStation, y: number): number {
  let [low, high] = [0, heights.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((heights[middle] ?? 0) <= y) low = middle;
    else high = middle;
  }
  const [y0 = 0, y1 = 0, d0 = 0, d1 = 0] = [heights[low], heights[high], depths[low], depths[high]];
  return y1 > y0 ? d0 + ((d1 - d0) * (y - y0)) / (y1 - y0) : d0;
}

/** The hull at any place along the boat between two heights: a curve through its stations, beyond them as at the last. */
export function stationAt(hull: Hull, at: number, [low, high]: readonly [number, number]): HullStation {
  const { stations } = hull;
  const known = stations.find((one) => Math.abs(one.at - at) < 1e-6) ?? beyond(stations, at);
  if (known) return known;
  const count = Math.max(1, Math.ceil((high - low) / sampled));
  const heights = Array.from({ length: count + 1 }, (_, i) => low + ((high - low) * i) / count);
  const shares = sharesAt(stations, at);
  const depths = heights.map((y) =>
    stations.reduce((sum, one, i) => sum + (shares[i] ?? 0) * depthOf(one, y), 0),
  );
  return { at, heights, depths };
}

/** How much of each station the curve through them takes at a place: it is the same at every height. */
function sharesAt(stations: readonly HullStation[], at: number): readonly number[] {
  const places = stations.map((one) => one.at);
  return places.map((_, i) => {
    const one = places.map((__, k) => (k === i ? 1 : 0));
    return readSpline(fitSpline(places, one, 'curved'), at).value;
  });
}

function beyond(stations: readonly HullStation[], at: number): HullStation | undefined {
  const [first, last] = [stations[0], stations[stations.length - 1]];
  if (!first || !last || stations.length === 1) return first;
  return at <= first.at ? first : at >= last.at ? last : undefined;
}

/** The least and greatest height measured at every station. */
export function heightRange({ stations }: Hull): readonly [number, number] {
  return [
    Math.max(...stations.map(({ heights }) => heights[0] ?? 0)),
    Math.min(...stations.map(({ heights }) => heights[heights.length - 1] ?? 0)),
  ];
}
