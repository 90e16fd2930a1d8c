import type { Point } from '#core/geometry';
import { makeRandom } from '#core/numerics';
import { areaRound, disorderOf } from './corner-order.ts';
import { alignToDatum, goesClockwise, isOpening, knowsHand, mirrorPosition } from './datum.ts';
import type { Datum } from './datum.ts';
import { isSided } from './network.ts';
import type { Network, Position } from './network.ts';
import { analyseFit, evaluate, fitFrom } from './solve.ts';
import type { AnalysedFit, Fit } from './solve.ts';
import { seatBoards } from './start-given.ts';
import { growStarts } from './start-growth.ts';
import { startOpening } from './start-opening.ts';

/** What is sought: the network, the datum it hangs on (null when points are held), and a start if one is known. */
export interface Search {
  readonly network: Network;
  readonly datum: Datum | null;
  readonly start?: Position;
  /** Leave out the strewn starts: for the many trials of a search for slips. */
  readonly orderly?: boolean;
}

export interface Found {
  readonly fit: AnalysedFit;
  /** Another shape, not a mirror image, that fits as well; null when there is none. */
  readonly rival: Position | null;
}

/** Two fits whose chi-squares differ by less than this cannot be told apart (joinery A4: 3.3 sigma is the limit). */
const asGood = 4;
/** Points further apart than this share of the size make two shapes different. */
const different = 1e-3;
const strayStarts = 12;
/** More points than this strewn at random never find their places. */
const mostStrewn = 30;
/** Steps allowed to the winner: with a large slip the last digits come slowly. */
const polishSteps = 500;

/** Best-fitting positions of a network, found from its own readings alone. Weighted least squares, joinery A4. */
export function adjustNetwork(search: Search): Found {
  const starts = search.start ? [search.start] : findStarts(search);
  const enough = asGood * Math.max(1, search.network.observations.length);
  const fits = fitStarts(search, starts, enough);
  const settled = bestOf(fits).chi2 <= enough || search.start !== undefined || search.orderly === true;
  const all = settled ? fits : [...fits, ...fitStrays(search)];
  const winner = inOrder(search.network, all);
  const polished = fitFrom(search.network, winner.position, polishSteps);
  return { fit: analyseFit(polished), rival: findRival(search, winner, all) };
}

/** Fits from each start; in an orderly search the first that is good enough ends it. */
function fitStarts(search: Search, starts: readonly Position[], enough: number): readonly Fit[] {
  const fits: Fit[] = [];
  for (const start of starts) {
    const fit = fitFrom(search.network, settle(search.network, start));
    fits.push(fit);
    if (search.orderly === true && fit.chi2 <= enough) break;
  }
  return fits;
}

function bestOf(fits: readonly Fit[]): Fit {
  const [first, ...rest] = fits;
  if (!first) throw new Error('no start for the adjustment');
  const clearly = (fit: Fit, than: Fit) => fit.chi2 < than.chi2 - 1e-6 * (1 + than.chi2);
  return rest.reduce((best, fit) => (clearly(fit, best) ? fit : best), first);
}

/** Of the fits that cannot be told apart by their readings the one that suits the order of the corners best. */
function inOrder({ corners }: Network, fits: readonly Fit[]): Fit {
  const best = bestOf(fits);
  if (!corners) return best;
  const alike = fits.filter(({ chi2 }) => chi2 < best.chi2 + asGood);
  const disorder = alike.map(({ position }) => disorderOf(position.points, corners));
  const least = Math.min(...disorder);
  const champion = bestOf(alike.filter((_, k) => disorder[k] === least));
  return disorderOf(best.position.points, corners) === least ? best : champion;
}

function findStarts({ network, datum }: Search): readonly Position[] {
  const align = (start: Position) => (datum ? alignToDatum(start, datum) : start);
  const plain = !network.observations.some(({ part }) => part !== undefined);
  if (isOpening(network.points) && plain) return [align(startOpening(network))];
  const grown = growStarts(network).map(align);
  if (datum === null) return grown;
  const starts = decidesHand(network)
    ? [...grown, ...grown.map(mirrorPosition)]
    : grown.map(standUp(network));
  return starts.filter((start, k) => !starts.slice(0, k).some((other) => isSamePlace(start, other)));
}

/** Starts nearer to each other than this lead to the same end, mm. */
const samePlace = 1e-3;

