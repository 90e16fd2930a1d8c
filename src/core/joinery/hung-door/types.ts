import type { CellReference } from '../cell-reference.ts';
import type { PieceId } from '../ids.ts';

/** What holds a door shut. */
export type DoorLock = 'face-latch' | 'mortise-lock' | 'rim-lock' | 'turn-button' | 'none';

/** Which door of an opening it is: the only one, or of two that meet the one that opens first or the one that is bolted. */
export type DoorLeaf = 'whole' | 'first' | 'second';

/** The lock of a door; what is left out is usual for its kind. mm. */
export interface LockParameters {
  readonly lock?: DoorLock;
  /** Middle of the handle above the lower edge of the door. */
  readonly lockHeight?: number;
  /** From the lock edge to the middle of the handle. */
  readonly lockBackset?: number;
  /** How deep the case of a lock goes in from the edge. */
  readonly lockDepth?: number;
  readonly lockCaseHeight?: number;
  readonly lockCaseThickness?: number;
  readonly forendHeight?: number;
  readonly forendWidth?: number;
  readonly forendThickness?: number;
}

/** Two doors that meet in one opening. mm. */
export interface LeafParameters {
  readonly leaf?: DoorLeaf;
  readonly meeting?: 'gap' | 'rebate';
  readonly meetingGap?: number;
  /** How far the door that opens first laps over the other. */
  readonly meetingRebate?: number;
}

/**
 * How a door hangs: size and gaps from a door frame of the project when `frame` names one, from an opening of a cabinet front, else from `width`, `height`
 * and the gaps; of two doors the width is that of both. mm; the bevel in degrees.
 */
export interface HungDoorParameters extends CellReference, LockParameters, LeafParameters {
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
