/** A wood screw by gauge, mm. */
export interface WoodScrew {
  readonly gauge: number;
  readonly shank: number;
  readonly root: number;
  readonly source: string;
}

const inch = 25.4;
const screwSource = 'published table of wood screw gauges; shank = 0.060 in + 0.013 in × gauge';

/** Gauge and root diameter in inches. */
const gauges = [
  [4, 0.075],
  [6, 0.094],
  [8, 0.112],
  [10, 0.13],
  [12, 0.148],
  [14, 0.165],
] as const;

/** Wood screws met in boat joinery. */
export const woodScrews: readonly WoodScrew[] = gauges.map(([gauge, root]) => ({
  gauge,
  shank: (0.06 + 0.013 * gauge) * inch,
  root: root * inch,
  source: screwSource,
}));

/** Diameter of the pilot hole, mm: 0.7 of the root in softwood, 0.9 in hardwood (American design guide; Wood Handbook ch. 8). */
export function pilotDiameter(screw: WoodScrew, group: 'hardwood' | 'softwood'): number {
  return screw.root * (group === 'hardwood' ? 0.9 : 0.7);
}

/**
 * Average ultimate withdrawal of a wood screw from side grain in newtons: 108.25 G² D L, mm. Wood Handbook ch. 8. For
 * comparing only: a design value is about a fifth of it, and end grain holds far less.
 */
export function ultimateWithdrawalN(gravity: number, diameter: number, threadLength: number): number {
  return 108.25 * gravity ** 2 * diameter * threadLength;
}
