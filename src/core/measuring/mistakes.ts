import { showMm } from './words.ts';
import type { Reading } from './types.ts';

/** A usual mistake that would explain a slip. */
export interface Mistake {
  /** Its name in joinery A5, as `E2`; left out where the rulebook has none. */
  readonly id?: string;
  readonly words: string;
  /** The slip it would give, mm, where it names a size. */
  readonly size?: number;
  /** Fits many small slips: never preferred to one of a distinct size. */
  readonly weak?: boolean;
}

/** How far a slip may lie from the size that names it, mm: at least these, more where the slip itself is vague (joinery A5). */
const nearMark = 2;
const nearTen = 1.5;

/** A slip to be explained: reading less what the others say, and how vague that is (two sigma, mm). */
export interface Slip {
  readonly reading: Reading;
  /** The value used: the reading, or the mean of its repeats. */
  readonly value: number;
  readonly slip: number;
  readonly vague?: number;
  /** The slip lies in the station of the reading. */
  readonly part?: 'station';
}

/** The usual mistakes that would give this slip, the most telling first; empty when none has this size. Source: joinery A5. */
export function matchMistakes(slip: Slip): readonly Mistake[] {
  const found = testsFor(slip).flatMap((test) => test(slip) ?? []);
  const miss = ({ size }: Mistake) => (size === undefined ? nearMark : Math.abs(size - slip.slip));
  // Distinct sizes first; in whole millimetres, so that the order of the tests decides between two that fit as well.
  const order = (a: Mistake, b: Mistake) =>
    Number(a.weak ?? false) - Number(b.weak ?? false) || Math.round(miss(a)) - Math.round(miss(b));
  return [...found].sort(order);
}

function testsFor({ reading: { kind }, part }: Slip): readonly ((slip: Slip) => Mistake | null)[] {
  if (part === 'station') return [wrongUnit, burntHundred, swappedDigits, byTens];
  if (kind === 'angle') return [oddLook, turnedSign, otherSideOfBevel, swappedDegrees];
  if (kind !== 'distance' && kind !== 'width') return [oddLook, turnedSign, wrongUnit, byTens];
  return [
    oddLook,
    wrongUnit,
    burntHundred,
    swappedDigits,
    wrongFace,
    byTens,
    burntTen,
    forgottenCase,
    bowedSides,
    askew,
    saggingTape,
    bentInCorner,
    slantedLook,
  ];
}

/** True when swapping two neighbouring digits of `read` gives `meant`, both to the whole mm, within `tolerance`. */
export function isDigitSwap(read: number, meant: number, tolerance: number): boolean {
  return digitSwap(read, meant, tolerance) !== null;
}

/** The number meant, when swapping two neighbouring digits of `read` gives it; null when no swap does. */
function digitSwap(read: number, meant: number, tolerance: number): number | null {
  const digits = String(Math.abs(Math.round(read)));
  for (let k = 0; k + 1 < digits.length; k += 1) {
    const swapped = Number(
      `${digits.slice(0, k)}${digits.charAt(k + 1)}${digits.charAt(k)}${digits.slice(k + 2)}`,
    );
    if (swapped !== Math.round(read) && Math.abs(swapped - Math.abs(meant)) <= Math.max(tolerance, 0.5))
      return swapped;
  }
  return null;
}

function within(slip: Slip, size: number, tolerance: number): boolean {
  return Math.abs(slip.slip - size) <= Math.max(tolerance, slip.vague ?? 0);
}

/** Of several looks one agrees with the other readings: the difference is already on paper. */
function oddLook({ reading, value, slip }: Slip): Mistake | null {
  const looks = [reading.value, ...(reading.repeats ?? [])];
  const meant = looks.find((look) => Math.abs(look - (value - slip)) <= nearMark);
  const odd = looks.find((look) => meant !== undefined && Math.abs(look - meant) > 2 * nearMark);
  if (meant === undefined || odd === undefined) return null;
  const words = `of its looks ${showMm(meant)} agrees with the other readings, ${showMm(odd)} does not`;
  const swapped = isDigitSwap(odd, meant, 0);
  return {
    size: slip,
    words: swapped ? `${words}: two digits swapped` : words,
    ...(swapped && { id: 'E3' }),
  };
}

function burntHundred(slip: Slip): Mistake | null {
  return burntMark(slip, 100);
}

function burntTen(slip: Slip): Mistake | null {
  return burntMark(slip, 10);
}

/** The tape is often started at a whole mark because its hook is worn. */
function burntMark(slip: Slip, mark: number): Mistake | null {
  if (!within(slip, mark, nearMark) || mark <= 1.5 * (slip.vague ?? 0)) return null;
  return { id: 'E1', size: mark, words: `started at the ${mark} mark of the tape and did not subtract it` };
}

function byTens(slip: Slip): Mistake | null {
  const sizes = [100, 50, 20, 10].flatMap((size) => [size, -size]);
  const size = sizes.find((s) => within(slip, s, nearTen) && Math.abs(s) > 1.5 * (slip.vague ?? 0));
  if (size === undefined) return null;
  const words = `misread by ${Math.abs(size)} mm (a mark too ${size > 0 ? 'far' : 'short'})`;
  return { id: 'E2', size, words };
}

