/** A kind of sheet as the trade sells it, mm; what lies in the rack is measured, never taken from here. */
export interface SheetGood {
  readonly name: string;
  readonly kind: 'birch plywood' | 'okoume plywood';
  readonly nominal: number;
  /** Mean, least and most thickness from the maker; absent where the source gives none. */
  readonly mean?: number;
  readonly min?: number;
  readonly max?: number;
  /** kg/m³. */
  readonly density: number;
  readonly massPerM2Kg: number;
  readonly source: string;
}

const birchSource = 'data sheet of a birch plywood maker';
const okoumeSource = 'table of an okoume plywood supplier';

/** Nominal, mean, least, most, kg/m³. */
const birch = [
  [4, 3.8, 3.5, 4.1, 660],
  [6.5, 6.4, 6.1, 6.9, 670],
  [9, 9.2, 8.8, 9.5, 710],
  [12, 12, 11.5, 12.5, 695],
  [15, 14.9, 14.3, 15.3, 690],
  [18, 17.7, 17.1, 18.1, 685],
  [21, 20.5, 20, 20.9, 680],
  [24, 23.4, 22.9, 23.7, 680],
  [27, 26.5, 25.8, 26.8, 673],
  [30, 29.4, 28.7, 29.9, 672],
] as const;

/** Nominal, kg/m². */
const okoume = [
  [4, 1.8],
  [5, 2.3],
  [6, 2.7],
  [8, 3.6],
  [9, 4.1],
  [10, 4.5],
  [12, 5.4],
  [15, 6.8],
  [18, 8.1],
  [20, 9],
] as const;

/** Sheets for boat joinery. */
export const sheetGoods: readonly SheetGood[] = [
  ...birch.map(([nominal, mean, min, max, density]) => ({
    name: `Birch plywood ${nominal}`,
    kind: 'birch plywood' as const,
    nominal,
    mean,
    min,
    max,
    density,
    massPerM2Kg: (density * mean) / 1000,
    source: birchSource,
  })),
  ...okoume.map(([nominal, massPerM2Kg]) => ({
    name: `Okoume plywood ${nominal}`,
    kind: 'okoume plywood' as const,
    nominal,
    density: 450,
    massPerM2Kg,
    source: okoumeSource,
  })),
];

/**
 * Least and most thickness of sanded plywood of this nominal one, mm: -(0.4 + 0.03 t), +(0.2 + 0.03 t).
 * EN 315:2000, from memory; the same formulas stand in GB/T 9846.
 */
export function plywoodLimits(nominal: number): { readonly min: number; readonly max: number } {
  return { min: nominal - (0.4 + 0.03 * nominal), max: nominal + (0.2 + 0.03 * nominal) };
}
