import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import fc from 'fast-check';
import makerjs from 'makerjs';
import { describe, expect, test } from 'vitest';

import { outlineArea, rectangleOutline } from '#core/geometry';
import { adjustShape, chooseOutline, traceOutline, type DrawnFile } from '#core/pipeline';
import { checkProject, newProject } from '#core/project';
import { readDxfDrawing } from '#formats/dxf';
import { readSvgDrawing } from '#formats/svg';

import { haveTool, python, runTool } from '../support/outside-tools.ts';

const seenFrom = 'from the saloon, looking forward';

function read(result: ReturnType<typeof readDxfDrawing>): DrawnFile {
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' '));
  return result.value;
}

const svg = (body: string, head = 'width="800mm" height="600mm" viewBox="0 0 800 600"'): string =>
  `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" ${head}>${body}</svg>`;

describe('outlines from SVG', () => {
  test('every way to draw a closed line gives its area', () => {
    const examples: readonly (readonly [string, number])[] = [
      ['<rect x="10" y="20" width="300" height="200"/>', 60_000],
      ['<polygon points="0,0 300,0 0,400"/>', 60_000],
      ['<path d="M10 10 h300 v200 h-300 z"/>', 60_000],
      ['<path d="M10 10 L310 10 L310 210 L10 210 L10 10"/>', 60_000],
      ['<circle cx="300" cy="300" r="100"/>', Math.PI * 100 ** 2],
      ['<ellipse cx="300" cy="300" rx="200" ry="50"/>', Math.PI * 200 * 50],
      ['<rect x="0" y="0" width="300" height="200" rx="40"/>', 60_000 - (4 - Math.PI) * 40 ** 2],
      // under a parabola from 0 to 300, 100 high at the control point: two thirds of half of it
      ['<path d="M0 0 Q150 200 300 0 Z"/>', (300 * 100 * 2) / 3],
    ];
    for (const [body, area] of examples) {
      const { candidates } = chooseOutline(read(readSvgDrawing(svg(body))));
      expect(candidates, body).toHaveLength(1);
      expect(candidates[0]?.area, body).toBeCloseTo(area, -2);
      expect(Math.abs((candidates[0]?.area ?? 0) / area - 1), body).toBeLessThan(2e-4);
    }
  });

  test('transforms of groups add up, y turns upwards, groups give the layer, what is not drawn is left out', () => {
    const body =
      '<defs><rect width="700" height="500"/></defs><g style="display:none"><rect width="600" height="500"/></g>' +
      '<g id="mouth" transform="translate(100 50) scale(2)"><g transform="rotate(90)"><rect x="0" y="-100" width="50" height="100"/></g></g>';
    const { candidates } = chooseOutline(read(readSvgDrawing(svg(body))));
    expect(candidates).toHaveLength(1);
    expect(candidates[0]?.layer).toBe('mouth');
    expect(candidates[0]?.width).toBeCloseTo(200, 6);
    expect(candidates[0]?.height).toBeCloseTo(100, 6);
    const ys = candidates[0]?.outline.map(({ y }) => y) ?? [];
    expect(Math.max(...ys)).toBeCloseTo(-50, 6); // 50 from the top in the file
    expect(outlineArea(candidates[0]?.outline ?? [])).toBeGreaterThan(0);
  });

  test('units: mm, inches, a view box; pixels are told', () => {
    const rect = '<rect width="10" height="10"/>';
    const width = (head: string) => chooseOutline(read(readSvgDrawing(svg(rect, head))));
    expect(width('width="4in" height="4in" viewBox="0 0 4 4"').candidates[0]?.width).toBeCloseTo(254, 6);
    expect(width('width="100cm" height="100cm" viewBox="0 0 100 100"').candidates[0]?.width).toBeCloseTo(
      100,
      6,
    );
    const loose = width('viewBox="0 0 100 100"');
    expect(loose.candidates[0]?.width).toBe(10);
    expect(loose.findings.map(({ code }) => code)).toEqual(['unit-unknown']);
  });

  test('what is broken ends in a sentence', () => {
    for (const text of [
      '',
      'no picture',
      '<svg><g></svg>',
      '<html xmlns="http://www.w3.org/1999/xhtml"/>',
      '\0\0',
    ]) {
      const result = readSvgDrawing(text);
      expect(result.ok, text).toBe(false);
      expect(result.problems[0]?.code).toBe('svg-unreadable');
      expect(result.problems[0]?.message).toMatch(/\.$/);
    }
    const half = read(readSvgDrawing(svg('<path d="M0 0 L100 0 L100 nonsense"/>')));
    expect(half.findings.map(({ code }) => code)).toEqual(['svg-path-broken']);
    expect(chooseOutline(half).findings.map(({ code }) => code)).toContain('no-contour');
  });
});

