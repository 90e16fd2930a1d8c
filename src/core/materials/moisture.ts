/**
 * Moisture content of wood in percent, at rest in air of this relative humidity (percent) and temperature (°C).
 * Wood Handbook, FPL-GTR-190 (2010), Eq. 4-5 in degrees Celsius; meant for 0 to 55 °C and up to 95 %.
 */
export function equilibriumMoisture(humidityPercent: number, celsius: number): number {
  const h = humidityPercent / 100;
  const w = 349 + 1.29 * celsius + 0.0135 * celsius ** 2;
  const k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius ** 2;
  const k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius ** 2;
  const k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius ** 2;
  const kh = k * h;
  const bound = k1 * kh + k1 * k2 * kh ** 2;
  return (1800 / w) * (kh / (1 - kh) + (bound + k1 * k2 * kh ** 2) / (1 + bound));
}

/** Density in kg/m³ of wood of specific gravity `gravity` (dry mass over volume at this moisture, percent). Wood Handbook ch. 4. */
export function densityFromGravity(gravity: number, moisturePercent: number): number {
  return 1000 * gravity * (1 + moisturePercent / 100);
}
