import { EndType, FillRule, JoinType, difference, inflatePaths, simplifyPaths } from 'clipper2-ts';
import { flattenOutline } from './outline.ts';
import type { Outline, Point } from './types.ts';

// Clipper works on whole numbers; a thousandth of a millimetre is finer than any tool here.
const perMillimetre = 1000;
const flatness = 0.01; // mm, arcs against their chords before clipping

type ClipPath = { x: number; y: number }[];

const toClip = (outline: Outline): ClipPath =>
  flattenOutline(outline, flatness).map(({ x, y }) => ({
    x: Math.round(x * perMillimetre),
    y: Math.round(y * perMillimetre),
  }));

const fromClip = (paths: readonly (readonly Point[])[]): readonly Outline[] =>
  paths.map((path) => path.map(({ x, y }) => ({ x: x / perMillimetre, y: y / perMillimetre })));

/**
 * The outline grown (positive) or shrunk by a distance, mm; arcs come back as chords within 0.01 mm. `round` joins
 * keep the true distance at corners, `sharp` ones keep corners sharp. Empty when nothing is left.
 */
export function offsetOutline(
  outline: Outline,
  distance: number,
  corners: 'round' | 'sharp' = 'round',
): readonly Outline[] {
  const join = corners === 'round' ? JoinType.Round : JoinType.Miter;
  const grown = inflatePaths(
    [toClip(outline)],
    distance * perMillimetre,
    join,
    EndType.Polygon,
    10,
    flatness * perMillimetre,
  );
  return fromClip(grown);
}

/** What is left of the first outlines after the others are taken away; holes come back clockwise. */
export function subtractOutlines(from: readonly Outline[], away: readonly Outline[]): readonly Outline[] {
  return fromClip(difference(from.map(toClip), away.map(toClip), FillRule.NonZero));
}

/** Outlines with fewer corners that stray at most about `tolerance` mm from them; arcs come back as chords. */
export function simplifyOutlines(outlines: readonly Outline[], tolerance: number): readonly Outline[] {
  return fromClip(simplifyPaths(outlines.map(toClip), tolerance * perMillimetre, true));
}
