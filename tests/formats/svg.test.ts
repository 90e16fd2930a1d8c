import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrangePages, drawLabels, drawLayout, fillLook } from '#core/drawing';
import type { Drawing, Fill, Mark, Pen } from '#core/drawing';
import {
  escapeXml,
  fillPattern,
  formatNumber,
  pathData,
  patternFills,
  penStyle,
  writePageSvg,
  writeSvg,
} from '#formats/svg';
import { haveTool, python, runTool } from '../support/outside-tools.ts';
import { sampleLabels, sampleLayout } from '../support/samples.ts';

const reader = haveTool('SVG read by the XML reader of Python', python, [
  '-c',
  'import xml.etree.ElementTree',
]);

const count = `
import sys, json, xml.etree.ElementTree as E
root = E.fromstring(sys.stdin.buffer.read())
names = {}
for e in root.iter():
    names[e.tag.split('}')[1]] = names.get(e.tag.split('}')[1], 0) + 1
texts = [t.text for t in root.iter('{http://www.w3.org/2000/svg}text')]
links = [e.get('data-link') for e in root.iter() if e.get('data-link')]
print(json.dumps({'size': [root.get('width'), root.get('height'), root.get('viewBox')], 'names': names, 'texts': texts, 'links': links}))
`;

interface Read {
  readonly size: readonly string[];
  readonly names: Readonly<Record<string, number>>;
  readonly texts: readonly string[];
  readonly links: readonly string[];
}

const readBack = (svg: string): Read => JSON.parse(runTool(python, ['-c', count], svg)) as Read;

const path = (points: readonly { x: number; y: number; bulge?: number }[], closed: boolean): Mark => ({
  kind: 'path',
  points,
  closed,
  pen: 'outline',
});

describe('path data', () => {
  test('y points down and a straight closed path ends with Z', () => {
    const mark = path(
      [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 10, y: 5 },
      ],
      true,
    );
    expect(pathData(mark)).toBe('M0 0L10 0L10 -5Z');
  });

  // Published DXF reference, group 42: bulge 1 is a half circle, positive counter-clockwise; from (0,0) to (10,0) the arc
  // runs below the chord. In SVG (W3C, y down) that is sweep flag 0.
  test('a half circle from (0,0) to (10,0) with bulge 1 has radius 5 and runs below the chord', () => {
    expect(
      pathData(
        path(
          [
            { x: 0, y: 0, bulge: 1 },
            { x: 10, y: 0 },
          ],
          false,
        ),
      ),
    ).toBe('M0 0A5 5 0 0 0 10 0');
  });

  // bulge of 90 degrees is 0.414214 and its radius on a chord of 10 is 7.0710678
  test('a quarter circle keeps its radius, and a negative bulge turns the other way', () => {
    const mark = path(
      [
        { x: 0, y: 0, bulge: -0.41421356 },
        { x: 10, y: 0 },
      ],
      false,
    );
    expect(pathData(mark)).toBe('M0 0A7.071 7.071 0 0 1 10 0');
  });

  test('the arc that closes a path is drawn', () => {
    const circle = path(
      [
        { x: -2, y: 0, bulge: 1 },
        { x: 2, y: 0, bulge: 1 },
      ],
      true,
    );
    expect(pathData(circle)).toBe('M-2 0A2 2 0 0 0 2 0A2 2 0 0 0 -2 0Z');
  });

  test('numbers go to a thousandth and minus zero is zero', () => {
    expect([1.23456, -0.0001, 100, 0.1 + 0.2].map(formatNumber)).toEqual(['1.235', '0', '100', '0.3']);
  });
});

