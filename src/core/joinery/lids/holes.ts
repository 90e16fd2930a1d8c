import type { LaidLid, LidsLayout } from './layout.ts';
import type { Point } from '#core/geometry';

/** A round hole in a lid, seen from above in the frame of the piece. */
export interface LaidHole {
  readonly at: Point;
  readonly r: number;
  readonly kind: 'finger' | 'vent';
}

const fromEdge = 60; // vent to the edges of a lid (joinery B10)
const betweenHoles = 25; // wood between a vent and the finger hole; common practice, no source

type Sized = Pick<LidsLayout, 'choices' | 'book'>;

/** Finger hole and vents of a lid (joinery B10); vents only where they clear edges, bearers and finger hole. */
export function layHoles({ choices, book }: Sized, { corners, left }: LaidLid): readonly LaidHole[] {
  const v = book.value;
  if (corners.length < 3) return [];
  const right = Math.max(...corners.map(({ x }) => x));
  const middle = (left + right) / 2;
  const finger: LaidHole = {
    at: { x: middle, y: spanAt(corners, middle)[0] + v('hole_in') },
    r: v('hole') / 2,
    kind: 'finger',
  };
  if (!choices.vents) return [finger];
  const r = v('vent') / 2;
  const clear = betweenHoles + r + finger.r;
  const margin = Math.max(fromEdge, v('bearing_mid') + r + 5, v('bearing') + r + 5);
  const vents = spread(left + margin, right - margin, v('vent_pitch')).flatMap((x) => {
    const spans = [x - r, x, x + r].map((each) => spanAt(corners, each));
    const low = Math.max(...spans.map(([from]) => from)) + margin;
    const high = Math.min(...spans.map(([, to]) => to)) - margin;
    return spread(low, high, v('vent_pitch'))
      .filter((y) => Math.hypot(x - finger.at.x, y - finger.at.y) >= clear)
      .map((y): LaidHole => ({ at: { x, y }, r, kind: 'vent' }));
  });
  return [finger, ...vents];
}

/** Places at this pitch between two limits, centred between them; none when the limits cross. */
function spread(low: number, high: number, pitch: number): readonly number[] {
  if (!(high >= low) || !(pitch > 0)) return [];
  const gaps = Math.floor((high - low) / pitch);
  const start = (low + high - gaps * pitch) / 2;
  return Array.from({ length: gaps + 1 }, (_, i) => start + i * pitch);
}

/** From front to back of an outline along an upright line. */
export function spanAt(corners: readonly Point[], x: number): readonly [number, number] {
  const ys = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    if (Math.min(from.x, to.x) > x || Math.max(from.x, to.x) < x) return [];
    if (Math.abs(to.x - from.x) < 1e-9) return [from.y, to.y];
    return [from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x)];
  });
  return [Math.min(...ys), Math.max(...ys)];
}
