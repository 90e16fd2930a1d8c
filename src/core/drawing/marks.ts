import { arcBetween, boxOfOutline, boxOfPoints, circleOutline, rectangleOutline } from '#core/geometry';
import type { Box, PathPoint, Point } from '#core/geometry';
import { textWidth } from './text-width.ts';
import type { Drawing, Fill, Mark, Pen } from './types.ts';

/** Heights of lettering in mm, steps of ISO 3098 (from memory). */
export const lettering = { fine: 1.8, small: 2.5, usual: 3.5, large: 5, huge: 7 } as const;

type TextMark = Extract<Mark, { kind: 'text' }>;
type TextStyle = Partial<Omit<TextMark, 'kind' | 'at' | 'text'>>;

/** A straight or bent open line. */
export function drawLine(points: readonly PathPoint[], pen: Pen, link?: string): Mark {
  return { kind: 'path', points, closed: false, pen, ...(link !== undefined && { link }) };
}

/** A closed area. */
export function drawArea(points: readonly PathPoint[], pen: Pen, fill: Fill = 'none', link?: string): Mark {
  return { kind: 'path', points, closed: true, pen, fill, ...(link !== undefined && { link }) };
}

/** An upright rectangle from its lower left corner. */
export function drawRectangle(box: Box, pen: Pen, fill: Fill = 'none', link?: string): Mark {
  return drawArea(
    rectangleOutline(box.maxX - box.minX, box.maxY - box.minY, { x: box.minX, y: box.minY }),
    pen,
    fill,
    link,
  );
}

export function drawCircle(centre: Point, radius: number, pen: Pen, fill: Fill = 'none'): Mark {
  return drawArea(circleOutline(centre, radius), pen, fill);
}

/** A line of text with its baseline at a point; 3.5 mm high from the left unless said. */
export function drawText(at: Point, text: string, style: TextStyle = {}): Mark {
  return { kind: 'text', at, text, height: lettering.usual, align: 'start', ...style };
}

/** The smallest box round a mark, mm on paper; lines of text by their estimated width. */
export function boxOfMark(mark: Mark): Box {
  if (mark.kind === 'path') return mark.closed ? boxOfOutline(mark.points) : boxOfOpenPath(mark.points);
  const width = textWidth(mark.text, mark.height, mark.weight);
  const from = mark.align === 'start' ? 0 : mark.align === 'middle' ? -width / 2 : -width;
  const [c, s] = [Math.cos(mark.turn ?? 0), Math.sin(mark.turn ?? 0)];
  const corners = [from, from + width].flatMap((x) =>
    [-0.3 * mark.height, mark.height].map((y) => ({
      x: mark.at.x + x * c - y * s,
      y: mark.at.y + x * s + y * c,
    })),
  );
  return boxOfPoints(corners);
}

function boxOfOpenPath(points: readonly PathPoint[]): Box {
  const boxes = points.slice(1).map((to, i) => {
    const from = points[i] ?? to;
    const arc = arcBetween(from, to, from.bulge ?? 0);
    return arc ? boxOfOutline([from, { x: to.x, y: to.y }]) : boxOfPoints([from, to]);
  });
  return boxes.length > 0 ? joinBoxes(boxes) : boxOfPoints(points);
}

/** Smallest box round several; throws when there are none. */
export function joinBoxes(boxes: readonly Box[]): Box {
  return boxOfPoints(
    boxes.flatMap((b) => [
      { x: b.minX, y: b.minY },
      { x: b.maxX, y: b.maxY },
    ]),
  );
}

/** The box with a margin all round, mm. */
export function growBox(box: Box, margin: number): Box {
  return {
    minX: box.minX - margin,
    minY: box.minY - margin,
    maxX: box.maxX + margin,
    maxY: box.maxY + margin,
  };
}

/** True when two boxes share an area. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** A drawing with its bounds drawn round the marks; an empty one is a blank of 10 by 10 mm. */
export function makeDrawing(title: string, scale: number, marks: readonly Mark[], margin = 2): Drawing {
  const box = marks.length > 0 ? joinBoxes(marks.map(boxOfMark)) : { minX: 0, minY: 0, maxX: 10, maxY: 10 };
  return { title, bounds: growBox(box, margin), scale, marks };
}

/** The mark moved by dx, dy. */
export function moveMark(mark: Mark, dx: number, dy: number): Mark {
  if (mark.kind === 'text') return { ...mark, at: { x: mark.at.x + dx, y: mark.at.y + dy } };
  return { ...mark, points: mark.points.map((p) => ({ ...p, x: p.x + dx, y: p.y + dy })) };
}

/** A drawing with another of marks alone beneath it, their left edges in line; title and scale are those of the upper one. */
export function stackDrawings(upper: Drawing, lower: Drawing): Drawing {
  const [dx, dy] = [upper.bounds.minX - lower.bounds.minX, upper.bounds.minY - lower.bounds.maxY];
  const { minX, maxX, minY } = lower.bounds;
  const beneath = { minX: minX + dx, maxX: maxX + dx, minY: minY + dy, maxY: upper.bounds.minY };
  return {
    ...upper,
    bounds: joinBoxes([upper.bounds, beneath]),
    marks: [...upper.marks, ...lower.marks.map((mark) => moveMark(mark, dx, dy))],
  };
}

/** The drawing made smaller or larger about the origin, lettering included. */
export function resizeDrawing(drawing: Drawing, factor: number): Drawing {
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const resize = (p: Point) => ({ ...p, x: p.x * factor, y: p.y * factor });
  const resizeBox = (box: Box) => ({
    ...{ minX: box.minX * factor, maxX: box.maxX * factor },
    ...{ minY: box.minY * factor, maxY: box.maxY * factor },
  });
  const pictures = drawing.pictures?.map(({ image, box }) => ({ image, box: resizeBox(box) }));
  return {
    ...drawing,
    ...(pictures && { pictures }),
    scale: drawing.scale * factor,
    bounds: { minX: minX * factor, minY: minY * factor, maxX: maxX * factor, maxY: maxY * factor },
    marks: drawing.marks.map((mark) =>
      mark.kind === 'text'
        ? { ...mark, at: resize(mark.at), height: mark.height * factor }
        : { ...mark, points: mark.points.map(resize) },
    ),
  };
}
