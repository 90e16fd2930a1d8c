import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxOfMark,
  drawElevation,
  drawExploded,
  drawLayout,
  drawPart,
  drawReadingSketch,
  drawSurvey,
  formatScale,
} from '#core/drawing';
import type { Drawing, Mark } from '#core/drawing';
import { boxOfOutline, crossProduct, placePoint } from '#core/geometry';
import type { Point } from '#core/geometry';
import {
  sampleBatten,
  sampleDrawerSide,
  sampleFrame,
  sampleInfill,
  sampleJamb,
  sampleLayout,
  samplePart,
  sampleSurvey,
} from '../../support/samples.ts';

type TextMark = Extract<Mark, { kind: 'text' }>;
type PathMark = Extract<Mark, { kind: 'path' }>;
const textsOf = (drawing: Drawing) => drawing.marks.filter((mark): mark is TextMark => mark.kind === 'text');
const wordsOf = (drawing: Drawing) => textsOf(drawing).map((mark) => mark.text);
const pathsOf = (drawing: Drawing) => drawing.marks.filter((mark): mark is PathMark => mark.kind === 'path');
const sizeOf = (mark: Mark) => {
  const box = boxOfMark(mark);
  return [box.maxX - box.minX, box.maxY - box.minY];
};

describe('a cutting diagram', () => {
  const drawing = drawLayout(sampleLayout);

  test('is true to scale: parts and kerfs have their sizes', () => {
    expect(formatScale(drawing.scale)).toBe('1:10');
    const part = pathsOf(drawing).find((mark) => mark.link === 'C6' && mark.closed && mark.fill === 'paper');
    expect(sizeOf(part!).map((v) => v / drawing.scale)).toEqual([
      expect.closeTo(565, 6),
      expect.closeTo(230, 6),
    ]);
    const kerfs = pathsOf(drawing).filter((mark) => mark.fill === 'kerf');
    expect(kerfs).toHaveLength(sampleLayout.cuts.length);
    for (const kerf of kerfs) expect(Math.min(...sizeOf(kerf)) / drawing.scale).toBeCloseTo(3, 6);
  });

  test('names every part, every cut and every leftover worth the room', () => {
    const words = wordsOf(drawing).join('\n');
    for (const { address } of sampleLayout.parts) expect(words).toContain(address);
    for (const { label } of sampleLayout.cuts) expect(wordsOf(drawing)).toContain(label);
    for (const text of ['keep 2430 × 416', 'keep 1046 × 230', 'keep 806 × 92'])
      expect(wordsOf(drawing)).toContain(text);
  });

  // joinery E4: good face up on the table saw and the track saw
  test('a sheet says which face lies up, a batten does not', () => {
    const says = (words: readonly string[]) => words.some((text) => text.includes('good face up'));
    expect(says(wordsOf(drawing))).toBe(true);
    expect(says(wordsOf(drawLayout(sampleBatten)))).toBe(false);
  });

  test('parts too small to write in have a number and a line in the key', () => {
    expect(wordsOf(drawing)).toContain('1  E9  60 × 40 · Glue block · strip D, 1st');
    expect(wordsOf(drawing)).toContain('1');
  });

  test('a part across the grain shows the arrow across', () => {
    const area = boxOfMark(pathsOf(drawing).find((mark) => mark.link === 'D5')!);
    const arrows = pathsOf(drawing).filter((mark) => {
      const box = boxOfMark(mark);
      const inside =
        box.minX > area.minX && box.maxX < area.maxX && box.minY > area.minY && box.maxY < area.maxY;
      return inside && mark.pen === 'thin' && !mark.closed && mark.points.length === 2;
    });
    expect(arrows).toHaveLength(1);
    const [w = 0, h = 0] = sizeOf(arrows[0]!);
    expect(h).toBeGreaterThan(w);
  });

  test('labels of cuts cover neither each other nor the words of parts', () => {
    for (const shown of [drawing, drawLayout({ ...sampleLayout, width: 120 })]) {
      const labels = new Set(sampleLayout.cuts.map((cut) => cut.label));
      const boxes = textsOf(shown).filter((mark) => mark.link?.startsWith('cut:') && labels.has(mark.text));
      const words = textsOf(shown).filter(
        (mark) => mark.link && /[A-Z]/.test(mark.text) && !mark.link.startsWith('cut:'),
      );
      for (const label of boxes) {
        for (const other of [...boxes, ...words]) {
          if (other !== label) expect(overlap(label, other), `${label.text} over ${other.text}`).toBe(false);
        }
      }
    }
  });

  test('a bar is cut to length with its lengths along it', () => {
    const words = wordsOf(drawLayout(sampleBatten)).join('\n');
    for (const text of ['C1  1742', 'C8  420', '2400']) expect(words).toContain(text);
  });

  test('always: fits the width of the paper it is given, and stays within its bounds', () => {
    const widths = fc.integer({ min: 90, max: 400 });
    fc.assert(
      fc.property(widths, fc.integer({ min: 300, max: 3000 }), (width, length) => {
        const stock = { length, width: 600 };
        const shown = drawLayout({
          ...sampleLayout,
          stock,
          parts: [],
          cuts: [],
          leftovers: [],
          keepOut: [],
          usable: { x: 0, y: 0, length, width: 600 },
          width,
        });
        expect(shown.bounds.maxX - shown.bounds.minX).toBeLessThanOrEqual(width);
      }),
    );
  });
});

