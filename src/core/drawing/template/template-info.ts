import type { Part } from '#core/joinery';
import type { LengthSystem } from '#core/units';
import { formatSize } from '../scales.ts';

/** What a template says besides the part itself. */
export interface TemplateInfo {
  readonly job: string;
  readonly piece: string;
  readonly seenFrom: string;
  /** Printed across every page, as `DO NOT CUT`. */
  readonly stamp?: string;
  /** The unit of the sizes named; mm when left out. */
  readonly units?: LengthSystem;
}

/** How to print a template, for its legend. */
export function printNote(units: LengthSystem): string {
  const bar = units === 'mm' ? '100 mm' : `100 mm (${formatSize(100, units)} in)`;
  return `Print at 100 %, not fitted to the page. Measure both bars: ${bar}. Overlap sheets, cross on cross.`;
}

/** The direction that points up in the boat on the part as seen from its face side with its start end at the left, radians; null when the part lies flat. */
export function upDirection(part: Part, copy = 0): number | null {
  const placement = part.placements[copy] ?? part.placements[0];
  if (!placement) return null;
  // the view shows the part's y running down
  const { x, y } = { x: placement.xAxis.y, y: -placement.yAxis.y };
  return Math.hypot(x, y) < 0.7 ? null : Math.atan2(y, x);
}
