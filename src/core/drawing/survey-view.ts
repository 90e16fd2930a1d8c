import type { Point, Shape } from '#core/geometry';
import type { Adjustment, Reading } from '#core/measuring';
import type { LengthSystem } from '#core/units';
import type { SketchRing } from './reading-sketch.ts';

/** An ordinate of a curved edge, from the straight line between its corners outwards, mm. */
export interface SurveyOrdinate {
  readonly from: string;
  readonly to: string;
  /** Along the line, from `from`. */
  readonly at: number;
  readonly value: number;
  /** It stands off the line of the others. */
  readonly isSuspect: boolean;
  /** Id of the curve. */
  readonly link: string;
}

export interface SurveyView {
  /** Null while the readings do not fix a shape. */
  readonly shape: Shape | null;
  readonly readings: readonly Reading[];
  readonly adjustment: Adjustment;
  /** mm of paper. */
  readonly width: number;
  /** mm of paper; 1.35 of the width when left out. */
  readonly height?: number;
  /** How many times too large what is out of square is drawn; 1 (true) when left out. */
  readonly exaggerate?: number;
  /** Ordinates of its curved edges. */
  readonly ordinates?: readonly SurveyOrdinate[];
  /** What is sketched while there is no shape; the corners of an opening when left out. */
  readonly ring?: SketchRing;
  /** Without the lines below it that say from where it is seen and what the signs mean; for where that stands beside it. */
  readonly isBare?: boolean;
  /** The unit readings are shown in; mm when left out. Residuals and uncertainties are always in mm. */
  readonly units?: LengthSystem;
}

/** The middle of some points. */
export function meanOf(points: readonly Point[]): Point {
  const n = Math.max(points.length, 1);
  return { x: points.reduce((s, p) => s + p.x, 0) / n, y: points.reduce((s, p) => s + p.y, 0) / n };
}
