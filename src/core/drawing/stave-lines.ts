import { flattenOutline, sidesOf } from '#core/geometry';
import type { Outline, Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import { seenPoint } from './part-view.ts';
import { leftOnAt } from './scribe-edge.ts';

/** The joints between the staves of a part that is glued up, as seen from the face side, each in pieces where it leaves the wood. */
export function seenStaveLines(part: Part): readonly (readonly [Point, Point])[] {
  if (!part.staves) return [];
  const { count, width } = part.staves;
  const upright = part.grain === 'along-width';
  const first = -leftOnAt(part, upright ? 'start' : 'face-edge');
  const wood = [part.outline, ...part.holes].map((outline) => turned(flattenOutline(outline, 0.5), upright));
  return Array.from({ length: count - 1 }, (_, i) => first + (i + 1) * width).flatMap((y) =>
    insideAt(wood, y).map(([from, to]): readonly [Point, Point] => {
      const [start, end] = turned(
        [
          { x: from, y },
          { x: to, y },
        ],
        upright,
      ).map((point) => seenPoint(point, part));
      if (!start || !end) throw new Error('a line without its ends');
      return [start, end];
    }),
  );
}

/** With x and y changed over, so that staves always lie level. */
function turned(points: Outline, upright: boolean): readonly Point[] {
  return points.map(({ x, y }) => (upright ? { x: y, y: x } : { x, y }));
}

/** Where a level line lies within outlines less their holes: inside after every odd side it crosses. */
function insideAt(outlines: readonly Outline[], y: number): readonly (readonly [number, number])[] {
  const crossings = outlines
    .flatMap(sidesOf)
    .filter(({ from, to }) => from.y <= y !== to.y <= y)
    .map(({ from, to }) => from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x))
    .sort((one, other) => one - other);
  return crossings.flatMap((start, i) => {
    const end = crossings[i + 1];
    return i % 2 === 0 && end !== undefined ? [[start, end] as const] : [];
  });
}
