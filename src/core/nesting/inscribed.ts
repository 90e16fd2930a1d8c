import { isInRing } from './poles.ts';
import { turnRing } from './rings.ts';
import type { Figure, Ring } from './rings.ts';

/** Figures of more sides are not looked into. */
const mostSides = 400;

/** A figure turned by an angle, degrees. */
export function turnFigure({ outer, holes }: Figure, angle: number): Figure {
  return { outer: turnRing(outer, angle), holes: holes.map((hole) => turnRing(hole, angle)) };
}

/**
 * Length along x of a long upright rectangle inside a figure that is higher than asked, mm; 0 when none is found. Only bands
 * that begin or end at the height of a corner are tried, so it is never too long but may be too short.
 */
export function lengthInside(figure: Figure, height: number): number {
  const rings = [figure.outer, ...figure.holes];
  if (rings.reduce((sum, ring) => sum + ring.length / 2, 0) > mostSides) return 0;
  const heights = new Set(rings.flatMap((ring) => [...ring].filter((_, i) => i % 2 === 1)));
  const band = height * (1 + 1e-9);
  let best = 0;
  for (const y of heights) {
    best = Math.max(best, lengthInBand(figure, rings, y, y + band), lengthInBand(figure, rings, y - band, y));
  }
  return best;
}

/** The longest stretch of a band that no side crosses and that lies inside. */
function lengthInBand(figure: Figure, rings: readonly Ring[], low: number, high: number): number {
  const crossed = rings.flatMap((ring) => crossedBy(ring, low, high)).sort((a, b) => a[0] - b[0]);
  const middle = (low + high) / 2;
  let best = 0;
  let end = Infinity;
  for (const [from, to] of crossed) {
    if (from - end > best && isWithin(figure, (end + from) / 2, middle)) best = from - end;
    end = end === Infinity ? to : Math.max(end, to);
  }
  return best;
}

/** Where the sides of a ring are within a band, along x. */
function crossedBy(ring: Ring, low: number, high: number): (readonly [number, number])[] {
  const stretches: (readonly [number, number])[] = [];
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    if (Math.max(y0, y1) <= low || Math.min(y0, y1) >= high) continue;
    const at = (y: number) => x0 + ((Math.min(high, Math.max(low, y)) - y0) * (x1 - x0)) / (y1 - y0);
    const ends = y0 === y1 ? [x0, x1] : [at(y0), at(y1)];
    stretches.push([Math.min(...ends), Math.max(...ends)]);
  }
  return stretches;
}

function isWithin({ outer, holes }: Figure, x: number, y: number): boolean {
  return isInRing(outer, x, y) && !holes.some((hole) => isInRing(hole, x, y));
}
