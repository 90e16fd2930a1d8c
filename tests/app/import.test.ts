import { expect, test } from 'vitest';
import { adjustShape, traceOutline } from '#core/pipeline';
import {
  barsOf,
  checkBars,
  contoursOf,
  readDrawingFile,
  sketchContour,
  tracedBar,
  withBar,
} from '#app/site/import.ts';

const svg =
  '<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="500mm" viewBox="0 0 900 500">' +
  '<g id="top"><path d="M0 400 H800 V0 H0 Z"/></g><g id="bar"><path d="M0 450 H700"/></g></svg>';

function read() {
  const file = readDrawingFile('Top.SVG', svg);
  if (!file.ok) throw new Error(file.problems[0]?.message);
  const candidate = contoursOf(file.value).candidates[0];
  if (!candidate) throw new Error('no contour');
  return { file: file.value, candidate };
}

test('a straight line beside the outline is offered as its check bar before the whole width', () => {
  const { file, candidate } = read();
  expect(barsOf(file, candidate, 1)).toEqual([
    { way: 'x', drawn: 700, label: 'the line on the layer "bar"' },
    { way: 'x', drawn: 800, label: 'the whole width' },
    { way: 'y', drawn: 400, label: 'the whole height' },
  ]);
});

test('the bar measured aboard brings the outline to scale, and can be measured later', () => {
  const { file, candidate } = read();
  const bars = checkBars(barsOf(file, candidate, 1), { x: 703.5 });
  expect(bars).toEqual({ x: { drawn: 700, real: 703.5 } });
  const about = { id: 'top', name: 'Top', seenFrom: 'from above' };
  const widthOf = (shape: ReturnType<typeof traceOutline>) => adjustShape(shape).adjusted?.points.B?.x;
  // joinery A9: sx = true / measured = 703.5 / 700, so 800 becomes 804
  expect(widthOf(traceOutline(candidate, { ...about, bars }))).toBeCloseTo(804, 6);
  const later = traceOutline(candidate, about);
  if (!later.traced) throw new Error('not traced');
  expect(tracedBar(later.traced, 'x')).toEqual({ drawn: 800, isWhole: true });
  const measured = withBar(later.traced, 'x', 808);
  expect(widthOf({ ...later, traced: measured })).toBeCloseTo(808, 6);
  expect(withBar(measured, 'x', null)).toEqual(later.traced);
});

test('a file that is no drawing is refused with a sentence', () => {
  expect(readDrawingFile('top.pdf', '%PDF')).toMatchObject({
    ok: false,
    problems: [{ message: '"top.pdf" is neither a DXF nor an SVG file.' }],
  });
});

test('a contour is sketched within its bounds', () => {
  const { bounds, marks } = sketchContour(read().candidate);
  const points = marks.flatMap((mark) => (mark.kind === 'path' ? mark.points : []));
  expect(points.length).toBe(4);
  for (const { x, y } of points)
    expect(x > bounds.minX && x < bounds.maxX && y > bounds.minY && y < bounds.maxY).toBe(true);
});
