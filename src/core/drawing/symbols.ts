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

/** The joiner's face mark: a loop whose long tail runs down to the face edge, its foot at a point. */
export function drawFaceMark(at: Point, size: number): readonly Mark[] {
  const loop = [
    { x: at.x, y: at.y },
    { x: at.x + size * 0.4, y: at.y + size * 0.78, bulge: 1 },
    { x: at.x + size * 0.04, y: at.y + size * 0.78 },
    { x: at.x + size * 0.36, y: at.y + size * 0.3 },
  ];
  return [drawLine(loop, 'outline')];
}

/** The joiner's mark on the face edge: a V with its foot at a point; a negative size stands it on its head. */
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

/** A wavy line along a line of straight pieces, for an edge to be scribed. */
export function drawWave(line: readonly Point[], pen: Pen = 'outline', wave = 4): Mark {
  const lengths = line.slice(1).map((p, i) => Math.hypot(p.x - (line[i]?.x ?? 0), p.y - (line[i]?.y ?? 0)));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const count = Math.max(2, Math.round(total / wave));
  const points = Array.from({ length: count + 1 }, (_, i) => ({
    ...pointAlong(line, lengths, (total * i) / count),
    bulge: i % 2 === 0 ? 0.45 : -0.45,
  }));
  return drawLine(points, pen);
}

function pointAlong(line: readonly Point[], lengths: readonly number[], distance: number): Point {
  let left = distance;
  for (const [i, length] of lengths.entries()) {
    const [a, b] = [line[i] as Point, line[i + 1] as Point];
    if (left <= length || i === lengths.length - 1) {
      const t = length > 0 ? left / length : 0;
      return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    }
    left -= length;
  }
  return line[0] as Point;
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
  const place = at(25, direction === 'across' ? 1.8 : -1.8);
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
