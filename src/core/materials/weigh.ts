const cubicMillimetresPerCubicMetre = 1e9;

/** Mass in kg of a block, sizes in mm, density in kg/m³. */
export function weigh(
  size: { readonly length: number; readonly width: number; readonly thickness: number },
  density: number,
): number {
  return weighVolume(size.length * size.width * size.thickness, density);
}

/** Mass in kg of a volume in mm³, density in kg/m³. */
export function weighVolume(volume: number, density: number): number {
  return (volume / cubicMillimetresPerCubicMetre) * density;
}
