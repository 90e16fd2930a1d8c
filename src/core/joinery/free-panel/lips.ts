import type { Outline, Point } from '#core/geometry';
import { frontPlane, layFlat, type LaidFlat } from '../flat/lay-flat.ts';
import { angleAt, insetSides, step, wayTo } from '../flat/polygon.ts';
import { tangentLength } from '../flat/round-corners.ts';
import { radiiOf, type PanelLayout } from './sizes.ts';

/** Puts the sizes of the solid edges into the working; those of sides that are not there are left out. */
export function sizeLips(layout: PanelLayout): PanelLayout {
  const { lipped, side, core, book } = layout;
  if (!core) return layout;
  for (const at of [...lipped].filter((one) => side.includes(one)).sort((a, b) => a - b)) {
    const { length, width } = layLip(layout, at);
    const label = `solid edge of side ${at + 1}`;
    book.put(`lip_${at + 1}_L`, length, `${label}, length over its points`, 'outline less the solid edges');
    book.put(`lip_${at + 1}_W`, width, `${label}, width`, 'outline less the solid edges');
  }
  return layout;
}

/** A solid edge where it lies, its outer edge the face edge. */
export function layLip(layout: PanelLayout, at: number): LaidFlat {
  const { outline, along } = lipOutline(layout, at);
  return layFlat(outline, { x: -along.x, y: -along.y }, frontPlane());
}

/** A solid edge: mitred to its neighbours, cut along a side without one, rounded where the panel is. */
function lipOutline(layout: PanelLayout, at: number): { readonly outline: Outline; readonly along: Point } {
  const { points, side, choices, lipped } = layout;
  const inner = insetSides(
    points,
    side.map((one) => (lipped.has(one) ? layout.book.value('a') : 0)),
  );
  const i = side.indexOf(at);
  const next = (i + 1) % points.length;
  const pick = (list: readonly Point[], k: number): Point => list[k] ?? { x: 0, y: 0 };
  const [from, to] = [pick(points, i), pick(points, next)];
  const radii = radiiOf(choices, points, side);
  const before = side[(i + side.length - 1) % side.length] ?? 0;
  const after = side[next] ?? 0;
  const start = roundEnd({ points, k: i, radius: radii[i] ?? 0, halved: lipped.has(before) });
  const end = roundEnd({ points, k: next, radius: radii[next] ?? 0, halved: lipped.has(after) });
  const outer = [...(start?.second ?? [from]), ...(end?.first ?? [to])];
  return {
    outline: [...outer, pick(inner ?? points, next), pick(inner ?? points, i)],
    along: wayTo(from, to),
  };
}

/** The arc of a rounded corner as the two solid edges that meet there have it: halved on the mitre, or whole. */
function roundEnd(corner: {
  readonly points: readonly Point[];
  readonly k: number;
  readonly radius: number;
  readonly halved: boolean;
}): { readonly first: Outline; readonly second: Outline } | null {
  const { points, k, radius, halved } = corner;
  if (radius <= 0) return null;
  const angle = angleAt(points, k);
  const here = points[k] ?? { x: 0, y: 0 };
  const count = points.length;
  const reach = tangentLength(radius, angle);
  const start = step(here, wayTo(here, points[(k + count - 1) % count] ?? here), reach);
  const end = step(here, wayTo(here, points[(k + 1) % count] ?? here), reach);
  const turn = ((180 - angle) * Math.PI) / 180;
  if (!halved) {
    const whole = [{ ...start, bulge: Math.tan(turn / 4) }, end];
    return { first: whole, second: whole };
  }
  const middle = step(
    here,
    wayTo(here, { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 }),
    radius * (1 / Math.sin((angle * Math.PI) / 360) - 1),
  );
  const bulge = Math.tan(turn / 8);
  return { first: [{ ...start, bulge }, middle], second: [{ ...middle, bulge }, end] };
}
