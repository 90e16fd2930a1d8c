import type { MaterialId } from '../ids.ts';

/**
 * Parameters of an infill: a filler between something straight and the boat, scribed to it. Its gaps are read from its
 * shape, or entered as measured. mm; the bevel in degrees.
 */
export interface InfillParameters {
  readonly height?: number;
  /** Measured gaps from the foot upwards, and the heights at which; evenly spread when these are left out. */
  readonly gaps?: readonly number[];
  readonly heights?: readonly number[];
  /** The edge that meets the boat, as seen. */
  readonly scribed?: 'left' | 'right';
  readonly reveal?: number;
  /** One standard deviation of the gaps. */
  readonly sigma?: number;
  /** Of the frame it stands beside. */
  readonly thickness?: number;
  readonly bevelDegrees?: number;
  readonly materials: { readonly filler: MaterialId };
}
