import { boxOfPoints, type Point, type Shape } from '#core/geometry';
import type { Problem } from '#core/problems';
import { insetSides } from '../flat/polygon.ts';
import { cornerNames, readOpening, type Opening } from '../survey-fit.ts';

/** A hole as measured, in the frame of the piece: its lower left at the origin, the sill along x. mm. */
export interface Hole {
  /** Counter-clockwise from the lower left; sides that bow into it moved in by their bow. */
  readonly corners: readonly Point[];
  /** The sizes its panel goes by: over all for one that laps, the smallest for one that goes in. */
  readonly width: number;
  readonly height: number;
  /** How far it is from a rectangle: the most by which sides that face each other, or the diagonals, differ. */
  readonly skew: number;
}

/** A measured hole, for a panel that laps over it or goes into it; problems when it goes round nothing. */
export function measureHole(
  shape: Shape,
  name: string,
  mount: 'lap' | 'inset',
): { readonly hole: Hole | null; readonly problems: readonly Problem[] } {
  const opening = readOpening(shape, name);
  if (!opening.ok) return { hole: null, problems: opening.problems };
  const sign = mount === 'lap' ? 1 : -1;
  // a lap covers what bows out, a panel that goes in must pass what bows in
  const by = bowsOf(opening.value).map((bow) => -sign * Math.max(0, sign * bow));
  const points = cornerNames.map((corner) => opening.value.corners[corner]);
  const moved = insetSides(points, by) ?? points;
  const { minX, minY } = boxOfPoints(moved);
  const corners = moved.map(({ x, y }) => ({ x: x - minX, y: y - minY }));
  return { hole: { corners, ...sizesOf(corners, mount), skew: skewOf(points) }, problems: [] };
}

const bowsOf = ({ bow }: Opening): readonly number[] => [bow.sill, bow.right, bow.head, bow.left];

function sizesOf(corners: readonly Point[], mount: 'lap' | 'inset'): Pick<Hole, 'width' | 'height'> {
  if (mount === 'lap') {
    const { minX, minY, maxX, maxY } = boxOfPoints(corners);
    return { width: maxX - minX, height: maxY - minY };
  }
  const [sill = 0, right = 0, head = 0, left = 0] = sidesOf(corners);
  return { width: Math.min(sill, head), height: Math.min(left, right) };
}

function sidesOf(corners: readonly Point[]): readonly number[] {
  return corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return Math.hypot(to.x - from.x, to.y - from.y);
  });
}

function skewOf(corners: readonly Point[]): number {
  const [sill = 0, right = 0, head = 0, left = 0] = sidesOf(corners);
  const diagonal = (a: number, b: number) => {
    const [from, to] = [corners[a], corners[b]];
    return from && to ? Math.hypot(to.x - from.x, to.y - from.y) : 0;
  };
  return Math.max(Math.abs(sill - head), Math.abs(right - left), Math.abs(diagonal(0, 2) - diagonal(1, 3)));
}

/** A rectangle as entered, its corners counter-clockwise from the lower left. */
export function enteredHole(width: number, height: number): readonly Point[] {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
}

/** A side of the hole, from 0, the sill, counter-clockwise: the place at a share of its length, its way and the way in. */
export function placeOnSide(
  corners: readonly Point[],
  side: number,
  share: number,
): { readonly at: Point; readonly along: Point; readonly inwards: Point } {
  const from = corners[side % corners.length] ?? { x: 0, y: 0 };
  const to = corners[(side + 1) % corners.length] ?? from;
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
  return {
    at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
    along,
    inwards: { x: -along.y, y: along.x },
  };
}
