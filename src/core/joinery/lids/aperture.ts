import { boxOfPoints, flattenOutline, outlineArea, type Point, type Shape } from '#core/geometry';
import { fail, succeed, type Result } from '#core/problems';
import { insetSides } from '../flat/polygon.ts';
import { cornerNames, readOpening } from '../survey-fit.ts';

/** The aperture of a row of lids seen from above: corners counter-clockwise, its lower left at the origin. mm. */
export interface Aperture {
  readonly corners: readonly Point[];
  readonly length: number;
  readonly width: number;
  /** A rectangle as entered. */
  readonly square: boolean;
}

/** A rectangle as entered. */
export function enteredAperture(length: number, width: number): Aperture {
  const corners = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
  return { corners, length, width, square: true };
}

/** The aperture of a measured opening or outline, seen from above; fails for any other shape. */
export function measuredAperture(shape: Shape, name: string): Result<Aperture> {
  if (shape.kind === undefined || shape.kind === 'opening') {
    const opening = readOpening(shape, name);
    if (!opening.ok) return opening;
    const { corners, bow } = opening.value;
    const points = cornerNames.map((corner) => corners[corner]);
    // lids and cleats are straight: a side that bows in counts from its innermost place
    const inwards = [bow.sill, bow.right, bow.head, bow.left].map((each) => Math.max(0, -each));
    return succeed(moveToOrigin(insetSides(points, inwards) ?? points));
  }
  const points = shape.edges.flatMap(({ from, to, curve, bow }): readonly Point[] => {
    const [start, end] = [shape.points[from], shape.points[to]];
    if (!start || !end) return [];
    if (curve && curve.length > 1) return curve.slice(0, -1);
    if (!bow) return [start];
    // an arc through the bow, outwards to the right of the way
    const bulge = (2 * bow) / Math.hypot(end.x - start.x, end.y - start.y);
    return flattenOutline([{ ...start, bulge }, end], 0.2).slice(0, -1);
  });
  if (shape.kind !== 'outline' || points.length < 3 || outlineArea(points) <= 0) {
    return fail({
      severity: 'stop',
      code: 'aperture-unfit',
      about: name,
      message: `${name} is no closed outline seen from above.`,
      remedy: 'Choose an opening or an outline that goes round counter-clockwise, or enter length and width.',
      source: 'joinery B10',
    });
  }
  return succeed(moveToOrigin(points));
}

function moveToOrigin(points: readonly Point[]): Aperture {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  const corners = points.map(({ x, y }) => ({ x: x - minX, y: y - minY }));
  return { corners, length: maxX - minX, width: maxY - minY, square: false };
}

/** The outline moved inwards by a distance on every side, straight edges kept; for outlines that stay whole. */
export function shrink(corners: readonly Point[], by: number): readonly Point[] {
  const edges = corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
    return { at: { x: from.x - along.y * by, y: from.y + along.x * by }, along };
  });
  return edges.map((edge, i) => {
    const before = edges.at(i - 1) ?? edge;
    const cross = before.along.x * edge.along.y - before.along.y * edge.along.x;
    if (Math.abs(cross) < 1e-6) return edge.at; // one line: the corner moves square to it
    const off = { x: edge.at.x - before.at.x, y: edge.at.y - before.at.y };
    const t = (off.x * edge.along.y - off.y * edge.along.x) / cross;
    return { x: before.at.x + before.along.x * t, y: before.at.y + before.along.y * t };
  });
}
