import type { MaterialId } from '../ids.ts';
import type { EndOnFace } from '../joints/joint-kinds.ts';

/**
 * Parameters of a companion or box step: a box of one or more risers that lifts out, or a flight of treads between two
 * strings. mm; slopes in degrees.
 */
export interface StepParameters {
  readonly form?: 'box' | 'flight';
  /** From the sole to the landing. */
  readonly totalRise: number;
  readonly mostRiser?: number;
  readonly going?: number;
  readonly width?: number;
  /** Of the top tread of a box, and of each tread of a flight. */
  readonly treadDepth?: number;
  /** Risers that the box itself has. */
  readonly boxRisers?: number;
  readonly overhang?: number;
  readonly kickHeight?: number;
  readonly kickDepth?: number;
  /** How far the sole falls across, and to which side. */
  readonly soleSlopeDegrees?: number;
  readonly fallsTo?: 'left' | 'right';
  /** Clear width it must go between, where there is one. */
  readonly between?: number;
  readonly treadThickness?: number;
  /** How treads and risers stand on the sides; `rebate`: the risers of a box, the treads being housed. */
  readonly joint?: EndOnFace | 'rebate';
  readonly materials: { readonly sides: MaterialId; readonly treads: MaterialId };
}
