import type { HungDoorParameters } from '../hung-door/types.ts';
import type { MaterialId } from '../ids.ts';

/** Parameters of a flat door: a sheet with solid lippings (joinery B2). mm. */
export interface FlatDoorParameters extends HungDoorParameters {
  /** Of the sheet as measured when left out. */
  readonly thickness?: number;
  readonly lipping?: number;
  readonly hingeLipping?: number;
  readonly lockLipping?: number;
  readonly lipJoint?: 'butt' | 'mitre' | 'corner-block';
  readonly cornerRadius?: number;
  /** Slots in each of the two bands; 0 for none. */
  readonly slots?: number;
  readonly slotsRun?: 'upright' | 'across';
  readonly slotWidth?: number;
  readonly slotLength?: number;
  /** Outside to outside of the slots of a band. */
  readonly slotZone?: number;
  /** From the upper or lower edge of the door to the band. */
  readonly slotEdge?: number;
  /** Of two doors that meet, as the one that opens first has it: whether the figure of the sheet runs on over both. */
  readonly figure?: 'own' | 'through';
  readonly battens?: 'auto' | 'always' | 'none';
  readonly materials: { readonly core: MaterialId; readonly lipping: MaterialId };
}
