import { offsetOutline } from '#core/geometry';
import { figureArea, reverseRing, ringArea } from './rings.ts';
import type { Figure, Ring } from './rings.ts';
import { simplifyRing } from './simplify.ts';

/**
 * Growing goes this much further than asked, mm: the offset has arcs as chords up to 0.01 inside and corners rounded to
 * 0.001, and two parts share the fault. So the gap holds exactly.
 */
export const growthAllowance = 0.012;

/**
 * The figure that must not clash: grown all round by half the gap and made simpler outwards, so that figures of this
 * kind apart are parts at least the gap apart. Its holes go clockwise; those too small to take anything are gone.
 */
export function growFigure(figure: Figure, gap: number): Figure {
  return simplify(gap > 0 ? offsetFigure(figure, gap / 2 + growthAllowance) : figure);
}

/** A figure with every edge moved outwards by a distance, mm; holes shrink. */
export function offsetFigure(figure: Figure, distance: number): Figure {
  const rings = offsetRing(figure.outer, distance);
  const [outer, ...rest] = [...rings].sort((a, b) => Math.abs(ringArea(b)) - Math.abs(ringArea(a)));
  if (!outer) return figure;
  return {
    outer: ringArea(outer) < 0 ? reverseRing(outer) : outer,
    // a dent that closed at its mouth leaves a hole
    holes: [...rest, ...figure.holes.flatMap((hole) => offsetRing(hole, -distance))],
  };
}

function offsetRing(ring: Ring, distance: number): readonly Ring[] {
  const outline = [];
  for (let i = 0; i < ring.length; i += 2) outline.push({ x: ring[i]!, y: ring[i + 1]! });
  return offsetOutline(outline, distance, 'round').map((path) =>
    Float64Array.from(path.flatMap(({ x, y }) => [x, y])),
  );
}

function simplify(figure: Figure): Figure {
  const area = figureArea(figure);
  return {
    outer: simplifyRing(figure.outer, area),
    holes: figure.holes.map((hole) => simplifyRing(ringArea(hole) > 0 ? reverseRing(hole) : hole, area)),
  };
}
