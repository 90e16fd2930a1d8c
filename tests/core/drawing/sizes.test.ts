import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxOfMark,
  drawElevation,
  drawLayout,
  drawPart,
  drawStockSketch,
  drawSurvey,
  drawTemplate,
} from '#core/drawing';
import type { Drawing, Mark } from '#core/drawing';
import { buildPiece, defaultSettings, newPiece } from '#core/joinery';
import type { BuiltPiece, Material, Piece } from '#core/joinery';
import { sampleFrame, sampleInfill, sampleJamb, sampleLayout, sampleSurvey } from '../../support/samples.ts';

type TextMark = Extract<Mark, { kind: 'text' }>;
const textsOf = (drawing: Drawing) => drawing.marks.filter((mark): mark is TextMark => mark.kind === 'text');
const wordsOf = (drawing: Drawing) => textsOf(drawing).map((mark) => mark.text);
const isSize = (mark: Mark) => mark.link?.startsWith('size:') ?? false;

const materials: readonly Material[] = [
  { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' },
  { id: 'ply', kind: 'sheet', name: 'Birch plywood', thickness: 17.7 },
  { id: 'thin', kind: 'sheet', name: 'Thin plywood', thickness: 6.4 },
];

function buildFront(parameters: Record<string, unknown>): BuiltPiece {
  const piece = newPiece('cabinet-front', {
    id: 'b',
    letter: 'B',
    name: 'Galley front',
    shape: undefined,
    materials,
  });
  const made = { ...piece, parameters: { ...piece.parameters, ...parameters } } as Piece;
  return buildPiece(made, { shape: null, materials, settings: defaultSettings });
}

const inset = buildFront({ width: 940, height: 720, columns: 2, rows: 1, fronts: 'inset' });
const overlay = buildFront({ width: 520, height: 680, columns: 1, rows: 4, fronts: 'overlay' });

describe('sizes on an elevation', () => {
  test.each([inset, overlay, sampleFrame])(
    'a linked number is the value of the step it leads to',
    (built) => {
      const linked = textsOf(drawElevation(built, { width: 180 })).filter(isSize);
      if (built.working.length > 0) expect(linked.length).toBeGreaterThan(5);
      for (const { text, link } of linked) {
        const step = built.working.find(({ name }) => `size:${name}` === link);
        expect(Math.abs(Number(text) - (step?.value ?? NaN))).toBeLessThan(0.1);
      }
    },
  );

  test('the size of a narrow piece, led out below it, stands clear of the words beneath', () => {
    const piece = newPiece('infill', { id: 'q', letter: 'Q', name: 'Infill', materials });
    const built = buildPiece(piece, { shape: null, materials, settings: defaultSettings });
    const texts = textsOf(drawElevation(built, { width: 180 }));
    const words = texts.find(({ text }) => text.startsWith('Seen'));
    const size = texts.find(({ text }) => text === '20');
    if (!words || !size) throw new Error('nothing is written');
    expect(boxOfMark(words).maxY).toBeLessThan(boxOfMark(size).minY);
  });

  test('overall, clear, front and member sizes each lead to their own step', () => {
    const links = new Set(drawElevation(inset, { width: 180 }).marks.flatMap((mark) => mark.link ?? []));
    for (const name of ['W', 'H', 'wo', 'h1', 'front_w', 'f1', 'ws', 'wt', 'wb', 'g'])
      expect(links).toContain(`size:${name}`);
  });

  test('what the fronts leave to be seen of stiles and rails has a step too', () => {
    const texts = textsOf(drawElevation(overlay, { width: 180 }));
    const value = (name: string) => overlay.working.find((step) => step.name === name)?.value ?? NaN;
    expect(value('seen_stile')).toBe(value('ws') - value('o'));
    expect(texts.find(({ link }) => link === 'size:seen_stile')?.text).toBe(String(value('seen_stile')));
  });

  test.each([110, 120, 200])('no two sizes cover each other on %i mm of paper', (width) => {
    for (const built of [inset, overlay, sampleFrame]) {
      const sizes = textsOf(drawElevation(built, { width })).filter(({ text }) => /^[\d.]+$/.test(text));
      const boxes = sizes.map((mark) => boxOfMark(mark));
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) {
          const apart = a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
          expect(apart, `${sizes[i]?.text} on ${width}`).toBe(true);
        }
      });
    }
  });

  test('always: sizes of a front keep clear of each other, whatever its members', () => {
    const front = fc.record({
      width: fc.integer({ min: 300, max: 1400 }),
      height: fc.integer({ min: 300, max: 1800 }),
      columns: fc.integer({ min: 1, max: 4 }),
      rows: fc.integer({ min: 1, max: 5 }),
      stileWidth: fc.integer({ min: 25, max: 90 }),
      fronts: fc.constantFrom('inset', 'overlay'),
    });
    fc.assert(
      fc.property(front, fc.integer({ min: 100, max: 220 }), (parameters, width) => {
        const texts = textsOf(drawElevation(buildFront(parameters), { width })).filter(isSize);
        const boxes = texts.map((mark) => boxOfMark(mark));
        return boxes.every((a, i) =>
          boxes
            .slice(i + 1)
            .every((b) => a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY),
        );
      }),
      { numRuns: 60 },
    );
  });
});

