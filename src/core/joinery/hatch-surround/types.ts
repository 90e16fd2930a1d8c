import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a hatch surround: a ring over the edge of an aperture with rounded corners, and the lining of its depth.
 * The aperture is that of its shape, at its narrowest, or entered. mm.
 */
export interface HatchSurroundParameters {
  readonly width?: number;
  readonly height?: number;
  /** Of the aperture's corners. */
  readonly cornerRadius?: number;
  /** Deck and lining together, measured at 8 places or so. */
  readonly depths?: readonly number[];
  readonly form?: 'segments' | 'one-piece';
  /** Segments in each corner. */
  readonly segments?: number;
  readonly ringWidth?: number;
  readonly thickness?: number;
  readonly reveal?: number;
  /** How far a loose tenon or a spline goes into each piece of the ring. */
  readonly tenonDepth?: number;
  /** Of the pieces of the ring with each other. */
  readonly joint?: 'loose-tenon' | 'mitre-and-spline' | 'half-lap';
  /** How far pieces in half-laps lie over each other. */
  readonly lapLength?: number;
  readonly lining?: 'solid' | 'none';
  readonly liningThickness?: number;
  readonly materials: { readonly ring: MaterialId; readonly lining?: MaterialId };
}
