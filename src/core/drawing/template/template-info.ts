import type { Part } from '#core/joinery';

/** What a template says besides the part itself. */
export interface TemplateInfo {
  readonly job: string;
  readonly piece: string;
  readonly seenFrom: string;
  /** Printed across every page, as `DO NOT CUT`. */
  readonly stamp?: string;
}

/** The direction in the part's own view that points up in the boat, radians; null when the part lies flat. */
export function upDirection(part: Part): number | null {
  const [placement] = part.placements;
  if (!placement) return null;
  const { x, y } = { x: placement.xAxis.y, y: placement.yAxis.y };
  return Math.hypot(x, y) < 0.7 ? null : Math.atan2(y, x);
}