function overlap(a: Mark, b: Mark): boolean {
  const [p, q] = [boxOfMark(a), boxOfMark(b)];
  return p.minX < q.maxX && q.minX < p.maxX && p.minY < q.maxY && q.minY < p.maxY;
}

describe('a part drawing', () => {
  test('gives the finished sizes as dimensions and says what is machined', () => {
    const words = wordsOf(drawPart(sampleDrawerSide, { width: 180 }));
    for (const size of ['450', '92', '12', '225', '400']) expect(words).toContain(size);
    expect(words).toContain('1  groove from the back: x full, y 10–16.4, 6–12 from the face side (bottom)');
    // fingers that differ in one place only share a line
    expect(words).toContain(
      '2–4  finger from the face side: x 0–12, y 0–18.4; 36.8–55.2; 73.6–92, right through',
    );
    expect(words.some((text) => text.includes('make 2'))).toBe(true);
  });

  test('a long part is broken so that its joints stay legible', () => {
    const drawing = drawPart(sampleJamb, { width: 180 });
    expect(wordsOf(drawing).some((text) => text.includes('length broken'))).toBe(true);
    expect(drawing.bounds.maxX - drawing.bounds.minX).toBeLessThanOrEqual(180);
    expect(62 * drawing.scale).toBeGreaterThan(10);
  });

  test('an edge to be scribed is wavy and says how much', () => {
    const drawing = drawPart(sampleInfill, { width: 180 });
    expect(wordsOf(drawing)).toContain('scribe 12');
    expect(
      pathsOf(drawing).some((mark) => !mark.closed && mark.points.filter((p) => p.bulge).length > 6),
    ).toBe(true);
  });

  test('work on the back is dashed, work on the face is not', () => {
    const drawing = drawPart(sampleDrawerSide, { width: 180 });
    expect(pathsOf(drawing).filter((mark) => mark.pen === 'hidden').length).toBeGreaterThan(0);
  });

  test('of a part too narrow for any sign still comes out', () => {
    expect(drawPart(samplePart('T1', [2000, 8, 4]), { width: 120 }).marks.length).toBeGreaterThan(10);
  });

  // The face view must be what one sees when the face side looks at one, never its mirror image. Whoever looks at the face
  // looks along the part's z; in the frame of the piece the viewer looks along -z, so a part with its z away from the viewer
  // shows its face. The elevation is drawn from the placement alone.
  test('the face view is the elevation turned, not mirrored', () => {
    const [placement] = sampleInfill.placements;
    expect(crossProduct(placement!.xAxis, placement!.yAxis).z).toBe(-1);
    const front = pathsOf(drawElevation({ ...sampleFrame, parts: [sampleInfill] }, { width: 180 })).find(
      (m) => m.link === 'C6',
    );
    const face = pathsOf(drawPart(sampleInfill, { width: 180 })).find((m) => m.link === 'C6');
    // the slope rises to the left as seen from the saloon: 212 high at the left, 190 at the right
    const corners = sampleInfill.outline.map((p) => placePoint(placement!, { ...p, z: 0 }));
    expect(corners[1]!.y).toBeGreaterThan(corners[2]!.y);
    expect(corners[1]!.x).toBeLessThan(corners[2]!.x);
    expect(turnOf(face!.points, 212, 190, 560)).toBe(turnOf(front!.points, 212, 190, 560));
  });
});

/** +1 when, going round counter-clockwise, the side as long as `first` comes just before the one as long as `base`, else -1. */
function turnOf(points: readonly Point[], first: number, second: number, base: number): number {
  const n = points.length;
  const area = points.reduce(
    (sum, p, i) => sum + (p.x * points[(i + 1) % n]!.y - points[(i + 1) % n]!.x * p.y),
    0,
  );
  const round = area > 0 ? points : [...points].reverse();
  const lengths = round.map((p, i) => Math.hypot(round[(i + 1) % n]!.x - p.x, round[(i + 1) % n]!.y - p.y));
  const scale = Math.min(...lengths) / second;
  const is = (i: number, length: number) => Math.abs(lengths[(i + n) % n]! / scale - length) < 0.2;
  const foot = lengths.findIndex((_, i) => is(i, base) && (is(i - 1, first) || is(i + 1, first)));
  return is(foot - 1, first) ? 1 : -1;
}

