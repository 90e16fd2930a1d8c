import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { depthOf, readHull, type Hull } from '../hull/hull.ts';
import { placedCorners } from '../parts.ts';
import type { BuildContext, Part } from '../types.ts';
import type { DrawerLayout } from './sizes.ts';

const show = markSize;
const clearOfHull = 10; // mm behind the back of a drawer (joinery B5.7)

/** The closed box and its runners against the hull behind it, where that has been measured (joinery B5.7, G18). */
export function checkHullBehind(
  layout: DrawerLayout,
  parts: readonly Part[],
  context: BuildContext,
): readonly Problem[] {
  if (!context.shape?.sections) return [];
  const read = readHull(context.shape, context.shapeName ?? 'hull', {});
  if (!read.ok) return read.problems;
  const hull = read.value;
  return [...checkBox(layout, parts, hull), ...checkRunners(layout, parts, hull)];
}

function checkBox({ book, choices }: DrawerLayout, parts: readonly Part[], hull: Hull): readonly Problem[] {
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

/** Runners lie lower than the box, where a flared hull comes in further (joinery B5.7). */
function checkRunners({ choices }: DrawerLayout, parts: readonly Part[], hull: Hull): readonly Problem[] {
  const corners = parts
    .filter(({ name }) => /^(Runner|Guide|Kicker|Side rail)/.test(name))
    .flatMap((part) => part.placements.flatMap((at) => placedCorners(part, at)));
  const places = corners.flatMap(({ y, z }) => {
    const height = choices.heightAbove + y;
    return hull.stations.map((station) => ({ height, reach: -z, depth: depthOf(station, height) }));
  });
  const worst = places.sort((a, b) => a.depth - a.reach - (b.depth - b.reach))[0];
  if (!worst || worst.depth >= worst.reach) return [];
  return [
    {
      severity: 'warn',
      code: 'runners-hit-hull',
      message: `The runners reach ${show(worst.reach)} back; at ${show(worst.height)} up the hull is ${show(worst.depth)} deep.`,
      remedy:
        worst.depth < 1
          ? 'There is no room for runners at that height: raise the drawer, or leave it out.'
          : `Enter a clear depth of ${show(Math.floor(worst.depth))} at the most, taken at the lower edge of the runners, or saw them off to fit.`,
      source: 'joinery B5.7, G18',
    },
  ];
}
