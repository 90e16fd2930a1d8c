import type { Method, Reading } from './types.ts';

/** One way of measuring: what it is, how far it may be trusted, and when to use it. */
export interface MethodEntry {
  readonly words: string;
  readonly use: string;
  /** One standard deviation in mm (M12: degrees) of a reading over `length` mm. */
  readonly sigma: (length: number) => number;
}

const always = (sigma: number) => () => sigma;

/** The methods M1 to M14 with their accuracy. Source: joinery A1 (common practice). */
export const methods: Readonly<Record<Method, MethodEntry>> = {
  M1: {
    words: 'steel tape, hook on the edge, read at the mark',
    use: 'Any distance up to 3 m.',
    sigma: (length) => (length <= 1000 ? 0.5 : 0.7),
  },
  M2: {
    words: 'tape between two faces, case length added',
    use: 'Avoid: two sticks are better.',
    sigma: always(1),
  },
  M3: {
    words: 'two sliding sticks, then the tape on the bench',
    use: 'Best for widths, heights and diagonals; sharpen the points.',
    sigma: always(0.3),
  },
  M4: { words: 'steel rule', use: 'Short distances up to 600 mm.', sigma: always(0.2) },
  M5: { words: 'caliper', use: 'Thicknesses.', sigma: always(0.05) },
  M6: {
    words: 'plumb bob, spirit level or long square on the chosen datum',
    use: 'Lean and rise; afloat only against the boat’s own datum.',
    // 1.0 per m; never finer than the rule it is read on (common practice)
    sigma: (length) => Math.max(0.5, length / 1000),
  },
  M7: {
    words: 'straightedge and feeler or rule',
    use: 'Bow of an edge at mid length, once per edge.',
    sigma: always(0.3),
  },
  M8: { words: 'two strings from corner to corner', use: 'Twist: twice the gap.', sigma: always(0.5) },
  M9: { words: 'batten as baseline with ordinates', use: 'Curved hull and deckhead.', sigma: always(0.7) },
  M10: { words: 'joggle stick', use: 'Any outline, no arithmetic aboard.', sigma: always(1.25) },
  M11: { words: 'compass with a fixed span', use: 'Nearly parallel edges only.', sigma: always(0.7) },
  M12: { words: 'bevel gauge on a bevel board', use: 'Angles.', sigma: always(0.3) },
  M13: { words: 'cardboard template', use: 'Outlines; two crosses to check the scale.', sigma: always(1) },
  M14: { words: 'plywood template, strips glued', use: 'Several edges at once.', sigma: always(0.5) },
};

const usualMethods: Readonly<Partial<Record<Reading['kind'], Method>>> = {
  angle: 'M12',
  bow: 'M7',
  offset: 'M9',
  ordinate: 'M9',
  tick: 'M10',
  twist: 'M8',
  thickness: 'M5',
};

/** Error of a traced end of the stick, mm (joinery A7). */
const traced = 0.3;

/** One standard deviation of a tip square to its stick, mm: `reach` is what lies beyond the traced edge over the edge. Joinery A7. */
export function tipSigma(reach: number): number {
  return traced * Math.hypot(1 + reach, reach);
}

/** One standard deviation of the station of an ordinate beside that of the ordinate (joinery A1, M9: 0.5 beside 0.7). */
const stationShare = 0.5 / 0.7;

/** One standard deviation of a single look at the station of an ordinate or a tick, mm. */
export function stationSigma(reading: Extract<Reading, { kind: 'ordinate' | 'tick' }>): number {
  return sigmaOf(reading) * (reading.kind === 'ordinate' ? stationShare : 1);
}

/**
 * One standard deviation of a single look at this reading, mm (an angle: degrees): as given, else by method, else by the
 * usual method of its kind, M1 for a tape. `run` is the distance
 * between its points where it is not the reading itself (plumb and level), 1 m when not known.
 */
export function sigmaOf(reading: Reading, run = 1000): number {
  if (reading.sigma !== undefined) return reading.sigma;
  const offset = reading.kind === 'plumb' || reading.kind === 'level';
  if (reading.kind === 'tick' && reading.reach !== undefined) return tipSigma(reading.reach);
  if (reading.kind === 'angle') return methods.M12.sigma(run); // the only one that gives degrees
  return methods[reading.method ?? usualMethods[reading.kind] ?? 'M1'].sigma(
    offset ? run : Math.abs(reading.value),
  );
}

/** Distance between the points of a plumb or level reading as another reading gives it, mm; undefined when none does. */
export function runOf(reading: Reading, readings: readonly Reading[]): number | undefined {
  if (reading.kind !== 'plumb' && reading.kind !== 'level') return undefined;
  const ends = [reading.from, reading.to];
  return readings.find(
    (other) => other.kind === 'distance' && ends.includes(other.from) && ends.includes(other.to),
  )?.value;
}
