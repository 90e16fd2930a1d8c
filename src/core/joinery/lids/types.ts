import type { MaterialId } from '../ids.ts';

/**
 * Parameters of loose lids over a berth or locker on cleats and cross bearers (joinery B10). The aperture is a rectangle as
 * entered, or a measured opening or outline seen from above, tapered or not. mm.
 */
export interface LidsParameters {
  /** Along the row of lids, and across it from cleat to cleat. */
  readonly length?: number;
  readonly width?: number;
  /** By their length and mass when left out. */
  readonly lids?: number;
  readonly gap?: number;
  readonly cleatWidth?: number;
  readonly cleatThickness?: number;
  readonly bearerWidth?: number;
  readonly holeDiameter?: number;
  /** Middle of the finger hole from the front edge of a lid. */
  readonly holeIn?: number;
  readonly vents?: boolean;
  readonly ventDiameter?: number;
  readonly ventPitch?: number;
  readonly materials: { readonly lids: MaterialId; readonly cleats: MaterialId };
}
