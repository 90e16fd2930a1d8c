/** Percent of moisture at which wood begins to shrink, for most domestic species (Wood Handbook, Table 13-5, footnote). */
const fibreSaturation = 30;

/** Change of a width in mm when its moisture changes by so many percent; growing is positive. Wood Handbook Eq. 13-2, 6 to 14 %. */
export function movement(width: number, coefficient: number, changePercent: number): number {
  return width * coefficient * changePercent;
}

/**
 * The same from the shrinkage of a species (percent, green to oven-dry), for a wider range of moisture.
 * Wood Handbook Eq. 13-3; neither moisture above fibre saturation.
 */
export function movementFromShrinkage(
  width: number,
  shrinkagePercent: number,
  fromPercent: number,
  toPercent: number,
): number {
  return (
    (width * (toPercent - fromPercent)) /
    ((fibreSaturation * 100) / shrinkagePercent - fibreSaturation + fromPercent)
  );
}

/** Movement per percent of moisture from the shrinkage (percent, green to oven-dry). Wood Handbook, Table 13-5, footnote. */
export function coefficientFromShrinkage(shrinkagePercent: number, saturation = fibreSaturation): number {
  return shrinkagePercent / saturation / (100 - (shrinkagePercent * (saturation - 10)) / saturation);
}

/** Movement of a board whose growth rings meet its face at `angle` radians: 0 flat-sawn, a quarter turn quarter-sawn. Plane strain, shear left out. */
export function coefficientAtAngle(radial: number, tangential: number, angle: number): number {
  return tangential * Math.cos(angle) ** 2 + radial * Math.sin(angle) ** 2;
}