function isSamePlace(a: Position, b: Position): boolean {
  return Object.entries(a.points).every(([name, p]) => {
    const q = b.points[name];
    return q !== undefined && Math.abs(p.x - q.x) < samePlace && Math.abs(p.y - q.y) < samePlace;
  });
}

/** Plumb and level readings together tell a shape from its mirror image. */
function decidesHand(network: Network): boolean {
  if (knowsHand(network.points)) return false;
  const has = (measure: string) => network.observations.some((seen) => seen.measure === measure);
  return (has('plumb') && has('level')) || network.observations.some(isSided);
}

/** Mirrors a start so that an opening goes round as its names say, or else its first point off the axis lies above it. */
function standUp(network: Network): (start: Position) => Position {
  if (knowsHand(network.points)) return (start) => (goesClockwise(start) ? mirrorPosition(start) : start);
  const { corners } = network;
  if (corners) return (start) => (areaRound(start.points, corners) < 0 ? mirrorPosition(start) : start);
  return (start) => {
    const first = network.points.find((name) => Math.abs(start.points[name]?.y ?? 0) > 0);
    return first !== undefined && (start.points[first]?.y ?? 0) < 0 ? mirrorPosition(start) : start;
  };
}

/** Boards laid where they fit the points of a start, and upright turned so that it fits. */
function settle(network: Network, start: Position): Position {
  const boards = seatBoards(network, start.points);
  return settleTilt(network, { ...start, boards });
}

/** Turns upright so that plumb and level readings fit best: nearest to the y axis where several do. */
function settleTilt(network: Network, start: Position): Position {
  if (!network.tiltFree) return start;
  const first = knowsHand(network.points) ? uprightOfOpening(start) : start.tilt;
  const tries = Array.from({ length: 72 }, (_, k) => {
    const turn = ((k % 2 === 0 ? k : -k - 1) / 2) * (Math.PI / 36);
    return { ...start, tilt: first + turn };
  });
  const allowed = knowsHand(network.points) ? tries.slice(0, 35) : tries;
  return bestOf(allowed.map((position) => evaluate(network, position))).position;
}

/** Upright of an opening: from the middle of its sill to the middle of its head. */
function uprightOfOpening({ points }: Position): number {
  const at = (name: string): Point => points[name] ?? { x: 0, y: 0 };
  const dx = at('TL').x + at('TR').x - at('BL').x - at('BR').x;
  const dy = at('TL').y + at('TR').y - at('BL').y - at('BR').y;
  return Math.atan2(-dx, dy);
}

/** Seeded starts strewn over the field, for readings that the orderly starts cannot fit. */
function fitStrays({ network, datum }: Search): readonly Fit[] {
  if (isOpening(network.points) || network.points.length > mostStrewn) return [];
  const random = makeRandom(1);
  const reach = Math.max(1, ...network.observations.map((seen) => Math.abs(seen.value)));
  const held = Object.values(network.held).flatMap(({ x, y }) =>
    x === undefined || y === undefined ? [] : [{ x, y }],
  );
  const centre = held[0] ?? { x: 0, y: 0 };
  return Array.from({ length: strayStarts }, () => {
    const points = Object.fromEntries(
      network.points.map((name) => [
        name,
        strayPoint(network.held[name] ?? {}, centre, () => (random.next() - 0.5) * 2 * reach),
      ]),
    );
    const start = standUp(network)({ points, tilt: 0 });
    return fitFrom(network, settle(network, datum ? alignToDatum(start, datum) : start));
  });
}

function strayPoint(held: Partial<Point>, centre: Point, offset: () => number): Point {
  return { x: held.x ?? centre.x + offset(), y: held.y ?? centre.y + offset() };
}

function findRival({ network, datum }: Search, winner: Fit, fits: readonly Fit[]): Position | null {
  if (isOpening(network.points)) return null;
  const size = Math.max(...network.observations.map((seen) => Math.abs(seen.value)));
  const apart = (a: Position, b: Position) =>
    Math.max(
      ...network.points.map((name) => {
        const [p, q] = [a.points[name], b.points[name]];
        return p && q ? Math.hypot(p.x - q.x, p.y - q.y) : 0;
      }),
    );
  const { corners } = network;
  const image = datum ? mirrorPosition(winner.position) : winner.position;
  const rival = fits.find(
    ({ chi2, position }) =>
      chi2 < winner.chi2 + asGood &&
      !(corners && disorderOf(position.points, corners) === Infinity) &&
      apart(position, winner.position) > different * size &&
      apart(position, image) > different * size,
  );
  return rival?.position ?? null;
}
