import { offsetOutline } from '#core/geometry';
import { boxOfRing, figureArea, reverseRing, ringArea } from './rings.ts';
import type { Figure, Ring } from './rings.ts';
import { simplifyRing, thinOutRing } from './simplify.ts';

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
  if (gap <= 0) return loosen(simplify(figure));
  const thin = thinOut(figure);
  return simplify(offsetFigure(thin, gap / 2 + growthAllowance), figureArea(thin) - figureArea(figure));
}

/** Sides of the figure that is grown in a hurry. */
const hurriedSides = 16;

/** The same at once, where there is no time to do it well: grown from the least polygon of sixteen directions round it, its holes lost. */
export function growInHurry({ outer }: Figure, gap: number): Figure {
  const ways = Array.from({ length: hurriedSides }, (_, k) => (2 * Math.PI * k) / hurriedSides);
  const lines = ways.map((way) => {
    const [x, y] = [Math.cos(way), Math.sin(way)];
    let reach = -Infinity;
    for (let i = 0; i < outer.length; i += 2) reach = Math.max(reach, outer[i]! * x + outer[i + 1]! * y);
    // without a gap a hair further, for what rounding may cut off
    return { x, y, reach: reach + (gap > 0 ? gap / 2 + growthAllowance : hair * Math.abs(reach)) };
  });
  const corners = lines.flatMap((a, k) => {
    const b = lines[(k + 1) % hurriedSides]!;
    const cross = a.x * b.y - a.y * b.x;
    return [(a.reach * b.y - b.reach * a.y) / cross, (b.reach * a.x - a.reach * b.x) / cross];
  });
  return { outer: Float64Array.from(corners), holes: [] };
}

/** Growing takes long where there are many corners, so some go before, by which the part may get larger by this share. */
const thinned = 0.002;

/** The figure with fewer corners where it had many, nothing cut away. */
function thinOut(figure: Figure): Figure {
  const most = thinned * figureArea(figure);
  return {
    outer: thinOutRing(figure.outer, most),
    holes: figure.holes.map((hole) => reverseRing(thinOutRing(reverseRing(hole), most))),
  };
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

/** `added`: area by which the figure was made larger before, mm². */
function simplify(figure: Figure, added = 0): Figure {
  const area = figureArea(figure);
  return {
    outer: simplifyRing(figure.outer, area, added),
    holes: figure.holes.map((hole) =>
      simplifyRing(ringArea(hole) > 0 ? reverseRing(hole) : hole, area, added),
    ),
  };
}
