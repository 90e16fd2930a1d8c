import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { arrangePages, drawLabels, drawLayout, drawTemplate } from '#core/drawing';
import { writePdf } from '#formats/pdf';
import { nodeFonts } from '../../src/formats/pdf/node-fonts.ts';
import { haveTool, runTool } from '../support/outside-tools.ts';
import { sampleInfill, sampleLabels, sampleLayout } from '../support/samples.ts';

const info = { job: 'Curlew', piece: 'Saloon door frame', seenFrom: 'from the saloon, looking forward' };
const fonts = nodeFonts();
const template = drawTemplate(sampleInfill, 'A4', info);
const pages = [
  ...template,
  ...arrangePages([drawLayout(sampleLayout)], 'A4', 'Curlew, cutting'),
  ...drawLabels(sampleLabels, 'Letter', { stamp: 'DO NOT CUT' }),
];

let folder = '';
let file = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'joggle-pdf-'));
  file = join(folder, 'sample.pdf');
  writeFileSync(file, await writePdf(pages, { title: 'Côté Ø8 ≥ 5', fonts }));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const pdfinfo = haveTool('PDF read by pdfinfo', 'pdfinfo', ['-v']);
const mutool = haveTool('PDF measured by mutool', 'mutool', ['-v']);
const cairo = haveTool('PDF measured by pdftocairo', 'pdftocairo', ['-v']);
const qpdf = haveTool('PDF checked by qpdf', 'qpdf', ['--version']);

test('the same pages give the same bytes', async () => {
  const one = await writePdf(pages, { title: 'x', fonts });
  const two = await writePdf(pages, { title: 'x', fonts });
  expect(Buffer.compare(one, two)).toBe(0);
});

test('no page at all is still a file', async () => {
  const bytes = await writePdf([], { title: 'nothing', fonts });
  expect(Buffer.from(bytes.slice(0, 5)).toString()).toBe('%PDF-');
});

// ISO 216 sizes at 72 points to the inch: A4 is 595.276 by 841.890 points; Letter is 8.5 by 11 inches, 612 by 792 points.
test.skipIf(!pdfinfo)('pages have the size of the paper', () => {
  const text = runTool('pdfinfo', ['-f', '1', '-l', String(pages.length), file]);
  const sizes = [...text.matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+)/g)].map((m) => [
    Number(m[1]),
    Number(m[2]),
  ]);
  expect(sizes).toHaveLength(pages.length);
  expect(sizes[0]?.[0]).toBeCloseTo(841.89, 2);
  expect(sizes[0]?.[1]).toBeCloseTo(595.276, 2);
  expect(sizes.at(-1)).toEqual([612, 792]);
  expect(text).toContain('Côté Ø8 ≥ 5');
});

/** Straight lines of a page in points, as a PDF reader that is not ours sees them. */
function linesSeen(page: number): readonly { readonly dx: number; readonly dy: number }[] {
  const trace = runTool('mutool', ['trace', file, String(page)]);
  return [
    ...trace.matchAll(
      /<stroke_path[^>]*transform="([^"]*)"[^>]*>\s*<moveto x="([^"]*)" y="([^"]*)"\/>\s*<lineto x="([^"]*)" y="([^"]*)"\/>\s*<\/stroke_path>/g,
    ),
  ].map((m) => {
    const [a = 1, , , d = 1] = (m[1] ?? '').split(/\s+/).map(Number);
    return {
      dx: Math.abs((Number(m[4]) - Number(m[2])) * a),
      dy: Math.abs((Number(m[5]) - Number(m[3])) * d),
    };
  });
}

// 100 mm = 283.465 points (ISO 32000-1: 1/72 inch)
test.skipIf(!mutool)('every template page carries a bar of 100 mm each way', () => {
  template.forEach((_, i) => {
    const lines = linesSeen(i + 1);
    expect(
      lines.filter(({ dx, dy }) => Math.abs(dx - 283.465) < 0.01 && dy === 0),
      `page ${i + 1}`,
    ).toHaveLength(1);
    expect(
      lines.filter(({ dx, dy }) => Math.abs(dy - 283.465) < 0.01 && dx === 0),
      `page ${i + 1}`,
    ).toHaveLength(1);
  });
});

test.skipIf(!cairo)('a second reader measures both bars the same', () => {
  const svg = runTool('pdftocairo', ['-svg', '-noshrink', '-nocenter', '-f', '1', '-l', '1', file, '-']);
  const spans = [...svg.matchAll(/ d="M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+) ?"/g)].map((m) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = m.slice(1).map(Number);
    return [Math.abs(x2 - x1), Math.abs(y2 - y1)];
  });
  const near = (want: number) => (v: number | undefined) => Math.abs((v ?? 0) - want) < 0.02;
  expect(spans.some(([dx]) => near(283.465)(dx))).toBe(true);
  expect(spans.some(([, dy]) => near(283.465)(dy))).toBe(true);
});

test.skipIf(!qpdf)('a checker of the format finds nothing', () => {
  expect(runTool('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors found');
});

test.skipIf(!haveTool('fonts listed by pdffonts', 'pdffonts', ['-v']))(
  'both fonts are embedded as subsets',
  () => {
    const rows = runTool('pdffonts', [file]).split('\n').slice(2).filter(Boolean);
    expect(rows).toHaveLength(2);
    for (const row of rows) expect(row).toMatch(/^[A-Z]{6}\+DejaVuSansCondensed.* yes yes yes/);
  },
);

describe('text', () => {
  test.skipIf(!haveTool('text read by pdftotext', 'pdftotext', ['-v']))('comes back as written', () => {
    const text = runTool('pdftotext', ['-raw', file, '-']).replace(/\s+/g, ' ');
    for (const wanted of ['C6', 'Print at 100 %, not fitted to the page.', 'Locker side', '2430 × 416']) {
      expect(text).toContain(wanted);
    }
  });
});
