import type { Point3 } from '#core/geometry';
import { makeOpeningReading, openingChecklist, sigmaOf } from '#core/measuring';
import type { ChecklistLine, OpeningKey, Reading } from '#core/measuring';
import type { Random } from '#core/numerics';

export type Corner = 'BL' | 'BR' | 'TR' | 'TL';
export type Side = 'left' | 'right' | 'head' | 'sill';

/** A real opening: corners in space (z towards the viewer), bow of each side positive outwards, upright turned by `tilt`. */
export interface TrueOpening {
  readonly corners: Readonly<Record<Corner, Point3>>;
  readonly bow: Readonly<Record<Side, number>>;
  readonly tilt: number;
}

/** One standard deviation of what real openings show, mm and radians. Invented: no source gives any. */
export const spread = { lean: 6, taper: 3, slope: 3, bow: 0.8, twist: 3, tilt: 0.004 } as const;

/** An opening of a passage door: a rectangle that leans, tapers, slopes at sill and head, bows and is twisted. */
export function drawOpening(random: Random): TrueOpening {
  const [width, height] = [random.whole(540, 760), random.whole(1500, 1900)];
  const lean = spread.lean * random.normal();
  const taper = spread.taper * random.normal();
  const [sill, head] = [spread.slope * random.normal(), spread.slope * random.normal()];
  const bow = () => spread.bow * random.normal();
  return {
    corners: {
      BL: { x: 0, y: 0, z: 0 },
      BR: { x: width, y: sill, z: 0 },
      TR: { x: width + lean + taper, y: height + head, z: spread.twist * random.normal() },
      TL: { x: lean - taper, y: height - head, z: 0 },
    },
    bow: { left: bow(), right: bow(), head: bow(), sill: bow() },
    tilt: spread.tilt * random.normal(),
  };
}

/** What exact tools would read, mm. */
export function trueValue(line: ChecklistLine, opening: TrueOpening): number {
  const from = opening.corners[line.from as Corner];
  const to = opening.corners[line.to as Corner];
  const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.z - from.z];
  const [cos, sin] = [Math.cos(opening.tilt), Math.sin(opening.tilt)];
  switch (line.kind) {
    case 'width':
      return widthAt(opening, line.at ?? 0.5);
    case 'plumb':
      return dx * cos + dy * sin;
    case 'level':
      return dy * cos - dx * sin;
    default:
      return Math.hypot(dx, dy, dz);
  }
}

/** Between the bowed sides at a fraction of both jambs. */
function widthAt({ corners, bow }: TrueOpening, at: number): number {
  const mix = (a: Point3, b: Point3, key: 'x' | 'y' | 'z') => a[key] + at * (b[key] - a[key]);
  const d = (key: 'x' | 'y' | 'z') => mix(corners.BR, corners.TR, key) - mix(corners.BL, corners.TL, key);
  return Math.hypot(d('x'), d('y'), d('z')) + 4 * at * (1 - at) * (bow.left + bow.right);
}

/** The readings of a set as a careful hand takes them: to whole mm, their scatter that of joinery A1. */
export function drawReadings(
  opening: TrueOpening,
  keys: readonly OpeningKey[],
  random: Random,
): readonly Reading[] {
  return keys.map((key) => {
    const line = lineOf(key);
    const exact = trueValue(line, opening);
    const run = trueValue({ ...line, kind: 'distance' }, opening);
    const sigma = sigmaOf(makeOpeningReading(key, exact), run);
    // Reading to whole mm scatters by 1/sqrt(12) mm, which the sigma of A1 holds already.
    const hand = Math.sqrt(Math.max(0, sigma * sigma - 1 / 12));
    return makeOpeningReading(key, Math.round(exact + hand * random.normal()));
  });
}

export function lineOf(key: OpeningKey): ChecklistLine {
  const line = openingChecklist.find((candidate) => candidate.key === key);
  if (!line) throw new Error(`no such reading: ${key}`);
  return line;
}

/** A slip of joinery A5 in a reading of this value, each kind as likely as another. */
export function slipOf(reading: Reading, random: Random): number {
  const { value } = reading;
  const pick = <T>(list: readonly T[]): T => list[random.whole(0, list.length - 1)] as T;
  const tens = () => pick([10, 20, 50, 100]) * pick([1, -1]);
  if (reading.kind === 'plumb' || reading.kind === 'level')
    return pick([() => -2 * value, () => pick([10, 20]) * pick([1, -1])])();
  const kinds = [
    () => pick([100, 10]), // E1
    tens, // E2
    () => swapDigits(value, random) - value, // E3
    () => -random.whole(60, 90), // E5
    () => value * (1 / Math.cos((5 * Math.PI) / 180) - 1), // E8
    () => -random.whole(3, 25), // E10
    () => value / 10 - value, // E13
  ];
  return Math.round(pick(kinds)());
}

function swapDigits(value: number, random: Random): number {
  const digits = [...String(value)];
  const at = random.whole(0, digits.length - 2);
  const [a = '', b = ''] = [digits[at], digits[at + 1]];
  digits.splice(at, 2, b, a);
  return Number(digits.join(''));
}
