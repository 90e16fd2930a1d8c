import { describe, expect, test } from 'vitest';
import { boxOfMark, drawPart } from '#core/drawing';
import type { Drawing } from '#core/drawing';
import type { Part } from '#core/joinery';
import { buildKind, partOf } from '../../support/flat-pieces.ts';

const boards = [{ material: 'oak', length: 2400, width: 154, thickness: 32 }];
type Corners = readonly number[];
const panel = (corners: Corners, grain: 'across' | 'up' = 'across', more: object = {}): Part =>
  partOf(
    buildKind(
      'free-panel',
      { corners, grain, gap: 0, thickness: 20, ...more, materials: { panel: 'oak' } },
      { boards },
    ),
    1,
  );
const square = [0, 0, 600, 0, 600, 290, 0, 290];

/** Dashed lines of two points, on paper. */
const seams = ({ marks }: Drawing) =>
  marks.flatMap((mark) =>
    mark.kind === 'path' && mark.pen === 'hidden' && !mark.closed && mark.points.length === 2
      ? [mark.points]
      : [],
  );
const scaleOf = (drawing: Drawing, part: Part) => {
  const outline = drawing.marks.find((mark) => mark.kind === 'path' && mark.pen === 'cut');
  if (outline?.kind !== 'path') throw new Error('no outline');
  const ys = outline.points.map(({ y }) => y);
  return (Math.max(...ys) - Math.min(...ys)) / part.finished.width;
};

describe('the drawing of a part glued up', () => {
  test('has a dashed line at each joint, the width of a stave apart, from edge to edge', () => {
    const part = panel(square);
    const drawing = drawPart(part, { width: 180 });
    const found = seams(drawing);
    const scale = scaleOf(drawing, part);
    expect(part.staves?.count).toBe(3); // 290 of no more than 120 (joinery D3)
    expect(found).toHaveLength(2);
    const heights = found.map(([from, to]) => {
      expect(from?.y).toBe(to?.y);
      expect(Math.abs((to?.x ?? 0) - (from?.x ?? 0))).toBeCloseTo(600 * scale, 6);
      return (from?.y ?? 0) / scale;
    });
    expect([...heights].sort((a, b) => a - b).map((y) => Math.round(y * 10) / 10)).toEqual([96.7, 193.3]);
  });
  test('has them upright where its grain is', () => {
    const part = panel([0, 0, 290, 0, 290, 600, 0, 600], 'up');
    const lines = seams(drawPart(part, { width: 180 }));
    expect(lines).toHaveLength(2);
    const isAcross = part.grain === 'along-width';
    for (const [from, to] of lines)
      expect(isAcross ? (from?.x ?? 0) - (to?.x ?? 1) : (from?.y ?? 0) - (to?.y ?? 1)).toBeCloseTo(0, 9);
  });
  test('has none beyond a sloping edge', () => {
    const part = panel([0, 0, 600, 0, 300, 290, 0, 290]);
    const drawing = drawPart(part, { width: 180 });
    const scale = scaleOf(drawing, part);
    const lengths = seams(drawing).map(([from, to]) => Math.abs((to?.x ?? 0) - (from?.x ?? 0)) / scale);
    // 300 shorter over 290 of height
    expect([...lengths].sort((a, b) => a - b).map(Math.round)).toEqual([400, 500]);
  });
  test('keeps the number of the part clear of them', () => {
    const part = panel(square);
    const drawing = drawPart(part, { width: 180 });
    const number = drawing.marks.find((mark) => mark.kind === 'text' && mark.link === part.id);
    if (!number) throw new Error('no number');
    const { minY, maxY } = boxOfMark(number);
    for (const [from] of seams(drawing)) expect((from?.y ?? 0) < minY || (from?.y ?? 0) > maxY).toBe(true);
  });
  test('of one board has none', () => {
    expect(seams(drawPart(panel([0, 0, 600, 0, 600, 110, 0, 110]), { width: 180 }))).toEqual([]);
  });
});
