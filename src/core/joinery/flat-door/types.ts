import type { CellReference } from '../cell-reference.ts';
import type { MaterialId, PieceId } from '../ids.ts';

/**
 * Parameters of a flat door: a sheet with solid lippings. Its size and gaps come from a door frame of the project when
 * `frame` names one, from an opening of a cabinet front, else from `width`, `height` and the gaps. mm; the bevel in degrees.
 */
export interface FlatDoorParameters extends CellReference {
  readonly frame?: PieceId;
  readonly width?: number;
  readonly height?: number;
  readonly gapSide?: number;
  readonly gapTop?: number;
  readonly gapBottom?: number;
  /** The side of the hinges as seen from the side of their knuckles. */
  readonly hinged?: 'left' | 'right';
  /** Of the sheet as measured when left out. */
  readonly thickness?: number;
  readonly lipping?: number;
  readonly hingeLipping?: number;
  readonly lockLipping?: number;
  readonly lipJoint?: 'butt' | 'mitre' | 'corner-block';
  readonly cornerRadius?: number;
  readonly bevelDegrees?: number;
  /** Slots in each of the two bands; 0 for none. */
  readonly slots?: number;
  readonly slotsRun?: 'upright' | 'across';
  readonly slotWidth?: number;
  readonly slotLength?: number;
  /** Outside to outside of the slots of a band. */
  readonly slotZone?: number;
  /** From the upper or lower edge of the door to the band. */
  readonly slotEdge?: number;
  /** Pivot of the hinges beyond the edge of the door, and proud of its face. */
  readonly pivotBeyond?: number;
  readonly pivotProud?: number;
  readonly hingeLength?: number;
  /** How deep the body of a lock goes in from the edge; 0 for a latch on the face. */
  readonly lockDepth?: number;
  readonly battens?: 'auto' | 'always' | 'none';
  readonly materials: { readonly core: MaterialId; readonly lipping: MaterialId };
}
