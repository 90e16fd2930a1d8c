import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { boxOfMark, drawElevation } from '#core/drawing';
import type { Box, Point } from '#core/geometry';
import { understandProject } from '#core/pipeline';
import { readProject } from '#formats/json';

function readGalley() {
  const read = readProject(readFileSync('static/projects/curlew-galley.json', 'utf8'));
  if (!read.ok) throw new Error('the galley cannot be read');
  return read.value;
}

const isNumber = (text: string): boolean => /^[\d.]+$/.test(text);

/** Whether two boxes come nearer than so much. */
function overlap(a: Box, b: Box, near: number): boolean {
  const meet = (low: number, high: number, from: number, to: number): boolean =>
    low < to + near && from < high + near;
  return meet(a.minX, a.maxX, b.minX, b.maxX) && meet(a.minY, a.maxY, b.minY, b.maxY);
}

/** A short slanting line: a size led out to its text. */
function isLeader(points: readonly Point[]): boolean {
  const [from, to] = points;
  if (points.length !== 2 || !from || !to || Math.abs(to.y - from.y) < 0.3) return false;
  return from.x < 0 && Math.abs(to.x - from.x + 3.9) < 0.05;
}

function runsThrough(from: Point, to: Point, box: Box): boolean {
  return Array.from({ length: 101 }, (_, i) => i / 100).some((t) => {
    const [x, y] = [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
    return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY;
  });
}

test('sizes led out stand beyond the end of their chain rather than run over another size', () => {
  const run = understandProject(readGalley()).pieces.find(({ kind }) => kind === 'run');
  if (!run) throw new Error('the galley has no run');
  const { marks } = drawElevation(run, { width: 180 });
  const upright = marks.filter((mark) => mark.kind === 'text' && (mark.turn ?? 0) > 1 && isNumber(mark.text));
  expect(upright.length).toBeGreaterThan(8);
  // without the room of descenders, which figures have none of: there a leader ends at its own text
  const boxes = upright.map(boxOfMark).map((box) => ({ ...box, maxX: box.maxX - 0.75 }));
  boxes.forEach((box, i) => {
    const others = boxes.slice(i + 1);
    expect(others.filter((other) => overlap(box, other, 0.3))).toEqual([]);
  });
  const leaders = marks.flatMap((mark) =>
    mark.kind === 'path' && isLeader(mark.points) ? [mark.points] : [],
  );
  expect(leaders.length).toBeGreaterThan(0);
  for (const [from, to] of leaders) expect(boxes.filter((box) => runsThrough(from!, to!, box))).toEqual([]);
});
