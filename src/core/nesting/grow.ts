import { offsetOutline } from '#core/geometry';
import { boxOfRing, figureArea, reverseRing, ringArea } from './rings.ts';
import type { Figure, Ring } from './rings.ts';
import { simplifyRing } from './simplify.ts';

/**
 * Growing goes this much further than asked, mm: the offset has arcs as chords up to 0.01 inside and corners rounded to
 * 0.001, and two parts share the fault. So the gap holds exactly.
 */
const growthAllowance = 0.012;

/**
 * The figure that must not clash: grown all round by half the gap and made simpler outwards, so that figures of this
 * kind apart are parts at least the gap apart. Its holes go clockwise; those too small to take anything are gone. Without a
 * gap it is smaller by a hair, so that parts may touch.
 */
export function growFigure(figure: Figure, gap: number): Figure {
  return gap > 0 ? simplify(offsetFigure(figure, gap / 2 + growthAllowance)) : loosen(simplify(figure));
}

/** Without a gap parts may touch, so figures shrink by this share of their size: above rounding, far below any tool. */
const hair = 2e-12;

function loosen(figure: Figure): Figure {
  const [minX, minY, maxX, maxY] = boxOfRing(figure.outer);
  const reach = Math.max(...[minX, minY, maxX, maxY].map(Math.abs), maxX - minX, maxY - minY);
  const loose = (ring: Ring) => moveSides(ring, hair * reach);
  return { outer: loose(figure.outer), holes: figure.holes.map(loose) };
}

/** A ring with every side moved to its left by a distance that is small beside the sides. */
function moveSides(ring: Ring, distance: number): Ring {
  const n = ring.length;
  const moved = new Float64Array(n);
  for (let i = 0; i < n; i += 2) {
    const [x, y] = [ring[i]!, ring[i + 1]!];
    const [ux, uy] = unit(x - ring[(i + n - 2) % n]!, y - ring[(i + n - 1) % n]!);
    const [vx, vy] = unit(ring[(i + 2) % n]! - x, ring[(i + 3) % n]! - y);
    const scale = distance / Math.max(0.05, 1 + ux * vx + uy * vy);
    moved[i] = x - scale * (uy + vy);
    moved[i + 1] = y + scale * (ux + vx);
  }
  return moved;
}

function unit(x: number, y: number): readonly [number, number] {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
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
