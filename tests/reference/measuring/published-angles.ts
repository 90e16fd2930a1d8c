/**
 * Published networks with angles: fixed points, approximate coordinates, distances (m), angles and bearings (degrees,
 * minutes, seconds; clockwise) with their standard deviations, and the adjusted coordinates with their a-posteriori standard
 * deviations (cm) as printed. Transcribed from F. Krumm, Geodetic Network Adjustment Examples, rev. 3.5, 2020 (Univ.
 * Stuttgart), which takes them from C. D. Ghilani 2010, Adjustment Computations, 5th ed., at the page named.
 */
export interface AngleNetwork {
  readonly name: string;
  readonly held: readonly string[];
  readonly approximate: Readonly<Record<string, readonly [x: number, y: number]>>;
  readonly distances: readonly (readonly [from: string, to: string, metres: number, sigma: number])[];
  /** Clockwise at the first point, from the second to the third; sigma in seconds. */
  readonly angles: readonly (readonly [at: string, from: string, to: string, dms: Dms, sigma: number])[];
  /** Clockwise from north (the y axis). */
  readonly bearings: readonly (readonly [from: string, to: string, dms: Dms, sigma: number])[];
  readonly printed: Readonly<Record<string, readonly [x: number, sx: number, y: number, sy: number]>>;
  readonly dof: number;
  /** Sum of squares of residuals over standard deviations. */
  readonly chi2: number;
}

export type Dms = readonly [degrees: number, minutes: number, seconds: number];

export const traverse: AngleNetwork = {
  name: 'Ghilani, example 16.1, p. 300',
  held: ['Q', 'R', 'S', 'T'],
  approximate: { Q: [1000, 800], R: [1000, 1000], U: [1173.2, 1100], S: [1223, 1186.5], T: [1400, 1186.5] },
  distances: [
    ['R', 'U', 200, 0.05],
    ['U', 'S', 100, 0.08],
  ],
  angles: [
    ['R', 'Q', 'U', [240, 0, 0], 30],
    ['U', 'R', 'S', [150, 0, 0], 30],
    ['S', 'U', 'T', [240, 1, 0], 30],
  ],
  bearings: [],
  printed: { U: [1173.0886, 4.194, 1099.9872, 5.264] },
  dof: 3,
  chi2: 9.92316,
};

export const withBearing: AngleNetwork = {
  name: 'Ghilani, example 16.2, p. 307',
  held: ['Q'],
  approximate: { Q: [1000, 1000], R: [1003.06, 2640.01], S: [2323.07, 2638.47], T: [2661.75, 1096.07] },
  distances: [
    ['Q', 'R', 1640.016, 0.026],
    ['R', 'S', 1320.001, 0.024],
    ['S', 'T', 1579.123, 0.025],
    ['T', 'Q', 1664.524, 0.026],
    ['Q', 'S', 2105.962, 0.029],
    ['R', 'T', 2266.035, 0.03],
  ],
  angles: [
    ['Q', 'R', 'S', [38, 48, 50.7], 4],
    ['Q', 'S', 'T', [47, 46, 12.4], 4],
    ['Q', 'T', 'R', [273, 24, 56.5], 4.4],
    ['R', 'Q', 'S', [269, 57, 33.4], 4.7],
    ['S', 'R', 'T', [257, 32, 56.8], 4.7],
    ['T', 'S', 'Q', [279, 4, 31.2], 4.5],
    ['R', 'S', 'T', [42, 52, 51], 4.3],
    ['R', 'S', 'Q', [90, 2, 26.7], 4.5],
    ['S', 'Q', 'R', [51, 8, 45], 4.3],
    ['S', 'T', 'Q', [51, 18, 16.2], 4],
    ['T', 'R', 'S', [34, 40, 5.7], 4],
  ],
  bearings: [['Q', 'R', [0, 6, 24.5], 0.001]],
  printed: {
    R: [1003.0572, 0.001, 2640.0051, 0.597],
    S: [2323.0626, 0.549, 2638.4742, 0.66],
    T: [2661.7386, 0.59, 1096.0867, 0.727],
  },
  dof: 12,
  chi2: 1.49205,
};

/** An angle of example 16.2 that its data file marks as a blunder and leaves out. */
export const blunderAngle = ['T', 'Q', 'R', [46, 15, 2], 4] as const;

export const distancesAndAngles: AngleNetwork = {
  name: 'Ghilani, example 21.10, p. 459',
  held: ['A', 'B'],
  approximate: {
    A: [5600.544, 4966.236],
    B: [6061.624, 8043.173],
    C: [9787.823, 8038.529],
    D: [9260.886, 4843.911],
  },
  distances: [
    ['A', 'B', 3111.291, 0.01],
    ['B', 'C', 3726.22, 0.012],
    ['C', 'D', 3237.783, 0.01],
    ['D', 'A', 3662.372, 0.012],
    ['A', 'C', 5193.471, 0.016],
    ['B', 'D', 4524.471, 0.014],
  ],
  angles: [
    ['A', 'B', 'C', [45, 12, 34], 2.1],
    ['A', 'C', 'D', [38, 10, 54], 2.1],
    ['B', 'C', 'D', [44, 55, 43], 2.1],
    ['B', 'D', 'A', [53, 31, 23], 2.1],
    ['C', 'D', 'A', [44, 21, 59], 2.1],
    ['C', 'A', 'B', [36, 20, 26], 2.1],
    ['D', 'A', 'B', [43, 6, 11], 2.1],
    ['D', 'B', 'C', [54, 22, 0], 2.1],
  ],
  bearings: [],
  printed: { C: [9787.825, 9.523, 8038.5354, 16.778], D: [9260.8604, 9.761, 4843.9341, 15.117] },
  dof: 10,
  chi2: 863.004,
};
