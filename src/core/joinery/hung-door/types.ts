import type { CellReference } from '../cell-reference.ts';
import type { PieceId } from '../ids.ts';

/**
 * How a door hangs: size and gaps from a door frame of the project when `frame` names one, from an opening of a cabinet front, else from `width`, `height`
 * and the gaps. mm; the bevel in degrees.
 */
export interface HungDoorParameters extends CellReference {
  readonly frame?: PieceId;
  readonly width?: number;
  readonly height?: number;
  readonly gapSide?: number;
  readonly gapTop?: number;
  readonly gapBottom?: number;
  /** The side of the hinges as seen from the side of their knuckles. */
  readonly hinged?: 'left' | 'right';
  readonly bevelDegrees?: number;
  /** Pivot of the hinges beyond the edge of the door, and proud of its face. */
  readonly pivotBeyond?: number;
  readonly pivotProud?: number;
  readonly hingeLength?: number;
}