function swappedDigits(slip: Slip): Mistake | null {
  const near = slip.value - slip.slip;
  const meant = digitSwap(slip.value, near, Math.max(nearMark, slip.vague ?? 0));
  if (meant === null || Math.abs(slip.slip) < 5) return null;
  const words = `two digits swapped when it was written down (${meant} meant)`;
  return { id: 'E3', size: Math.round(slip.value) - meant, words };
}

function forgottenCase(slip: Slip): Mistake | null {
  if (slip.slip > -60 || slip.slip < -90) return null;
  return { id: 'E5', words: 'the length of the tape’s case was not added' };
}

/** Shorter than this at five degrees is not told from scatter; joinery A5: 5 degrees on 640 gives 2.4. */
function askew({ value, slip }: Slip): Mistake | null {
  const degrees = slip > 0 ? (Math.acos((value - slip) / value) * 180) / Math.PI : 0;
  if (!(degrees >= 3 && degrees <= 7) || slip > 10) return null;
  return {
    id: 'E8',
    weak: true,
    words: `the tape was not held square across (about ${showMm(degrees)}° off)`,
  };
}

function saggingTape({ value, slip }: Slip): Mistake | null {
  const sag = slip > 0 ? Math.sqrt((3 * value * slip) / 8) : 0;
  if (value < 1000 || sag < 20 || sag > 45) return null;
  return { id: 'E9', weak: true, words: `the tape sagged (about ${showMm(sag)} mm in the middle)` };
}

/** A tape pushed into a corner bends there; what it reads is off by a little, seldom short (joinery A5). */
function bentInCorner({ slip, reading }: Slip): Mistake | null {
  const inside = reading.method === undefined || reading.method === 'M1' || reading.method === 'M2';
  if (!inside || slip < -1.5 || slip > 3.5 || Math.abs(slip) < 0.5) return null;
  return {
    id: 'E6',
    weak: true,
    words: 'the tape was bent up in the corner: take it with two sticks',
  };
}

/** Gap between tape and work times the tangent of the line of sight: 2 mm seen at 30 degrees gives 1.2 (joinery A5). */
function slantedLook({ slip }: Slip): Mistake | null {
  const size = 2 * Math.tan(Math.PI / 6);
  if (Math.abs(Math.abs(slip) - size) > 1) return null;
  return {
    id: 'E7',
    weak: true,
    words: 'the tape was read from the side, off the work',
  };
}

function wrongFace(slip: Slip): Mistake | null {
  const layer = slip.reading.toFace;
  const size = Math.abs(slip.slip);
  if (layer === undefined || layer === '' || size < 2) return null;
  const thickness = Number(/(\d+(?:\.\d+)?)/.exec(layer)?.[1] ?? NaN);
  const fits = Number.isNaN(thickness) ? size >= 3 && size <= 25 : Math.abs(size - thickness) <= nearMark;
  return fits ? { id: 'E10', words: `measured to the ${layer}, which is not the bare face` } : null;
}

function turnedSign(slip: Slip): Mistake | null {
  if (Math.abs(slip.value) < 2 || !within(slip, 2 * slip.value, nearMark)) return null;
  return { id: 'E11', words: 'left and right (or up and down) exchanged: the sign is turned' };
}

/** The bevel board was read on the other scale (common practice, no source). */
function otherSideOfBevel({ value, slip }: Slip): Mistake | null {
  const meant = value - slip;
  const near = (other: number) => Math.abs(other - meant) <= nearBevel && Math.abs(slip) > 2 * nearBevel;
  if (near(180 - value)) return { words: 'what is left to 180° was written down' };
  return near(90 - value) ? { words: 'what is left to 90° was written down' } : null;
}

/** Twice the scatter of a bevel gauge and of the angle the others give, degrees (joinery A1, M12). */
const nearBevel = 1.5;

function swappedDegrees({ value, slip }: Slip): Mistake | null {
  if (!isDigitSwap(value, value - slip, nearBevel) || Math.abs(slip) < 5) return null;
  return { id: 'E3', words: 'two digits swapped when it was written down' };
}

function wrongUnit({ value, slip }: Slip): Mistake | null {
  const ratio = value / (value - slip);
  const near = (factor: number) => Math.abs(ratio / factor - 1) < 0.02;
  if (near(10) || near(0.1))
    return { id: 'E13', words: 'written in the wrong unit (centimetres for millimetres)' };
  if (near(25.4) || near(1 / 25.4))
    return { id: 'E13', words: 'written in the wrong unit (inches for millimetres)' };
  return null;
}

function bowedSides({ reading, slip }: Slip): Mistake | null {
  if (reading.kind !== 'width' || reading.at <= 0.1 || reading.at >= 0.9 || Math.abs(slip) > 8) return null;
  return { id: 'E14', weak: true, words: 'the sides are not straight: lay a straightedge against both' };
}
