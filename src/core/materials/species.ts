/** A timber with what moves, weighs and bends. */
export interface Species {
  readonly name: string;
  readonly botanical: string;
  readonly group: 'hardwood' | 'softwood';
  /** At 12 % moisture, kg/m³. */
  readonly density: number;
  /** Modulus of elasticity at 12 % moisture, MPa; bending tests, shear included. */
  readonly modulus: number;
  /** Change of width per width and percent of moisture, quarter-sawn. */
  readonly radial: number;
  /** The same, flat-sawn. */
  readonly tangential: number;
  readonly confidence: 'high' | 'medium' | 'low';
  readonly movementSource: string;
  readonly densitySource: string;
  readonly note?: string;
}

/** Movement where the species is not known (joinery D1). */
export const unknownMovement = 0.003;
/** Movement of plywood in its plane (joinery D1, from memory). */
export const plywoodMovement = 0.0003;
/** Density where nothing is known: a middling hardwood, kg/m³; common practice, no source. */
export const unknownDensity = 650;