describe('an elevation', () => {
  const drawing = drawElevation(sampleFrame, { width: 180 });

  test('shows every part once for each copy, under its address', () => {
    const areas = pathsOf(drawing).filter(
      (mark) => mark.closed && (mark.fill === 'solid' || mark.fill === 'sheet'),
    );
    expect(areas.map((mark) => mark.link).sort()).toEqual(['C1', 'C2', 'C3', 'C4', 'C5', 'C5', 'C6']);
    for (const id of ['C1', 'C2', 'C3', 'C4', 'C5', 'C6']) expect(wordsOf(drawing)).toContain(id);
  });

  test('draws near parts over far ones', () => {
    const order = pathsOf(drawing).flatMap((mark) => (mark.fill === 'solid' ? [mark.link] : []));
    expect(order.indexOf('C1')).toBeLessThan(order.indexOf('C5'));
  });

  test('gives overall sizes and a chain that adds up to them', () => {
    const words = wordsOf(drawing);
    expect(words).toContain('715');
    const chain = ['45', '17', '591', '17', '45'].map(Number);
    for (const size of chain) expect(words).toContain(String(size));
    expect(chain.reduce((a, b) => a + b)).toBe(715);
  });

  test('of nothing says so', () => {
    const empty = { ...sampleFrame, parts: [] };
    expect(wordsOf(drawElevation(empty, { width: 100 }))[0]).toContain('nothing to draw');
    expect(wordsOf(drawExploded(empty, { width: 100 }))[0]).toContain('nothing to draw');
  });

  test('pulled apart shows every copy and its address', () => {
    const words = wordsOf(drawExploded(sampleFrame, { width: 180 }));
    expect(words.filter((text) => text === 'C5')).toHaveLength(2);
    for (const id of ['C1', 'C2', 'C3', 'C4', 'C6']) expect(words).toContain(id);
  });
});

describe('a survey', () => {
  const drawing = drawSurvey(sampleSurvey);

  test('shows every reading with its value and every corner with its two sigma', () => {
    const words = wordsOf(drawing);
    for (const text of ['wb  641', 'd1  1868', 'w13  639', 'pl +14', 'lh +6', 'BL', 'TR', '±1.4'])
      expect(words).toContain(text);
    for (const { id } of sampleSurvey.readings)
      expect(drawing.marks.some((mark) => mark.link === id)).toBe(true);
  });

  test('the suspect has the fault pen and says by how much', () => {
    const faults = pathsOf(drawing).filter((mark) => mark.pen === 'fault');
    expect(faults.map((mark) => mark.link)).toEqual(['d2']);
    expect(wordsOf(drawing)).toContain('suspect: 9.8 too long');
  });

  test('residuals are numbers with a sign', () => {
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(['−0.4', '+0.2', '−0.3']));
  });

  test('exaggeration multiplies what is out of square, not the size', () => {
    const lean = (times: number) => {
      const shown = drawSurvey({ ...sampleSurvey, exaggerate: times });
      const left = pathsOf(shown).find((mark) => mark.link === 'left');
      const [from, to] = left!.points as [Point, Point];
      return { dx: (to.x - from.x) / shown.scale, dy: (to.y - from.y) / shown.scale };
    };
    expect(lean(1).dx).toBeCloseTo(14, 6);
    expect(lean(5).dx).toBeCloseTo(70, 6);
    expect(Math.abs(lean(5).dy - lean(1).dy)).toBeLessThan(20);
  });

  test('readings that fix no shape yet make a sketch that says so', () => {
    const open = drawSurvey({
      ...sampleSurvey,
      shape: null,
      readings: sampleSurvey.readings.slice(0, 2),
      adjustment: { ...sampleSurvey.adjustment, suspects: [], undetermined: ['Nothing fixes TR.'] },
    });
    expect(wordsOf(open)).toEqual(expect.arrayContaining(['wb  641', 'Nothing fixes TR.']));
    expect(drawSurvey({ ...sampleSurvey, shape: null, readings: [] }).marks.length).toBeGreaterThan(4);
  });

  test('a sketch of each kind of reading shows its line', () => {
    for (const reading of sampleSurvey.readings)
      expect(drawReadingSketch(reading).marks.length).toBeGreaterThan(6);
    const odd = drawReadingSketch({ kind: 'distance', from: 'P1', to: 'BL' });
    expect(wordsOf(odd)).toContain('P1');
  });
});

test('an outline with arcs keeps its size on every view', () => {
  const box = boxOfOutline(sampleInfill.outline);
  const drawing = drawPart(sampleInfill, { width: 180 });
  const face = pathsOf(drawing).find((mark) => mark.link === 'C6');
  expect(sizeOf(face!)).toEqual([
    expect.closeTo((box.maxX - box.minX) * drawing.scale, 6),
    expect.closeTo((box.maxY - box.minY) * drawing.scale, 6),
  ]);
});
