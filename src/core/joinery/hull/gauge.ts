import type { Hull, HullStation } from './hull.ts';

/** A bevel of the hull as the gauge read it. */
export interface GaugeBevel {
  /** Degrees against square to the section, positive where the hull falls away towards higher places along the boat. */
  readonly degrees: number;
  /** Names of the sections it was read at. */
  readonly read: string;
}

/** Read further along the boat than this a bevel says nothing of a place, mm (common practice, no source). */
export const gaugeReach = 150;

/** The bevel of the hull at a place and height by the gauge, between two sections in proportion; null where none was read near. Joinery A6. */
export function readGauge({ stations }: Hull, at: number, height: number): GaugeBevel | null {
  const read = stations.filter(({ bevels = [] }) => bevels.length > 0);
  const below = read.findLast((one) => one.at <= at + 1e-6);
  const above = read.find((one) => one.at >= at - 1e-6);
  const isBetween =
    below !== undefined && above !== undefined && above.at - below.at <= 2 * gaugeReach && above !== below;
  if (isBetween) {
    const share = (at - below.at) / (above.at - below.at);
    const degrees = bevelOf(below, height) * (1 - share) + bevelOf(above, height) * share;
    return { degrees, read: `${nameOf(below)} and ${nameOf(above)}` };
  }
  const [nearest] = read.toSorted((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at));
  if (!nearest || Math.abs(nearest.at - at) > gaugeReach) return null;
  return { degrees: bevelOf(nearest, height), read: nameOf(nearest) };
}

/** The heights at which the gauge was put on near a place, from the foot up. */
export function gaugeHeights({ stations }: Hull, at: number): readonly number[] {
  const heights = stations
    .filter((one) => Math.abs(one.at - at) <= gaugeReach)
    .flatMap(({ bevels = [] }) => bevels.map(({ height }) => height));
  return [...new Set(heights)].sort((a, b) => a - b);
}

function nameOf({ name, at }: HullStation): string {
  return name ?? `the section at ${Math.round(at)}`;
}

/** In proportion between two readings, beyond them as at the last. */
function bevelOf({ bevels = [] }: HullStation, height: number): number {
  const sorted = bevels.toSorted((a, b) => a.height - b.height);
  const degrees = ({ angle }: { readonly angle: number }): number => (angle * 180) / Math.PI;
  const above = sorted.find((one) => one.height >= height);
  const below = sorted.findLast((one) => one.height <= height);
  if (!above || !below) return degrees(above ?? below ?? { angle: 0 });
  const span = above.height - below.height;
  return span > 0
    ? degrees(below) + ((degrees(above) - degrees(below)) * (height - below.height)) / span
    : degrees(below);
}

/**
 * How much wood cut to the drawn curve stands too far back at one of its faces, when the gauge is right and the curve is at
 * half thickness, mm (joinery G25); `drawn` and `gauge` = how much nearer the hull is at one face, by the curve and by the
 * gauge, `sawn` = what the bevelled edge takes off its shorter face, null when cut square.
 */
export function excessBehind(given: {
  readonly drawn: number;
  readonly gauge: number;
  readonly sawn: number | null;
}): number {
  const [drawn, gauge] = [given.drawn, given.gauge];
  if (given.sawn === null) return (Math.abs(gauge) - Math.abs(drawn)) / 2;
  // the deeper face as drawn, the shorter one by the bevel sawn; either may stand too far back
  const way = Math.sign(given.sawn) || 1;
  const deep = (Math.abs(drawn) - way * gauge) / 2;
  const short = Math.abs(drawn) / 2 - Math.abs(given.sawn) + (way * gauge) / 2;
  return Math.max(deep, short);
}