describe('outlines from DXF', () => {
  test('what another library writes is read: arcs stay arcs', () => {
    const model: makerjs.IModel = new makerjs.models.RoundRectangle(500, 400, 60);
    const text = makerjs.exporter.toDXF(model, { units: makerjs.unitType.Millimeter });
    const { candidates } = chooseOutline(read(readDxfDrawing(text)));
    expect(candidates).toHaveLength(1);
    expect(candidates[0]).toMatchObject({ width: 500, height: 400, inside: 0 });
    expect(candidates[0]?.area).toBeCloseTo(500 * 400 - (4 - Math.PI) * 60 ** 2, 3);
    expect(candidates[0]?.outline.filter(({ bulge }) => bulge)).not.toEqual([]);
  });

  test('several contours: the largest first, what lies within is counted; layers are kept', () => {
    const model: makerjs.IModel = {
      models: {
        mouth: { ...new makerjs.models.Rectangle(700, 500), layer: 'mouth' },
        pipe: { ...new makerjs.models.Ellipse(30, 30), layer: 'pipe', origin: [200, 200] },
        other: { ...new makerjs.models.Rectangle(100, 100), layer: 'other', origin: [900, 0] },
      },
    };
    const text = makerjs.exporter.toDXF(model, { units: makerjs.unitType.Millimeter });
    const { candidates } = chooseOutline(read(readDxfDrawing(text)));
    expect(candidates.map(({ layer, inside }) => [layer, inside])).toEqual([
      ['mouth', 1],
      ['other', 0],
      ['pipe', 0],
    ]);
  });

  test('a small gap is closed and told, a wide one is no contour', () => {
    const line = (x1: number, y1: number, x2: number, y2: number) =>
      `0\nLINE\n8\n0\n10\n${x1}\n20\n${y1}\n11\n${x2}\n21\n${y2}\n`;
    const triangle = (gap: number) =>
      `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n` +
      `${line(0, 0, 300, 0)}${line(300, 400, 300, 0)}${line(300, 400, 0, gap)}0\nENDSEC\n0\nEOF\n`;
    const near = chooseOutline(read(readDxfDrawing(triangle(0.2))));
    expect(near.candidates[0]?.area).toBeCloseTo(60_000, -2);
    expect(near.findings.map(({ code }) => code)).toEqual(['gap-closed']);
    const far = chooseOutline(read(readDxfDrawing(triangle(5))));
    expect(far.candidates).toEqual([]);
    expect(far.findings[0]).toMatchObject({ code: 'no-contour', severity: 'stop' });
    expect(far.findings[0]?.message).toContain('3 lines');
  });

  test('the unit of the file counts, and can be said otherwise', () => {
    const model: makerjs.IModel = new makerjs.models.Rectangle(20, 10);
    const inch = read(readDxfDrawing(makerjs.exporter.toDXF(model, { units: makerjs.unitType.Inch })));
    expect(chooseOutline(inch).candidates[0]).toMatchObject({ width: 508, height: 254 });
    expect(chooseOutline(inch, 10).candidates[0]).toMatchObject({ width: 200, height: 100 });
  });

  test('what is broken ends in a sentence', () => {
    for (const text of [
      '',
      'nonsense',
      '0\nSECTION\n2',
      '\0\0binary',
      '0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nabc\n',
    ]) {
      const result = readDxfDrawing(text);
      const findings = result.ok ? chooseOutline(result.value).findings : result.problems;
      expect(
        findings.map(({ severity }) => severity),
        text,
      ).toContain('stop');
      for (const { message } of findings) expect(message).toMatch(/\.$/);
    }
  });

  const reader = haveTool('DXF written by ezdxf', python, ['-c', 'import ezdxf']);
  test.skipIf(!reader)(
    'an ellipse, a spline, a block put twice and one turned over, as ezdxf writes them',
    () => {
      const script = `
import sys, math, ezdxf
doc = ezdxf.new('R2010'); doc.header['$INSUNITS'] = 4; m = doc.modelspace()
m.add_ellipse((0, 0), (300, 0), 0.5, dxfattribs={'layer': 'ellipse'})
block = doc.blocks.new('B'); block.add_lwpolyline([(0, 0), (100, 0, 0, 0, 1), (100, 60), (0, 60)], close=True)
m.add_blockref('B', (1000, 0), dxfattribs={'xscale': 2, 'yscale': 2, 'rotation': 90})
m.add_lwpolyline([(0, 0), (100, 0, 0, 0, 1), (100, 60), (0, 60)], close=True, dxfattribs={'layer': 'back', 'extrusion': (0, 0, -1)})
s = m.add_open_spline([(2000, 0), (2200, 300), (2500, -300), (2700, 0)], degree=3, dxfattribs={'layer': 'spline'})
m.add_line((2700, 0), (2700, -500), dxfattribs={'layer': 'spline'}); m.add_line((2700, -500), (2000, -500), dxfattribs={'layer': 'spline'})
m.add_line((2000, -500), (2000, 0), dxfattribs={'layer': 'spline'})
doc.saveas(sys.argv[1])
points = list(s.flattening(0.001)); points += [(2700, -500, 0), (2000, -500, 0)]
print(abs(sum(points[i-1][0]*points[i][1]-points[i][0]*points[i-1][1] for i in range(len(points)))/2))
`;
      const folder = mkdtempSync(join(tmpdir(), 'joggle-'));
      try {
        const path = join(folder, 'a.dxf');
        const splineArea = Number(runTool(python, ['-c', script, path]));
        const { candidates, findings } = chooseOutline(read(readDxfDrawing(readFileSync(path, 'utf8'))));
        expect(findings).toEqual([]);
        const area = (layer: string) => candidates.find((each) => each.layer === layer)?.area ?? 0;
        const half = (Math.PI * 30 ** 2) / 2;
        expect(area('ellipse') / (Math.PI * 300 * 150)).toBeCloseTo(1, 3);
        expect(area('0')).toBeCloseTo(4 * (6000 + half), 3);
        expect(area('back')).toBeCloseTo(6000 + half, 3);
        expect(area('spline') / splineArea).toBeCloseTo(1, 4);
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
  );
});

describe('a traced outline', () => {
  const trace = (body: string, bars?: { x: { drawn: number; real: number } }) => {
    const [candidate] = chooseOutline(read(readSvgDrawing(svg(body)))).candidates;
    if (!candidate) throw new Error('no contour');
    return traceOutline(candidate, {
      id: 'm',
      name: 'Mouth',
      seenFrom,
      source: 'mouth.svg',
      ...(bars && { bars }),
    });
  };

  test('is a sound shape of a project, its corners named from the lowest at the left', () => {
    const shape = trace('<path d="M400 100 H100 V400 H400 Z"/>', { x: { drawn: 300, real: 301 } });
    expect(checkProject({ ...newProject('Curlew'), shapes: [shape] })).toEqual([]);
    expect(shape.corners).toEqual(['A', 'B', 'C', 'D']);
    const { adjusted } = adjustShape(shape);
    expect(adjusted?.points['B']?.x).toBeCloseTo(301, 6);
    expect(adjusted?.points['D']?.y).toBeCloseTo(301, 6);
    expect(adjusted?.edges.map(({ curve }) => curve)).toEqual([undefined, undefined, undefined, undefined]);
  });

  test('a curve of many chords is one edge; a circle has two', () => {
    const arch = trace('<path d="M100 400 V200 C100 50 400 50 400 200 V400 Z"/>');
    const { adjusted } = adjustShape(arch);
    expect(adjusted?.edges).toHaveLength(arch.corners.length);
    expect(arch.corners.length).toBeLessThanOrEqual(4);
    expect(adjusted?.edges.some(({ curve }) => (curve?.length ?? 0) > 10)).toBe(true);
    expect(adjustShape(trace('<circle cx="300" cy="300" r="100"/>')).adjusted?.edges).toHaveLength(2);
  });

  test('always: a rectangle drawn anywhere, either way round, has its own width and height', () => {
    const side = fc.double({ min: 10, max: 700, noNaN: true });
    fc.assert(
      fc.property(side, side, fc.boolean(), (width, height, isBackwards) => {
        const corners = rectangleOutline(width, height, { x: 3, y: 4 });
        const way = isBackwards ? corners.toReversed() : corners;
        const points = way.map(({ x, y }) => `${x},${y}`).join(' ');
        const { adjusted } = adjustShape(trace(`<polygon points="${points}"/>`));
        expect(adjusted?.points['B']?.x).toBeCloseTo(width, 6);
        expect(adjusted?.points['C']?.y).toBeCloseTo(height, 6);
      }),
      { numRuns: 50 },
    );
  });
});
