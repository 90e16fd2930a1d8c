import { flattenOutline } from './outline.ts';
import type { Outline, Point } from './types.ts';

type Side = readonly [Point, Point];

/**
 * Outlines with their holes, as counter-clockwise trapezoids between the heights of all their corners; arcs as chords that
 * stray at most `tolerance` mm. The direction of the outlines does not matter: inside is what an odd number of them is round.
 */
export function trapezoidsOf(
  outlines: readonly Outline[],
  tolerance: number,
): readonly (readonly [Point, Point, Point, Point])[] {
  const sides = outlines.flatMap((outline) => {
    const points = flattenOutline(outline, tolerance);
    return points.map((from, i): Side => [from, points[(i + 1) % points.length] ?? from]);
  });
  const heights = [...new Set(sides.map(([from]) => from.y))].sort((one, other) => one - other);
  return heights.slice(1).flatMap((high, i) => bandOf(sides, heights[i] ?? high, high));
}

const thinnest = 1e-6; // mm; bands and strips thinner than this are rounding

function bandOf(sides: readonly Side[], low: number, high: number) {
  if (high - low < thinnest) return [];
  const middle = (low + high) / 2;
  const crossing = sides
    .filter(([from, to]) => Math.min(from.y, to.y) <= middle && Math.max(from.y, to.y) > middle)
    .sort((one, other) => xAt(one, middle) - xAt(other, middle));
  return Array.from({ length: Math.floor(crossing.length / 2) }, (_, k) => {
    const [left, right] = [crossing[2 * k] as Side, crossing[2 * k + 1] as Side];
    const at = (side: Side, y: number): Point => ({ x: xAt(side, y), y });
    return [at(left, low), at(right, low), at(right, high), at(left, high)] as const;
  }).filter(([a, b, c, d]) => Math.max(b.x - a.x, c.x - d.x) > thinnest);
}

function xAt([from, to]: Side, y: number): number {
  return from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
}
