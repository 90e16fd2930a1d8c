import type { Point } from '#core/geometry';
import { sideByOrder, sideOf } from './corner-order.ts';
import type { Network, Position } from './network.ts';
import { apartOnBoard, givensOf, placeByGivens } from './start-given.ts';
import type { Givens } from './start-given.ts';
import { placeByRays, raysOf } from './start-rays.ts';
import type { Ray } from './start-rays.ts';

interface Link {
  readonly to: string;
  readonly length: number;
}
type Placed = ReadonlyMap<string, Point>;

/** More branches than this are not followed: each point fixed by two distances only doubles them. */
const mostBranches = 16;

/**
 * Positions grown point by point from those held or from the datum: each new point where ordinates, boards, angles and distances put it, else
 * where two circles cross, on the side that agrees with the other distances, on both sides where none decides.
 */
export function growStarts(network: Network): readonly Position[] {
  const ties = { links: linksOf(network), rays: raysOf(network), givens: givensOf(network) };
  const reach = Math.max(1, ...network.observations.map((seen) => Math.abs(seen.value)));
  let branches: readonly Placed[] = [firstPlaced(network, ties, reach)];
  for (let left = network.points.length; left > 0; left -= 1) {
    branches = branches.flatMap((placed) => growOne(network, ties, placed, reach)).slice(0, mostBranches);
  }
  return branches.map((placed) => ({ points: Object.fromEntries(placed), tilt: 0 }));
}

interface Ties {
  readonly links: ReadonlyMap<string, readonly Link[]>;
  readonly rays: readonly Ray[];
  readonly givens: Givens;
}

function linksOf(network: Network): ReadonlyMap<string, readonly Link[]> {
  const links = new Map<string, Link[]>(network.points.map((point) => [point, []]));
  for (const seen of network.observations) {
    const [a, b] = seen.terms;
    if (seen.measure !== 'length' || seen.terms.length !== 2 || !a || !b) continue;
    links.get(a[0])?.push({ to: b[0], length: seen.value });
    links.get(b[0])?.push({ to: a[0], length: seen.value });
  }
  return links;
}

/** Held points, the end of the x axis (y alone is held) at its distance. */
function firstPlaced(network: Network, { links, givens }: Ties, reach: number): Placed {
  const placed = new Map<string, Point>();
  for (const name of network.points) {
    const { x, y } = network.held[name] ?? {};
    if (x !== undefined && y !== undefined) placed.set(name, { x, y });
  }
  for (const name of network.points) {
    const { x, y } = network.held[name] ?? {};
    if (x !== undefined || y === undefined) continue;
    const link = links.get(name)?.find(({ to }) => placed.has(to));
    const from = link ? placed.get(link.to) : undefined;
    const origin = [...placed.keys()][0] ?? '';
    const length = link?.length ?? apartOnBoard(givens, origin, name) ?? reach / 2;
    placed.set(name, { x: (from?.x ?? 0) + length, y });
  }
  return placed;
}

function growOne(
  { points, corners = [] }: Network,
  { links, rays, givens }: Ties,
  placed: Placed,
  reach: number,
): readonly Placed[] {
  const known = (name: string) => (links.get(name) ?? []).filter(({ to }) => placed.has(to));
  const aimed = (name: string) =>
    rays.filter((ray) => ray.to === name && placed.has(ray.at) && placed.has(ray.from));
  const waiting = points.filter((name) => !placed.has(name));
  for (const name of waiting) {
    const place = placeByGivens(givens, name, placed);
    if (place) return [new Map([...placed, [name, place]])];
  }
  let [next, most] = ['', -1];
  for (const name of waiting) {
    const ties = known(name).length + (rays.length > 0 ? aimed(name).length : 0);
    if (ties > most) [next, most] = [name, ties];
  }
  if (most < 0) return [placed];
  const sighted = placeByRays(aimed(next), known(next), placed);
  if (sighted !== null) return [new Map([...placed, [next, sighted]])];
  const places = possiblePlaces(known(next), placed, { reach, turn: placed.size, name: next, corners });
  return places.map((place) => new Map([...placed, [next, place]]));
}

/** What is known of a point that is to be placed, beside its distances. */
interface Fallback {
  readonly name: string;
  readonly corners: readonly string[];
  readonly reach: number;
  readonly turn: number;
}

function possiblePlaces(links: readonly Link[], placed: Placed, fallback: Fallback): readonly Point[] {
  const circles = links.flatMap(({ to, length }) => {
    const centre = placed.get(to);
    return centre ? [{ name: to, centre, radius: length }] : [];
  });
  const [first] = circles;
  const pair = bestPair(circles);
  if (!pair) {
    const angle = 1 + 2.4 * fallback.turn; // the golden angle: no two strays fall together
    const radius = first?.radius ?? fallback.reach / 2;
    const centre = first?.centre ?? { x: 0, y: 0 };
    return [{ x: centre.x + radius * Math.cos(angle), y: centre.y + Math.abs(radius * Math.sin(angle)) }];
  }
  const sides = byOrder(crossCircles(pair[0], pair[1]), pair, fallback);
  if (circles.length === 2) return sides;
  const misfit = (p: Point) =>
    circles.reduce((sum, c) => sum + (Math.hypot(p.x - c.centre.x, p.y - c.centre.y) - c.radius) ** 2, 0);
  return [...sides].sort((a, b) => misfit(a) - misfit(b)).slice(0, 1);
}

/** The crossing that keeps the corners in their order and none of them hollow comes first. */
function byOrder(
  sides: readonly Point[],
  [a, b]: readonly [Circle, Circle],
  { name, corners }: Fallback,
): readonly Point[] {
  const wanted = sideByOrder(corners, a.name, b.name, name);
  if (wanted === 0) return sides;
  return [...sides].sort((p, q) => wanted * (sideOf(a.centre, b.centre, q) - sideOf(a.centre, b.centre, p)));
}

interface Circle {
  readonly name: string;
  readonly centre: Point;
  readonly radius: number;
}

/** The two circles that cross most nearly at a right angle; null with fewer than two centres. */
function bestPair(circles: readonly Circle[]): readonly [Circle, Circle] | null {
  let best: readonly [Circle, Circle] | null = null;
  let squarest = Infinity;
  circles.forEach((a, i) => {
    for (const b of circles.slice(i + 1)) {
      const apart = Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y);
      if (apart === 0) continue;
      const cosine = Math.abs((a.radius ** 2 + b.radius ** 2 - apart ** 2) / (2 * a.radius * b.radius));
      if (cosine < squarest) [best, squarest] = [[a, b], cosine];
    }
  });
  return best;
}

/** Both crossings, the upper one first; when the circles miss, points just off the line of centres. */
function crossCircles(a: Circle, b: Circle): readonly Point[] {
  const [dx, dy] = [b.centre.x - a.centre.x, b.centre.y - a.centre.y];
  const apart = Math.hypot(dx, dy);
  const along = (a.radius ** 2 - b.radius ** 2 + apart ** 2) / (2 * apart);
  const off = Math.sqrt(Math.max(a.radius ** 2 - along ** 2, (0.02 * apart) ** 2));
  const at = (side: number): Point => ({
    x: a.centre.x + (dx * along - dy * off * side) / apart,
    y: a.centre.y + (dy * along + dx * off * side) / apart,
  });
  return [at(1), at(-1)].sort((p, q) => q.y - p.y);
}
