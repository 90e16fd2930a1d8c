import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { depthOf, readHull } from '../hull/hull.ts';
import { placedCorners } from '../parts.ts';
import type { BuildContext, Part } from '../types.ts';
import type { DrawerLayout } from './sizes.ts';

const show = markSize;
const clearOfHull = 10; // mm behind the back of a drawer (joinery B5.7)

/** The closed box against the hull behind it, where that has been measured (joinery B5.7, G18). */
export function checkHullBehind(
  { book, choices }: DrawerLayout,
  parts: readonly Part[],
  context: BuildContext,
): readonly Problem[] {
  if (!context.shape?.sections) return [];
  const read = readHull(context.shape, context.shapeName ?? 'hull', {});
  if (!read.ok) return read.problems;
  const hull = read.value;
  const corners = parts
    .filter(({ name }) => /^(Side|Back)/.test(name))
    .flatMap((part) => part.placements.flatMap((at) => placedCorners(part, at)));
  if (corners.length === 0) return [];
  const heights = corners.map(({ y }) => choices.heightAbove + y);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const reach = book.value('setback') + book.value('Lb');
  const places = hull.stations.flatMap((station) =>
    [low, high].map((height) => ({ height, depth: depthOf(station, height), at: station.at })),
  );
  const ways = hull.obstacles
    .filter(({ box }) => box.maxY > low && box.minY < high)
    .map(({ box, from }) => ({ height: box.minY, depth: box.minX, at: from }));
  const worst = [...places, ...ways].sort((a, b) => a.depth - b.depth)[0];
  if (!worst || worst.depth - reach >= clearOfHull) return [];
  return [
    {
      severity: 'stop',
      code: 'drawer-hits-hull',
      message: `Drawer hits the hull: at ${show(worst.height)} up it is ${show(worst.depth)} deep there, and the drawer reaches ${show(reach)} and wants ${show(clearOfHull)} free behind it.`,
      remedy: `Enter a clear depth of ${show(Math.floor(worst.depth - clearOfHull))} at the most, or set the opening higher.`,
      source: 'joinery B5.7, G18',
    },
  ];
}
