import type { Shape } from '#core/geometry';
import { edgeUncertainties, type Adjustment } from '#core/measuring';
import type { Problem } from '#core/problems';
import type { Obstruction } from '#core/project';

/** The shape with the standard deviation of each edge, square to it. */
export function withUncertainty(shape: Shape): Shape {
  const spread = edgeUncertainties(shape);
  return {
    ...shape,
    edges: shape.edges.map((edge, at) => ({ ...edge, sigma: (spread[at] ?? 0) / 2 })),
  };
}

/** The points of an adjustment as the shape has them, with their deviations in its datum; and its tilt, where it is known. */
export function pointsOf(shape: Shape, { tilt }: Adjustment): Pick<Adjustment, 'points' | 'tilt'> {
  const deviation = (entry: string): number => {
    const at = shape.order.indexOf(entry);
    return Math.sqrt(Math.max(0, shape.covariance[at]?.[at] ?? 0));
  };
  return {
    points: Object.entries(shape.points).map(([id, { x, y }]) => ({
      ...{ id, x, y },
      sx: deviation(`${id}.x`),
      sy: deviation(`${id}.y`),
    })),
    tilt: tilt === null ? null : degreesOf(shape.tilt),
  };
}

/** An angle in degrees from -180 to 180. */
function degreesOf(angle: number): number {
  return (Math.atan2(Math.sin(angle), Math.cos(angle)) * 180) / Math.PI;
}

/** Twist and thickness, as far as they were read. */
export function asidesOf({ twist, thickness }: Adjustment): Pick<Shape, 'twist' | 'thickness'> {
  return {
    ...(twist && { twist: twist.value }),
    ...(thickness && { thickness: { least: thickness.least, most: thickness.most } }),
  };
}

/** What is in the way, in the frame of the shape. */
export function obstructionsOf(list: readonly Obstruction[] | undefined): Pick<Shape, 'obstructions'> {
  if (!list || list.length === 0) return {};
  return {
    obstructions: list.map(({ name, x, y, width, height, section }) => ({
      name,
      box: { minX: x, minY: y, maxX: x + width, maxY: y + height },
      ...(section !== undefined && { section }),
    })),
  };
}

/** The adjustment of a shape that is no network of readings: nothing checks itself, so only findings are left. */
export function plainAdjustment(seenFrom: string, findings: readonly Problem[]): Adjustment {
  const none = { points: [], readings: [], suspects: [], undetermined: [] };
  return { seenFrom, ...none, tilt: null, dof: 0, chi2: 0, advice: null, findings };
}
