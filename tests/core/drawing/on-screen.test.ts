import { describe, expect, test } from 'vitest';
import { boxOfMark, drawLayout, drawNest, type Drawing, type NestView } from '#core/drawing';
import { sampleLayout } from '../../support/samples.ts';

const wordsOf = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const heightOf = ({ bounds }: Drawing) => bounds.maxY - bounds.minY;

describe('a cutting diagram beside its list', () => {
  const drawing = drawLayout({ ...sampleLayout, isKeyBeside: true });

  test('has no key, and each part carries its address however small it is', () => {
    const paper = drawLayout(sampleLayout);
    expect(wordsOf(paper)).toContain('1  E9  60 × 40 · Glue block · strip D, 1st');
    expect(wordsOf(drawing)).toContain('E9');
    expect(wordsOf(drawing).some((text) => text.includes('Glue block'))).toBe(false);
    expect(heightOf(drawing)).toBeLessThan(heightOf(paper));
    for (const { address } of sampleLayout.parts) expect(wordsOf(drawing).join('\n')).toContain(address);
  });

  test('is not made smaller for a title that is wider than the paper', () => {
    const title = 'Oak, sawn, boards 27 mm, '.repeat(6);
    const long = drawLayout({ ...sampleLayout, title, isKeyBeside: true });
    // nothing else is too wide: the scale may step down to no less than what the sheet itself wants
    expect(long.bounds.maxX - long.bounds.minX).toBeGreaterThan(sampleLayout.width);
    expect(long.scale).toBe(drawing.scale);
  });
});

describe("a router's sheet", () => {
  const square = (x: number, y: number, size: number) => [
    { x, y },
    { x: x + size, y },
    { x: x + size, y: y + size },
    { x, y: y + size },
  ];
  const view: NestView = {
    title: 'Lids',
    stock: { length: 1000, width: 600 },
    margin: 10,
    gap: 8,
    keepOut: [],
    parts: [
      { address: 'J1', outline: square(20, 20, 500), holes: [square(262, 262, 16)] },
      { address: 'J2', outline: square(530, 20, 300), holes: [square(540, 40, 16)] },
    ],
    offcutFrom: 900,
    width: 160,
  };
  const { marks } = drawNest(view);

  test('an address over an opening has a clear ground, one that is not over any has none', () => {
    const grounds = marks.filter(
      (mark) => mark.kind === 'path' && mark.pen === 'none' && mark.fill === 'paper',
    );
    expect(grounds.map(({ link }) => link)).toEqual(['J1']);
    const address = marks.findIndex((mark) => mark.kind === 'text' && mark.text === 'J1');
    expect(marks.indexOf(grounds[0]!)).toBe(address - 1);
  });

  test('what is written in the leftover stands in its middle, upright where it is narrow', () => {
    const written = marks.find((mark) => mark.kind === 'text' && mark.text.startsWith('keep'));
    const leftover = marks.find((mark) => mark.kind === 'path' && mark.fill === 'leftover');
    const [text, area] = [boxOfMark(written!), boxOfMark(leftover!)];
    expect((text.minX + text.maxX) / 2).toBeCloseTo((area.minX + area.maxX) / 2, 0);
    expect(text.minX).toBeGreaterThan(area.minX);
    expect(text.maxX).toBeLessThan(area.maxX);
  });
});
