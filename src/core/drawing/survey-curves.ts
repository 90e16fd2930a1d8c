import type { Point, Shape, ShapeEdge, ShapeObstruction } from '#core/geometry';
import { boxOfMark, drawLine, drawText, lettering } from './marks.ts';
import { formatSize } from './scales.ts';
import type { SurveySheet } from './survey-sheet.ts';
import type { SurveyOrdinate } from './survey-view.ts';
import type { Mark } from './types.ts';

type Points = Readonly<Record<string, Point>>;

/** The way of a curved edge on paper, hung between its corners as they are drawn; null for a straight one. */
export function curveOnPaper(
  edge: ShapeEdge,
  shape: Shape,
  points: Points,
  scale: number,
): readonly Point[] | null {
  const ends = [shape.points[edge.from], shape.points[edge.to], points[edge.from], points[edge.to]] as const;
  const [a, b, c, d] = ends;
  if (!edge.curve || !a || !b || !c || !d) return null;
  const chord = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [ux, uy] = [(b.x - a.x) / chord, (b.y - a.y) / chord];
  return edge.curve.map((p) => {
    const along = (p.x - a.x) * ux + (p.y - a.y) * uy;
    const left = (p.y - a.y) * ux - (p.x - a.x) * uy;
    return onChord(c, d, along / chord, left * scale);
  });
}

/** The point at a fraction of the way from `c` to `d`, and so far to its left. */
function onChord(c: Point, d: Point, share: number, left: number): Point {
  const length = Math.hypot(d.x - c.x, d.y - c.y) || 1;
  const [ux, uy] = [(d.x - c.x) / length, (d.y - c.y) / length];
  return { x: c.x + (d.x - c.x) * share - uy * left, y: c.y + (d.y - c.y) * share + ux * left };
}

/** The straight line that ordinates are counted from, each ordinate on it, and its value. */
export function drawOrdinates(
  ordinates: readonly SurveyOrdinate[],
  shape: Shape,
  sheet: SurveySheet,
): readonly Mark[] {
  return ordinates.flatMap((ordinate): readonly Mark[] => {
    const { from, to, at, value, isSuspect, link } = ordinate;
    const [a, b, c, d] = [shape.points[from], shape.points[to], sheet.points[from], sheet.points[to]];
    if (!a || !b || !c || !d) return [];
    const share = at / (Math.hypot(b.x - a.x, b.y - a.y) || 1);
    const foot = onChord(c, d, share, 0);
    const tip = onChord(c, d, share, -value * sheet.scale);
    const beyond = onChord(c, d, share, -value * sheet.scale - Math.sign(value || 1) * 1.2);
    const turn = Math.atan2(beyond.y - foot.y, beyond.x - foot.x);
    const isLeft = Math.cos(turn) < -1e-9;
    const label = drawText(beyond, formatSize(value, sheet.view.units), {
      height: lettering.small,
      align: isLeft ? 'end' : 'start',
      turn: isLeft ? turn + Math.PI : turn,
      tone: isSuspect ? 'fault' : 'ink',
      weight: isSuspect ? 'bold' : 'normal',
      link,
    });
    sheet.taken.push(boxOfMark(label));
    return [drawLine([foot, tip], isSuspect ? 'fault' : 'dimension', link), label];
  });
}

/** What is in the way, with its name. */
export function drawObstructions(list: readonly ShapeObstruction[], scale: number): readonly Mark[] {
  return list.flatMap(({ name, box }): readonly Mark[] => {
    const corners = [
      { x: box.minX, y: box.minY },
      { x: box.maxX, y: box.minY },
      { x: box.maxX, y: box.maxY },
      { x: box.minX, y: box.maxY },
    ].map(({ x, y }) => ({ x: x * scale, y: y * scale }));
    const beside = { x: box.minX * scale - 1, y: ((box.minY + box.maxY) / 2) * scale - lettering.small / 2 };
    return [
      { kind: 'path', points: corners, closed: true, pen: 'thin', fill: 'keep-out', link: name },
      drawText(beside, name, { height: lettering.small, align: 'end', tone: 'soft', link: name }),
    ];
  });
}
