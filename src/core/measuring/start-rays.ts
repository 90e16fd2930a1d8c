import type { Point } from '#core/geometry';
import type { Network } from './network.ts';

/** A direction read at a point: that to `to` is the one to `from` turned counter-clockwise. */
export interface Ray {
  readonly at: string;
  readonly from: string;
  readonly to: string;
  /** Radians. */
  readonly turn: number;
}

/** The directions that the angles of a network give, each from both of its ends. */
export function raysOf(network: Network): readonly Ray[] {
  return network.observations.flatMap((seen) => {
    const [[to], [at]] = [seen.terms[0] ?? [''], seen.terms[1] ?? ['']];
    const from = seen.base?.[0]?.[0];
    if (seen.measure !== 'angle' || from === undefined) return [];
    return [
      { at, from, to, turn: seen.value },
      { at, from: to, to: from, turn: -seen.value },
    ];
  });
}

interface Link {
  readonly to: string;
  readonly length: number;
}

/** Rays that meet more sharply than this do not fix a point, as the sine of the angle. */
const sharp = 0.05;

/** Where directions put a point: along one by its distance, else where two cross; null when they do not tell. */
export function placeByRays(
  rays: readonly Ray[],
  links: readonly Link[],
  placed: ReadonlyMap<string, Point>,
): Point | null {
  const lines = rays.flatMap(({ at, from, turn }) => {
    const [a, b] = [placed.get(at), placed.get(from)];
    if (!a || !b) return [];
    const angle = Math.atan2(b.y - a.y, b.x - a.x) + turn;
    return [{ at, start: a, way: { x: Math.cos(angle), y: Math.sin(angle) } }];
  });
  for (const { at, start, way } of lines) {
    const length = links.find(({ to }) => to === at)?.length;
    if (length !== undefined) return { x: start.x + length * way.x, y: start.y + length * way.y };
  }
  const [first] = lines;
  const second = lines.find(
    ({ way }) => first && Math.abs(first.way.x * way.y - first.way.y * way.x) > sharp,
  );
  if (!first || !second) return null;
  const [dx, dy] = [second.start.x - first.start.x, second.start.y - first.start.y];
  const cross = first.way.x * second.way.y - first.way.y * second.way.x;
  const along = (dx * second.way.y - dy * second.way.x) / cross;
  return { x: first.start.x + along * first.way.x, y: first.start.y + along * first.way.y };
}
