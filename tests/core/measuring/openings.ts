import type { Point } from '#core/geometry';
import { makeOpeningReading, openingChecklist } from '#core/measuring';
import type { OpeningKey, Reading } from '#core/measuring';

export type Corners = Readonly<Record<'BL' | 'BR' | 'TR' | 'TL', Point>>;

/** What an exact tape, plumb line and level would read in an opening; upright is the y axis turned by `tilt`. */
export function exactValue(key: OpeningKey, corners: Corners, tilt = 0): number {
  const line = openingChecklist.find((entry) => entry.key === key);
  if (!line) throw new Error(`no such reading: ${key}`);
  const from = corners[line.from as keyof Corners];
  const to = corners[line.to as keyof Corners];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  switch (line.kind) {
    case 'distance':
      return Math.hypot(dx, dy);
    case 'width': {
      const left = between(corners.BL, corners.TL, line.at ?? 0);
      const right = between(corners.BR, corners.TR, line.at ?? 0);
      return Math.hypot(right.x - left.x, right.y - left.y);
    }
    case 'plumb':
      return dx * Math.cos(tilt) + dy * Math.sin(tilt);
    default:
      return dy * Math.cos(tilt) - dx * Math.sin(tilt);
  }
}

function between(a: Point, b: Point, t: number): Point {
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
}

/** Half a millimetre for the tape, one for plumb line and level: the sigmas of joinery A3. */
export function usualSigma(key: OpeningKey): number {
  return ['pl', 'pr', 'ls', 'lh'].includes(key) ? 1 : 0.5;
}

/** Readings of an opening with the given values and the usual sigmas. */
export function readOpening(values: Partial<Record<OpeningKey, number>>): readonly Reading[] {
  return (Object.entries(values) as [OpeningKey, number][]).map(([key, value]) =>
    makeOpeningReading(key, value, { sigma: usualSigma(key) }),
  );
}

/** The worked case of joinery A4. */
export const workedCase: Readonly<Record<OpeningKey, number>> = {
  wb: 641,
  w13: 639,
  w23: 637,
  wt: 635,
  hl: 1746,
  hr: 1752,
  d1: 1868,
  d2: 1855,
  pl: 14,
  pr: 8,
  ls: 0,
  lh: 6,
};

export const sixKeys = ['wb', 'wt', 'hl', 'hr', 'd1', 'd2'] as const;

/** Some of the worked case, with values changed. */
export function pick(
  keys: readonly OpeningKey[],
  changes: Partial<Record<OpeningKey, number>> = {},
): Partial<Record<OpeningKey, number>> {
  return Object.fromEntries(keys.map((key) => [key, changes[key] ?? workedCase[key]]));
}