// 25.4 mm to the inch exactly (international yard and pound agreement, 1959).
describe('in a project in inches', () => {
  const units = 'inch' as const;

  test('an elevation shows fractions and says so once; without units it is in mm', () => {
    const words = wordsOf(drawElevation(buildFront({ width: 508, height: 762 }), { width: 180, units }));
    expect(words).toContain('20');
    expect(words).toContain('30');
    expect(words.filter((text) => text.includes('sizes in inches'))).toHaveLength(1);
    expect(wordsOf(drawElevation(inset, { width: 180 }))).toContain('940');
  });

  test('the sizes of a part, its machining and its head line are in inches', () => {
    const words = wordsOf(drawPart(sampleJamb, { width: 180, units })).join('\n');
    const { length } = sampleJamb.finished;
    expect(words).toContain('68 19/32'); // 1742 / 25.4 = 68.583, nearest 1/32
    expect(words).not.toContain(String(length));
    expect(words).toContain('sizes in inches');
  });

  test('a cutting diagram shows stock, leftovers and kerf in inches', () => {
    const words = wordsOf(drawLayout({ ...sampleLayout, units })).join('\n');
    expect(words).toContain('96 1/16'); // 2440 mm
    expect(words).toContain('48 1/32'); // 1220 mm
    expect(words).toContain('kerf 1/8'); // 3 mm
    expect(words).toContain('sizes in inches');
    expect(words).not.toContain('2430');
  });

  test('readings are in inches, residuals in hundredths of an inch, and the sheet says so', () => {
    const words = wordsOf(drawSurvey({ ...sampleSurvey, units })).join('\n');
    expect(words).toMatch(/wb {2}25 \d+\/\d+/);
    expect(words).toContain('± in inches, 19 times in 20');
  });

  test('a template names its bars in both units', () => {
    const info = { job: 'Curlew', piece: 'C', seenFrom: 'from the saloon', units };
    const words = drawTemplate(sampleInfill, 'A4', info)
      .flatMap((page) => page.items.flatMap((item) => wordsOf(item.drawing)))
      .join('\n');
    expect(words).toContain('100 mm (3 15/16 in)');
  });
});

describe('a sketch of a piece of stock', () => {
  const stock = { length: 2440, width: 1220 };

  test('shows each bad spot true to scale, hatched, numbered and linked', () => {
    const keepOut = [
      { x: 100, y: 50, length: 300, width: 200 },
      { x: 2000, y: 1210, length: 5, width: 5 },
    ];
    const drawing = drawStockSketch({ ...stock, keepOut }, { width: 110, height: 70 });
    const spots = drawing.marks.filter((mark) => mark.kind === 'path' && mark.fill === 'keep-out');
    expect(spots.map((mark) => mark.link)).toEqual(['keep-out:1', 'keep-out:2']);
    const box = boxOfMark(spots[0] as Mark);
    expect((box.maxX - box.minX) / drawing.scale).toBeCloseTo(300, 6);
    expect(box.minY / drawing.scale).toBeCloseTo(50, 6);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(['1', '2', '2440', '1220']));
  });

  test('fits the room it is given', () => {
    const { bounds } = drawStockSketch({ ...stock, keepOut: [] }, { width: 110, height: 70 });
    expect(bounds.maxX - bounds.minX).toBeLessThanOrEqual(112);
    expect(bounds.maxY - bounds.minY).toBeLessThanOrEqual(72);
  });
});
