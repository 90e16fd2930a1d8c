import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawPairFile, drawPairTemplate, routerLayers, type SharedBlank } from '#core/drawing';
import { boxOfOutline, isInside, type Outline, type Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import { groupParts, planGroups, viewLayout, viewPairs, type Understanding } from '#core/pipeline';
import { checkDxf } from '#formats/dxf';
import { loadGlpk } from '#solver/glpk';
import { haveTool, python, runTool } from '../../../support/outside-tools.ts';
import { makePart, makePiece, makeProject, makeStock } from '../made-up.ts';

const solveLp = await loadGlpk();
const project = makeProject([makeStock('s', { length: 2440, width: 1220 })]);
const router = project.tools.router;

function shaped(id: string, outline: Outline, more: Partial<Part> = {}): Part {
  const { maxX, maxY } = boxOfOutline(outline);
  return makePart(id, [maxX, maxY, 9], { outline, ...more });
}

function understand(parts: readonly Part[]): Understanding {
  const pieces = [makePiece(parts)];
  const { groups } = groupParts(project, pieces);
  return { shapes: [], pieces, groups, routing: [], fits: [], findings: [] } as unknown as Understanding;
}

function pairOf(parts: readonly Part[]): SharedBlank {
  const [pair] = viewPairs(understand(parts));
  if (!pair) throw new Error('no pair');
  return pair;
}

const triangle: Outline = [
  { x: 0, y: 0 },
  { x: 600, y: 0 },
  { x: 0, y: 300 },
];
// a hook: no straight line parts two of them
const hook: Outline = [
  { x: 0, y: 0 },
  { x: 600, y: 0 },
  { x: 600, y: 120 },
  { x: 200, y: 120 },
  { x: 200, y: 400 },
  { x: 0, y: 400 },
];

/** Nearest that a line comes to the corners and sides of an outline, by walking along it: knows nothing of how it was found. */
function nearest(line: readonly Point[], outline: Outline): number {
  const walk = (points: readonly Point[], isClosed: boolean) =>
    points.flatMap((from, i) => {
      const to = points[i + 1] ?? (isClosed ? points[0] : undefined);
      if (!to) return [];
      return Array.from({ length: 201 }, (_, k) => ({
        x: from.x + ((to.x - from.x) * k) / 200,
        y: from.y + ((to.y - from.y) * k) / 200,
      }));
    });
  const round = walk(outline, true);
  let least = Infinity;
  for (const p of walk(line, false))
    for (const q of round) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
  return least;
}

function expectParted(pair: SharedBlank): void {
  const line = pair.between?.points ?? [];
  expect(line.length).toBeGreaterThan(1);
  for (const { outline } of pair.laid) {
    expect(nearest(line, outline)).toBeGreaterThan(pair.kerf / 2 - 0.01);
    expect(line.some((point) => isInside(point, outline))).toBe(false);
  }
  // it runs from edge to edge of the blank
  for (const end of [line[0], line[line.length - 1]]) {
    const toEdge = Math.min(
      Math.abs(end!.x),
      Math.abs(end!.y),
      Math.abs(pair.length - end!.x),
      Math.abs(pair.width - end!.y),
    );
    expect(toEdge).toBeLessThan(1e-6);
  }
}

describe('where a pair is parted', () => {
  test('two triangles: one straight cut, half way between their long sides', () => {
    const pair = pairOf([shaped('A1', triangle, { quantity: 2 })]);
    expect(pair.between?.isStraight).toBe(true);
    expect(pair.between?.points).toHaveLength(2);
    expectParted(pair);
    const [from, to] = pair.between!.points;
    // the slope of the long side, by hand: 300 down on 600 along
    expect(Math.abs((to!.y - from!.y) / (to!.x - from!.x))).toBeCloseTo(0.5, 6);
    const [one, two] = pair.laid.map(({ outline }) => nearest(pair.between!.points, outline));
    // the walk steps by up to 3 mm
    expect(Math.abs(one! - two!)).toBeLessThan(0.5);
  });

  test('two hooks: no straight cut goes between them, a jigsaw follows a line with corners', () => {
    const pair = pairOf([shaped('A1', hook, { quantity: 2 })]);
    expect(pair.between?.isStraight).toBe(false);
    expectParted(pair);
  });

  test('rectangles have no pair to part', () => {
    expect(viewPairs(understand([makePart('A1', [600, 300, 9], { quantity: 2 })]))).toEqual([]);
  });
});

describe('the template of a pair', () => {
  const pair = pairOf([shaped('A1', triangle), shaped('A2', triangle)]);
  const pages = drawPairTemplate(pair, 'A4', { job: 'test' });
  const said = pages.flatMap(({ items }) =>
    items.flatMap(({ drawing }) =>
      drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
    ),
  );

  test('shows blank, both outlines and the line at full size, with bars and ids on its pages', () => {
    const [sheet] = pages[0]?.items ?? [];
    expect(sheet?.drawing.scale).toBe(1);
    const { bounds } = sheet!.drawing;
    expect(bounds.maxX - bounds.minX).toBeCloseTo(pair.length + 6, 6);
    expect(bounds.maxY - bounds.minY).toBeCloseTo(pair.width + 6, 6);
    for (const text of ['A1', 'A2', '100 mm', 'saw between them, straight']) expect(said).toContain(text);
    expect(said.some((text) => text.startsWith('A1/A2  head to tail · page 1 of '))).toBe(true);
  });

  test('stopped: every page is stamped', () => {
    const stopped = drawPairTemplate(pair, 'A4', { job: 'test', stamp: 'DO NOT CUT' });
    for (const { items } of stopped)
      expect(
        items.some(({ drawing }) =>
          drawing.marks.some((mark) => mark.kind === 'text' && mark.text === 'DO NOT CUT'),
        ),
      ).toBe(true);
  });

  test('the cutting diagram names it', () => {
    const understanding = understand([shaped('A1', triangle), shaped('A2', triangle)]);
    const planned = planGroups(understanding.groups, { solveLp, clock: () => 0, work: 50 });
    const view = viewLayout(understanding, planned[0]!, 0, { width: 190 });
    expect(view.shared?.[0]?.note).toMatch(/^A1\/A2 {2}head to tail.*template of the pair, saw between them/);
  });
});

// ---- the file, read back by a DXF reader that is not ours (ezdxf)

const reader = haveTool('DXF of a pair read by ezdxf', python, ['-c', 'import ezdxf']);
const script = `
import sys, json, ezdxf
doc = ezdxf.readfile(sys.argv[1])
out = {'units': doc.header.get('$INSUNITS'), 'errors': len(doc.audit().errors), 'outlines': [], 'blank': [], 'line': [], 'addresses': []}
for e in doc.modelspace():
    if e.dxftype() == 'POLYLINE':
        points = [[v.dxf.location.x, v.dxf.location.y] for v in e.vertices]
        if e.dxf.layer == 'OUTLINE_THROUGH': out['outlines'].append([e.is_closed, points])
        if e.dxf.layer == 'REFERENCE_OUTLINE': out['blank'].append([e.is_closed, points])
    if e.dxf.layer == 'SAW_BETWEEN':
        if e.dxftype() == 'LINE': out['line'] += [list(e.dxf.start)[:2], list(e.dxf.end)[:2]]
        else: out['line'] += [[v.dxf.location.x, v.dxf.location.y] for v in e.vertices]
    if e.dxf.layer == 'NOTE_ADDRESS': out['addresses'].append(e.dxf.text)
print(json.dumps(out))
`;

interface Read {
  readonly units: number;
  readonly errors: number;
  readonly outlines: readonly (readonly [boolean, readonly (readonly number[])[]])[];
  readonly blank: readonly (readonly [boolean, readonly (readonly number[])[]])[];
  readonly line: readonly (readonly number[])[];
  readonly addresses: readonly string[];
}

function readBack(dxf: string): Read {
  const folder = mkdtempSync(join(tmpdir(), 'joggle-pair-'));
  try {
    writeFileSync(join(folder, 'pair.dxf'), dxf);
    return JSON.parse(runTool(python, ['-c', script, join(folder, 'pair.dxf')])) as Read;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const plain = (points: readonly (readonly number[])[]) =>
  points.map((values) => values.map((v) => Math.round(v * 100)).join()).sort();
const corners = (outline: readonly Point[]) => plain(outline.map(({ x, y }) => [x, y]));

describe.each([
  ['straight', triangle],
  ['bent', hook],
])('the file of a pair, parted %s', (_, outline) => {
  const pair = pairOf([shaped('A1', outline), shaped('A2', outline)]);
  const { dxf, layers } = drawPairFile(pair, router);

  test('is sound by our own reader, on layers the table explains', () => {
    expect(checkDxf(dxf)).toEqual([]);
    const known = routerLayers.map(({ layer }) => layer);
    for (const layer of layers) expect(known).toContain(layer);
  });

  test.skipIf(!reader)('holds both outlines, the blank and the line, in millimetres', () => {
    const read = readBack(dxf);
    expect([read.errors, read.units]).toEqual([0, 4]); // $INSUNITS 4 is mm (published DXF reference)
    expect(read.outlines.map(([isClosed]) => isClosed)).toEqual([true, true]);
    expect(read.outlines.map(([, points]) => plain(points)).sort()).toEqual(
      pair.laid.map((laid) => corners(laid.outline)).sort(),
    );
    const [x, y] = [0, 1].map((axis) => Math.max(...read.blank[0]![1].map((point) => point[axis]!)));
    expect([x, y]).toEqual([pair.length, pair.width]);
    expect(new Set(plain(read.line))).toEqual(new Set(corners(pair.between!.points)));
    expect([...read.addresses].sort()).toEqual(['A1', 'A2']);
  });
});
