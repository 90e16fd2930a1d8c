import { describe, expect, test } from 'vitest';
import { outlineArea } from '#core/geometry';
import { drawExploded, drawPart, drawRouterFiles, listMachining } from '#core/drawing';
import type { Drawing, Mark } from '#core/drawing';
import { buildKind, partOf } from '../../support/flat-pieces.ts';

type Path = Extract<Mark, { kind: 'path' }>;
const paths = ({ marks }: Drawing, link: string): readonly Path[] =>
  marks.filter((mark): mark is Path => mark.kind === 'path' && mark.closed && mark.link === link);

describe('parts pulled apart', () => {
  const ring = buildKind('hatch-surround', {
    width: 520,
    height: 520,
    form: 'one-piece',
    lining: 'none',
    materials: { ring: 'ply18' },
  });
  test('show a curved part with its outline and what is cut through it', () => {
    const drawn = paths(drawExploded(ring, { width: 190 }), 'P1');
    const [hole] = drawn.filter(({ pen }) => pen === 'thin');
    const face = drawn.filter(({ pen }) => pen === 'outline').at(-1);
    expect(face?.points.length).toBeGreaterThan(20);
    // an isometric view shows every area of one plane in the same proportion
    const share = Math.abs(outlineArea(hole?.points ?? []) / outlineArea(face?.points ?? [{ x: 0, y: 0 }]));
    const true_ = partOf(ring, 1);
    expect(share).toBeCloseTo(outlineArea(true_.holes[0] ?? []) / outlineArea(true_.outline), 2);
  });
  test('show a round edge as one side, not as its chords', () => {
    const drawn = paths(drawExploded(ring, { width: 190 }), 'P1').filter(({ pen }) => pen === 'outline');
    expect(drawn.length).toBeLessThan(6);
  });
});

describe('a part on its sheet', () => {
  const trim = buildKind('trim-run', {
    wallLengths: [900, 600],
    cornerAngles: [92],
    materials: { trim: 'oak' },
  });
  test('slopes at its end in the edge view as the saw is set', () => {
    const drawing = drawPart(partOf(trim, 1), { width: 190 });
    const [edge] = paths(drawing, 'P1').slice(-1);
    const xs = edge?.points.map(({ x }) => x) ?? [];
    const ys = edge?.points.map(({ y }) => y) ?? [];
    const tall = Math.max(...ys) - Math.min(...ys);
    const slopes = [...xs].sort((a, b) => a - b);
    expect(((slopes[1] ?? 0) - (slopes[0] ?? 0)) / tall).toBeCloseTo(Math.tan((44 * Math.PI) / 180), 6);
  });
  test('has its section beside it when it is worked along its whole length', () => {
    const posts = buildKind('trim-run', {
      wallLengths: [500, 400],
      cornerAngles: [270],
      outside: 'post',
      postRadius: 25,
      width: 300,
      materials: { trim: 'oak' },
    });
    const drawing = drawPart(partOf(posts, 3), { width: 190 });
    const section = paths(drawing, 'P3').filter(({ fill }) => fill === 'solid');
    // a quarter of a circle of 25 and the square before it, less what the corner of the wall takes: worked out by hand
    const wanted = (Math.PI / 4) * 25 ** 2 - (25 - 14) ** 2;
    expect(
      section.reduce((sum, { points }) => sum + outlineArea(points), 0) / drawing.scale ** 2,
    ).toBeCloseTo(wanted, 0);
  });
});

test('a slot in the middle of the thickness is no pocket of the router, and is told as what it is', () => {
  const frame = buildKind('free-frame', { width: 600, height: 400, materials: { frame: 'oak' } });
  const member = partOf(frame, 1);
  expect(listMachining(member).join()).toMatch(/within/);
  const files = drawRouterFiles(member, { cutter: 6, passDepth: 4 });
  expect(JSON.stringify(files)).not.toMatch(/pocket/i);
});
