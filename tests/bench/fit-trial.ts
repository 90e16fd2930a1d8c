import type { Point } from '#core/geometry';
import type { BuiltPiece } from '#core/joinery';
import type { Random } from '#core/numerics';
import type { Corner, Side, TrueOpening } from './fit-openings.ts';

/** A frame as it leaves the bench: its outer corners, head along x; feet and head are straight between them. */
export type MadeFrame = Readonly<Record<Corner, Point>>;

/**
 * What a workshop adds, mm: one standard deviation of a length off a saw with a stop (invented), and how far the diagonals
 * of a glued frame may differ (joinery B1, order of work 4).
 */
export const workshop = { length: 0.3, diagonals: 1 } as const;

/** The frame a joiner makes from the listed head and jamb lengths; null when the piece could not be planned. */
export function makeFrame(built: BuiltPiece, random: Random): MadeFrame | null {
  const sizes = new Map(built.working.map(({ name, value }) => [name, value]));
  const at = (name: string) => sizes.get(name) ?? NaN;
  const over = at('th') - at('gh');
  if (![at('head_L'), at('jamb_left_L'), at('jamb_right_L'), over].every(Number.isFinite)) return null;
  const fitted = sizes.has('out_head');
  const angle = (corner: string) => ((fitted ? at(`alpha_${corner}`) : 90) * Math.PI) / 180;
  // In a fitted frame the head runs over the jambs along their own slant.
  const above = (corner: string) => over / Math.sin(angle(corner));
  return assemble(
    {
      head: at('head_L'),
      left: at('jamb_left_L') + above('TL'),
      right: at('jamb_right_L') + above('TR'),
      atLeft: angle('TL'),
      atRight: angle('TR'),
    },
    random,
  );
}

/** A frame of these outside sizes with square corners. */
export function makeRectangle(width: number, height: number, random: Random): MadeFrame {
  const square = Math.PI / 2;
  return assemble({ head: width, left: height, right: height, atLeft: square, atRight: square }, random);
}

interface Sizes {
  readonly head: number;
  readonly left: number;
  readonly right: number;
  readonly atLeft: number;
  readonly atRight: number;
}

function assemble({ head, left, right, atLeft, atRight }: Sizes, random: Random): MadeFrame {
  const cut = (length: number) => length + workshop.length * random.normal();
  const [width, tall, short] = [cut(head), cut(left), cut(right)];
  const height = (tall + short) / 2;
  const difference = workshop.diagonals * (2 * random.next() - 1);
  const shear = (difference * Math.hypot(width, height)) / (2 * width * height);
  return {
    TL: { x: 0, y: 0 },
    TR: { x: width, y: 0 },
    BR: along({ x: width, y: 0 }, Math.PI + atRight + shear, short),
    BL: along({ x: 0, y: 0 }, -atLeft + shear, tall),
  };
}

function along(from: Point, angle: number, length: number): Point {
  return { x: from.x + length * Math.cos(angle), y: from.y + length * Math.sin(angle) };
}

export interface TrialResult {
  readonly fits: boolean;
  /** Smallest and largest gap of the best place found, mm; below 0 the frame does not go in. */
  readonly least: number;
  readonly most: number;
}

/** The frame is turned by up to this much to find its place, radians. */
const turns = { most: 0.02, step: 0.0002 } as const;

/**
 * Tries the frame in the true opening, standing on its sill: turned and moved sideways until the gaps at its corners and
 * along its sides are none below 0 and none above `capacity`. Twist is out of the plane of the trial.
 */
export function tryFrame(frame: MadeFrame, opening: TrueOpening, capacity: number): TrialResult {
  const start = leanOf(opening.corners) - leanOf(frame);
  let best: TrialResult = { fits: false, least: -Infinity, most: Infinity };
  let worth = -Infinity;
  for (let turn = start - turns.most; turn <= start + turns.most; turn += turns.step) {
    const gaps = gapsAt(frame, opening, turn);
    const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
    const room = Math.min(least, capacity - most);
    if (room > worth) [best, worth] = [{ fits: room >= -1e-9, least, most }, room];
  }
  return best;
}

/** Mean turn of both jambs from the y axis, counter-clockwise. */
function leanOf({ BL, BR, TR, TL }: Readonly<Record<Corner, Point>>): number {
  return (Math.atan2(BL.x - TL.x, TL.y - BL.y) + Math.atan2(BR.x - TR.x, TR.y - BR.y)) / 2;
}

const shares = [0, 0.25, 0.5, 0.75, 1];
const sides: readonly (readonly [Side, Corner, Corner])[] = [
  ['sill', 'BL', 'BR'],
  ['right', 'BR', 'TR'],
  ['head', 'TR', 'TL'],
  ['left', 'TL', 'BL'],
];

/** Gaps of the frame turned, set down on the sill and moved sideways into the middle of its play. */
function gapsAt(frame: MadeFrame, opening: TrueOpening, turn: number): readonly number[] {
  const turned = turnFrame(frame, turn);
  let [x, y] = [opening.corners.TL.x, opening.corners.TL.y];
  for (let round = 0; round < 3; round += 1) {
    const placed = moveFrame(turned, x, y);
    y -= Math.min(...gapsAlong(placed, opening, 'sill'));
    const lowered = moveFrame(turned, x, y);
    const [left, right] = [gapsAlong(lowered, opening, 'left'), gapsAlong(lowered, opening, 'right')];
    x += (Math.min(...right) - Math.min(...left)) / 2;
  }
  const placed = moveFrame(turned, x, y);
  return sides.flatMap(([side]) => gapsAlong(placed, opening, side));
}

function turnFrame(frame: MadeFrame, turn: number): MadeFrame {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return mapFrame(frame, ({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
}

function moveFrame(frame: MadeFrame, x: number, y: number): MadeFrame {
  return mapFrame(frame, (p) => ({ x: p.x + x, y: p.y + y }));
}

function mapFrame(frame: MadeFrame, change: (p: Point) => Point): MadeFrame {
  return { BL: change(frame.BL), BR: change(frame.BR), TR: change(frame.TR), TL: change(frame.TL) };
}

/** Gaps along a side, square to the opening's side; a frame has only its two feet on the sill. */
function gapsAlong(frame: MadeFrame, opening: TrueOpening, side: Side): readonly number[] {
  const ends = sides.find(([name]) => name === side);
  if (!ends) throw new Error(`no such side: ${side}`);
  const [, from, to] = ends;
  const [a, b] = [frame[from], frame[to]];
  return (side === 'sill' ? [0, 1] : shares).map((t) =>
    gapTo({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, opening, [side, from, to]),
  );
}

function gapTo(
  point: Point,
  { corners, bow }: TrueOpening,
  [side, from, to]: readonly [Side, Corner, Corner],
): number {
  const [a, b] = [corners[from], corners[to]];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  const inside = (dx * (point.y - a.y) - dy * (point.x - a.x)) / length;
  const t = Math.min(1, Math.max(0, (dx * (point.x - a.x) + dy * (point.y - a.y)) / length ** 2));
  return inside + 4 * t * (1 - t) * bow[side];
}
