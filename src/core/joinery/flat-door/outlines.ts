import type { Outline, PathPoint, Point } from '#core/geometry';

/** End of a lipping: how far its inner side is cut back there (0 square, else mitred), and the radius of its outer corner. */
export interface LipEnd {
  readonly run: number;
  readonly round: number;
}

const same = 1e-9;

/** Outline of a lipping in its own frame: outer edge on y = 0, glued edge on y = `width`. */
export function lipOutline(length: number, width: number, start: LipEnd, end: LipEnd): Outline {
  const first = roundedEnd(width, start);
  const last = roundedEnd(width, end);
  const points: readonly PathPoint[] = [
    { ...first.from, bulge: first.bulge },
    { x: start.round, y: 0 },
    { x: length - end.round, y: 0, bulge: last.bulge },
    { x: length - last.from.x, y: last.from.y },
    { x: length - end.run, y: width },
    { x: start.run, y: width },
  ];
  return withoutRepeats(points);
}

/** Where the arc of a rounded corner leaves the line of the end, and its bulge to the outer edge; the corner itself when sharp. */
function roundedEnd(width: number, { run, round }: LipEnd): { readonly from: Point; readonly bulge: number } {
  if (round === 0) return { from: { x: 0, y: 0 }, bulge: 0 };
  const long = Math.hypot(run, width);
  const along = { x: run / long, y: width / long };
  const middle = round * (along.x + along.y);
  const t = middle - Math.sqrt(Math.max(0, middle ** 2 - round ** 2));
  const from = { x: t * along.x, y: t * along.y };
  const angle = Math.atan2(round - from.y, round - from.x); // 0 at the end's own line, a quarter turn at the edge
  return { from, bulge: Math.tan((Math.PI / 2 - angle) / 4) };
}

/** A corner block in its own frame: the outer corner at the origin, rounded. */
export function blockOutline(side: number, round: number): Outline {
  const corner: readonly PathPoint[] = [
    { x: 0, y: round, bulge: round === 0 ? 0 : Math.tan(Math.PI / 8) },
    { x: round, y: 0 },
  ];
  const rest = [
    { x: side, y: 0 },
    { x: side, y: side },
    { x: 0, y: side },
  ];
  return withoutRepeats([...corner, ...rest]);
}

/** The core in its own frame, x up from its lower edge, y right from its left one; notched at the corners for blocks. */
export function coreOutline(
  height: number,
  width: number,
  notch: { readonly up: number; readonly left: number; readonly right: number } | null,
): Outline {
  const { up, left, right } = notch ?? { up: 0, left: 0, right: 0 };
  const lower = [
    { x: up, y: 0 },
    { x: height - up, y: 0 },
    { x: height - up, y: left },
    { x: height, y: left },
    { x: height, y: width - right },
    { x: height - up, y: width - right },
  ];
  const upper = [
    { x: height - up, y: width },
    { x: up, y: width },
    { x: up, y: width - right },
    { x: 0, y: width - right },
    { x: 0, y: left },
    { x: up, y: left },
  ];
  return withoutRepeats([...lower, ...upper]);
}

/** A slot with round ends about its middle. */
export function slotOutline(at: Point, length: number, width: number, along: 'x' | 'y'): Outline {
  const half = (length - width) / 2;
  const r = width / 2;
  const flat: readonly PathPoint[] = [
    { x: -half, y: -r },
    { x: half, y: -r, bulge: 1 },
    { x: half, y: r },
    { x: -half, y: r, bulge: 1 },
  ];
  return flat.map(({ x, y, bulge }) => {
    const turned = along === 'x' ? { x, y } : { x: -y, y: x };
    return { x: at.x + turned.x, y: at.y + turned.y, ...(bulge !== undefined && { bulge }) };
  });
}

/** Points on the next one dropped, bulges of nothing left out. */
function withoutRepeats(points: readonly PathPoint[]): Outline {
  return points
    .filter((point, i) => {
      const next = points[(i + 1) % points.length] ?? point;
      return Math.hypot(next.x - point.x, next.y - point.y) > same;
    })
    .map(({ x, y, bulge }) => ({ x, y, ...(bulge && { bulge }) }));
}
