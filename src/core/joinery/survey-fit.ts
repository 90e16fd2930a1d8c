import type { Point, Shape } from '#core/geometry';
import { fail, succeed } from '#core/problems';
import type { Problem, Result } from '#core/problems';

/** Corners of an opening: bottom left, bottom right, top right, top left, as seen. */
export const cornerNames = ['BL', 'BR', 'TR', 'TL'] as const;
export type CornerName = (typeof cornerNames)[number];

export type OpeningSide = 'left' | 'right' | 'head' | 'sill';

const endsOf: Readonly<Record<OpeningSide, readonly [CornerName, CornerName]>> = {
  left: ['BL', 'TL'],
  right: ['BR', 'TR'],
  head: ['TL', 'TR'],
  sill: ['BL', 'BR'],
};

/** A measured opening, ready to fit a frame to. mm; u95 = twice the standard deviation. */
export interface Opening {
  readonly corners: Readonly<Record<CornerName, Point>>;
  readonly u95: Readonly<Record<CornerName, Point>>;
  /** Bow of each side at mid length, positive outwards. */
  readonly bow: Readonly<Record<OpeningSide, number>>;
  /** How far the top of a side may lean from its foot beyond what was found, the worse side. */
  readonly u95Lean: number;
  /** The boat's upright, radians counter-clockwise from the shape's y axis. */
  readonly tilt: number;
}

/** The opening of a measured shape; fails when corners lack or do not go round. */
export function readOpening(shape: Shape, name: string): Result<Opening> {
  const missing = cornerNames.filter((corner) => !shape.points[corner]);
  if (missing.length > 0) return fail(lacksCorners(missing, name));
  const corners = fromCorners((corner) => shape.points[corner] ?? { x: NaN, y: NaN });
  if (!goesRound(corners)) return fail(crossed(name));
  return succeed({
    corners,
    u95: fromCorners((corner) => ({
      x: 2 * deviationOf(shape, { [`${corner}.x`]: 1 }),
      y: 2 * deviationOf(shape, { [`${corner}.y`]: 1 }),
    })),
    bow: {
      left: bowOf(shape, 'left'),
      right: bowOf(shape, 'right'),
      head: bowOf(shape, 'head'),
      sill: bowOf(shape, 'sill'),
    },
    u95Lean:
      2 *
      Math.max(deviationOf(shape, { 'TL.x': 1, 'BL.x': -1 }), deviationOf(shape, { 'TR.x': 1, 'BR.x': -1 })),
    tilt: shape.tilt,
  });
}

/** Standard deviation of a sum of coordinates, mm, from the shape's covariance; coordinates it does not name are held fixed. */
function deviationOf(shape: Shape, weights: Readonly<Record<string, number>>): number {
  const row = shape.order.map((name) => weights[name] ?? 0);
  const variance = row.reduce(
    (sum, a, i) => sum + row.reduce((inner, b, j) => inner + a * b * (shape.covariance[i]?.[j] ?? 0), 0),
    0,
  );
  return Math.sqrt(Math.max(0, variance));
}

function bowOf(shape: Shape, side: OpeningSide): number {
  const [from, to] = endsOf[side];
  const edge = shape.edges.find(
    (one) => (one.from === from && one.to === to) || (one.from === to && one.to === from),
  );
  return edge?.bow ?? 0;
}

function fromCorners<T>(pick: (corner: CornerName) => T): Record<CornerName, T> {
  return { BL: pick('BL'), BR: pick('BR'), TR: pick('TR'), TL: pick('TL') };
}

/** True when the corners go counter-clockwise round a four-cornered figure without a dent. */
function goesRound(corners: Readonly<Record<CornerName, Point>>): boolean {
  return cornerNames.every((name, i) => {
    const here = corners[name];
    const next = corners[cornerNames[(i + 1) % 4] ?? 'BL'];
    const after = corners[cornerNames[(i + 2) % 4] ?? 'BL'];
    const turn = (next.x - here.x) * (after.y - next.y) - (next.y - here.y) * (after.x - next.x);
    return turn > 0; // false for NaN too
  });
}

function lacksCorners(missing: readonly string[], name: string): Problem {
  return {
    severity: 'stop',
    code: 'opening-lacks-corners',
    about: name,
    message: `${name} has no ${missing.join(', ')}: a door frame needs the corners BL, BR, TR and TL.`,
    remedy:
      'Name the corners of the opening BL, BR, TR, TL (bottom left, bottom right, top right, top left).',
    source: 'joinery A10',
  };
}

function crossed(name: string): Problem {
  return {
    severity: 'stop',
    code: 'opening-crossed',
    about: name,
    message: `The corners BL, BR, TR, TL of ${name} do not go round an opening.`,
    remedy: 'Check which corner is which, and look again from the side noted.',
    source: 'joinery 0.1, A5 E11',
  };
}