describe('pens and fills', () => {
  const pens: readonly Pen[] = ['outline', 'thin', 'hidden', 'centre', 'cut', 'dimension', 'guide', 'fault'];

  test('no two pens look alike without colour', () => {
    const looks = pens.map((pen) => `${penStyle(pen)?.width} ${penStyle(pen)?.dash}`);
    expect(new Set(looks).size).toBe(pens.length);
    expect(penStyle('none')).toBeNull();
  });

  test('no two hatchings look alike without colour', () => {
    const looks = patternFills.map((fill) => {
      const { hatch } = fillLook(fill);
      return JSON.stringify({ ...hatch, tone: null });
    });
    expect(new Set(looks).size).toBe(patternFills.length);
  });

  test('every fill with a hatch has a tile, every other none', () => {
    const fills: readonly Fill[] = [
      'none',
      'paper',
      'sheet',
      'solid',
      'leftover',
      'waste',
      'keep-out',
      'kerf',
      'fault',
      'ink',
    ];
    for (const fill of fills) {
      expect(fillPattern(fill).tile !== null).toBe(fillLook(fill).hatch !== null);
      expect(patternFills.includes(fill)).toBe(fillLook(fill).hatch !== null);
    }
  });
});

describe('a whole file', () => {
  const drawing = drawLayout(sampleLayout);

  test.skipIf(!reader)('is true to size: one unit of the view box is one millimetre', () => {
    const { minX, minY, maxX, maxY } = drawing.bounds;
    const [w, h] = [formatNumber(maxX - minX), formatNumber(maxY - minY)];
    expect(readBack(writeSvg(drawing)).size).toEqual([
      `${w}mm`,
      `${h}mm`,
      `${formatNumber(minX)} ${formatNumber(-maxY)} ${w} ${h}`,
    ]);
  });

  test.skipIf(!reader)('holds as many paths and texts as were drawn, and their links', () => {
    const read = readBack(writeSvg(drawing));
    const texts = drawing.marks.filter((mark) => mark.kind === 'text');
    const paths = drawing.marks.filter((mark) => mark.kind === 'path');
    const hatched = paths.filter((mark) => fillLook(mark.fill ?? 'none').hatch !== null);
    const patterns = new Set(hatched.map((mark) => mark.fill)).size;
    expect(read.names.text).toBe(texts.length);
    expect(read.names.path).toBe(paths.length + hatched.length + patterns);
    expect(read.texts).toEqual(texts.map((mark) => mark.text));
    expect(new Set(read.links)).toEqual(new Set(drawing.marks.flatMap((mark) => mark.link ?? [])));
  });

  test('the same drawing gives the same bytes', () => {
    expect(writeSvg(drawLayout(sampleLayout))).toBe(writeSvg(drawing));
  });

  test.skipIf(!reader)('a page keeps its drawings in place and clipped', () => {
    const [page] = arrangePages([drawing], 'A4', 'Curlew');
    expect(readBack(writePageSvg(page!)).size).toEqual(['297mm', '210mm', '0 0 297 210']);
    const [labels] = drawLabels(sampleLabels, 'Letter');
    expect(readBack(writePageSvg(labels!)).size).toEqual(['215.9mm', '279.4mm', '0 0 215.9 279.4']);
  });
});

describe('text from the user', () => {
  test('markup is escaped', () => {
    expect(escapeXml(`<script>"x" & y</script>`)).toBe('&lt;script&gt;&quot;x&quot; &amp; y&lt;/script&gt;');
  });

  test.skipIf(!reader)(
    'always: comes back from an XML reader as it was, less characters that XML forbids',
    () => {
      fc.assert(
        fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1, maxLength: 40 }), (names) => {
          const marks: readonly Mark[] = names.map((text) => ({
            kind: 'text',
            at: { x: 0, y: 0 },
            text,
            height: 3,
            align: 'start',
            link: text,
          }));
          const shown: Drawing = {
            title: names.join(' '),
            bounds: { minX: 0, minY: 0, maxX: 10, maxY: 10 },
            scale: 1,
            marks,
          };
          const texts = readBack(writeSvg(shown)).texts.map((text) => text ?? '');
          // XML turns CR and CRLF in content into LF (XML 1.0, 2.11)
          const allowed = (text: string) =>
            // eslint-disable-next-line no-control-regex
            text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '').replace(/\r\n?/g, '\n');
          expect(texts).toEqual(names.map(allowed));
        }),
        { numRuns: 15 },
      );
    },
  );
});
