import type { Point } from '#core/geometry';
import { drawArea, drawLine, drawText, lettering } from './marks.ts';
import type { Mark, Pen } from './types.ts';

const offsetBy = (p: Point, angle: number, along: number, across = 0): Point => ({
  x: p.x + Math.cos(angle) * along - Math.sin(angle) * across,
  y: p.y + Math.sin(angle) * along + Math.cos(angle) * across,
});

/** A double-headed arrow with half barbs, the mark for the run of the grain, centred on a point. */
export function drawGrainArrow(centre: Point, length: number, angle = 0): readonly Mark[] {
  const [half, barb] = [length / 2, Math.min(2.2, length / 4)];
  const a = offsetBy(centre, angle, -half);
  const b = offsetBy(centre, angle, half);
  return [
    drawLine([a, b], 'thin'),
    drawLine([b, offsetBy(b, angle, -barb, barb * 0.55)], 'outline'),
    drawLine([a, offsetBy(a, angle, barb, -barb * 0.55)], 'outline'),
  ];
}

/** An arrow with a filled head from one point to another. */
export function drawArrow(from: Point, to: Point, pen: Pen = 'outline', head = 2.5): readonly Mark[] {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const neck = offsetBy(to, angle, -head);
  return [
    drawLine([from, neck], pen),
    drawArea(
      [to, offsetBy(to, angle, -head, head / 3.2), offsetBy(to, angle, -head, -head / 3.2)],
      'thin',
      'ink',
    ),
  ];
}

/** The joiner's face mark: a curl whose tail runs to the face edge below it. */
export function drawFaceMark(at: Point, size: number): readonly Mark[] {
  const r = size / 4;
  return [
    drawLine(
      [
        { x: at.x - r * 1.2, y: at.y + size * 0.8 },
        { x: at.x, y: at.y + size * 0.8 - r * 0.2, bulge: -1 },
        { x: at.x, y: at.y + size * 0.3, bulge: -0.6 },
        { x: at.x - r * 0.9, y: at.y + size * 0.62 },
        { x: at.x + r * 1.3, y: at.y - size * 0.2 },
      ],
      'outline',
    ),
  ];
}

/** The joiner's mark on the face edge: a V standing on it. */
export function drawEdgeMark(at: Point, size: number): readonly Mark[] {
  return [
    drawLine(
      [
        { x: at.x - size / 3, y: at.y + size },
        { x: at.x, y: at.y },
        { x: at.x + size / 3, y: at.y + size },
      ],
      'outline',
    ),
  ];
}

/** A wavy line between two points, for an edge to be scribed. */
export function drawWave(from: Point, to: Point, pen: Pen = 'cut', wave = 4): Mark {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.max(2, Math.round(length / wave));
  const points = Array.from({ length: count + 1 }, (_, i) => ({
    x: from.x + ((to.x - from.x) * i) / count,
    y: from.y + ((to.y - from.y) * i) / count,
    bulge: i % 2 === 0 ? 0.45 : -0.45,
  }));
  return drawLine(points, pen);
}

/** A cross at a point, arms along x and y. */
export function drawCross(at: Point, arm: number, pen: Pen = 'thin'): readonly Mark[] {
  return [
    drawLine(
      [
        { x: at.x - arm, y: at.y },
        { x: at.x + arm, y: at.y },
      ],
      pen,
    ),
    drawLine(
      [
        { x: at.x, y: at.y - arm },
        { x: at.x, y: at.y + arm },
      ],
      pen,
    ),
  ];
}

/** A bar 100 mm long with strokes at its ends, for checking that paper was printed at true size. */
export function drawCheckBar(from: Point, direction: 'across' | 'up', label: string): readonly Mark[] {
  const [dx, dy] = direction === 'across' ? [1, 0] : [0, 1];
  const at = (along: number, side: number) => ({
    x: from.x + dx * along + dy * side,
    y: from.y + dy * along + dx * side,
  });
  const ticks = Array.from({ length: 11 }, (_, i) => {
    const reach = i % 10 === 0 ? 2 : i === 5 ? 1.4 : 0.9;
    return drawLine([at(i * 10, -reach), at(i * 10, reach)], i % 10 === 0 ? 'outline' : 'thin');
  });
  const place = at(50, direction === 'across' ? 1.8 : -1.8);
  return [
    drawLine([from, at(100, 0)], 'outline'),
    ...ticks,
    drawText(place, label, {
      height: lettering.fine,
      align: 'middle',
      turn: direction === 'across' ? 0 : Math.PI / 2,
    }),
  ];
}
