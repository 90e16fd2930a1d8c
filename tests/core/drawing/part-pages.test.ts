import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  arrangePages,
  arrangePartPages,
  boxOfMark,
  drawExploded,
  drawMembers,
  groupSameParts,
  modelOf,
} from '#core/drawing';
import type { Drawing, Page } from '#core/drawing';
import { understandProject } from '#core/pipeline';
import { drawPages } from '#formats/bundle';
import { readProject } from '#formats/json';
import { nodeFonts } from '../../../src/formats/pdf/node-fonts.ts';
import { sampleDrawerSide, sampleFrame, samplePart } from '../../support/samples.ts';

const read = readProject(readFileSync('static/projects/curlew-galley.json', 'utf8'));
if (!read.ok) throw new Error('the example project is not read');
const project = read.value;
const understanding = understandProject(project);
const run = understanding.pieces.find((piece) => piece.letter === 'A')!;
const options = { paper: 'A4', title: 'Galley', units: 'mm', nameMaterial: (id: string) => id } as const;

const own = (page: Page) => page.items.filter((item) => item.drawing.title !== 'frame');
const wordsOf = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const wordsOn = (page: Page) => page.items.flatMap((item) => wordsOf(item.drawing));
/** The smallest figures legible: 1.8 mm high, 7 points (1.8 / 0.729 of the type size, 2.835 points a mm). */
const leastHeight = 1.8;

describe('the parts of a galley run of more than 80 parts', () => {
  test.each(['A4', 'Letter'] as const)('are each on the sheets once, inside the frame, on %s', (paper) => {
    const pages = arrangePartPages(run.parts, { ...options, paper });
    const titles = pages.flatMap((page) => own(page).flatMap((item) => item.drawing.title.split(', ')));
    expect([...titles].sort()).toEqual(run.parts.map(({ id }) => id).sort());
    expect(run.parts.length).toBeGreaterThan(80);
    for (const page of pages)
      for (const { drawing, at } of own(page)) {
        const { minX, maxX, minY, maxY } = drawing.bounds;
        expect(at.x).toBeGreaterThanOrEqual(12 - 1e-6);
        expect(at.y).toBeGreaterThanOrEqual(24 - 1e-6);
        expect(at.x + maxX - minX).toBeLessThanOrEqual(page.width - 12 + 1e-6);
        expect(at.y + maxY - minY).toBeLessThanOrEqual(page.height - 12 + 1e-6);
      }
  });

  test.each(['mm', 'inch'] as const)('keep to their cells with all they say, in %s', (units) => {
    for (const page of arrangePartPages(run.parts, { ...options, units })) {
      const boxes = own(page).map(({ drawing, at }) => {
        for (const mark of drawing.marks) {
          const box = boxOfMark(mark);
          expect(box.minX).toBeGreaterThanOrEqual(drawing.bounds.minX - 0.1);
          // the width of a line of text is an estimate
          expect(box.maxX).toBeLessThanOrEqual(drawing.bounds.maxX + 2);
          expect(box.minY).toBeGreaterThanOrEqual(drawing.bounds.minY - 0.1);
          expect(box.maxY).toBeLessThanOrEqual(drawing.bounds.maxY + 0.1);
        }
        const { minX, maxX, minY, maxY } = drawing.bounds;
        return { minX: at.x, maxX: at.x + maxX - minX, minY: at.y, maxY: at.y + maxY - minY };
      });
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1)) {
          const apart = a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
          expect(apart).toBe(true);
        }
      });
    }
  });

  test('take fewer than 20 pages with the piece whole and pulled apart, nothing lettered smaller than 7 points', () => {
    const source = { project, understanding, planned: [], routed: [], fonts: nodeFonts() };
    const pages = drawPages(source)['part-sheets'].filter((page) => page.title.includes('A Galley run'));
    expect(pages.length).toBeLessThan(20);
    for (const { drawing } of pages.flatMap((page) => page.items))
      for (const mark of drawing.marks)
        if (mark.kind === 'text') expect(mark.height).toBeGreaterThanOrEqual(leastHeight - 1e-9);
  });
});

test('parts made alike are drawn once with all addresses and the sum of their copies', () => {
  const alike = [
    samplePart('A1', [400, 30, 20], { name: 'Runner', quantity: 2 }),
    samplePart('A2', [400, 30, 18], { name: 'Guide' }),
    samplePart('A3', [400, 30, 20], { name: 'Runner, upper' }),
    samplePart('A4', [400, 30, 20], { name: 'Runner', hand: 'left' }),
  ];
  expect(groupSameParts(alike).map((group) => group.map(({ id }) => id))).toEqual([
    ['A1', 'A3'],
    ['A2'],
    ['A4'],
  ]);
  const words = arrangePartPages(alike, options).flatMap(wordsOn).join(' ');
  expect(words).toContain('A1 (2), A3  Runner; Runner, upper');
  expect(words).toContain('400 × 30 × 20 · make 3 · oak');
});

test('a worked part is drawn larger than a plain one and told what is worked', () => {
  const [page] = arrangePartPages([samplePart('A1', [300, 130, 12]), sampleDrawerSide], options);
  const [plain, worked] = own(page!).map((item) => item.drawing);
  const wide = ({ bounds }: Drawing) => bounds.maxX - bounds.minX;
  expect(wide(worked!)).toBeGreaterThan(wide(plain!));
  expect(wordsOf(worked!).some((text) => text.startsWith('1'))).toBe(true);
});

test('drawings given first stand above the parts on the same sheet', () => {
  const first = [drawExploded(sampleFrame, { width: 180 })];
  const [page] = arrangePartPages(sampleFrame.parts.slice(0, 2), { ...options, first });
  const [whole, ...parts] = own(page!);
  expect(whole!.drawing.title).toBe(first[0]!.title);
  for (const part of parts) expect(part.at.y).toBeLessThan(whole!.at.y);
});

test('a title longer than the page is broken, not cut', () => {
  const title =
    'The narrow boat of a long name, lying at the old maltings · A Galley run with drawers, doors and top';
  const [page] = arrangePages([drawExploded(sampleFrame, { width: 180 })], 'A4', title);
  expect(wordsOn(page!).join(' ')).toContain(title);
});

test('the title block names the unit of the sizes', () => {
  const drawings = [drawExploded(sampleFrame, { width: 180 })];
  expect(wordsOn(arrangePages(drawings, 'A4', 'x', { units: 'inch' })[0]!)).toContain('sizes in inches');
  expect(wordsOn(arrangePages(drawings, 'A4', 'x')[0]!)).toContain('sizes in mm');
});

describe('a piece made of several pieces', () => {
  test('is pulled apart into members, each named', () => {
    const drawing = drawMembers(run, { width: 186 })!;
    expect(run.members!.length).toBeGreaterThan(8);
    for (const { name } of run.members!) expect(wordsOf(drawing)).toContain(name);
  });

  test('every address stands in the picture of its member', () => {
    const source = { project, understanding, planned: [], routed: [], fonts: nodeFonts() };
    const drawings = drawPages(source)['part-sheets'].flatMap((page) =>
      own(page).map((item) => item.drawing),
    );
    for (const { name, parts } of run.members!) {
      const picture = drawings.find(({ title }) => title === `A  ${name}`)!;
      const words = wordsOf(picture).flatMap((text) => text.split(/[^A-Z0-9]+/));
      for (const id of parts) expect(words, `${id} in ${name}`).toContain(id);
    }
  });

  test('one piece alone has no members to be pulled apart', () => {
    expect(drawMembers(sampleFrame, { width: 186 })).toBeNull();
  });
});

test('boards that lie on each other are pulled apart far enough to be told apart', () => {
  const x = { x: 1, y: 0, z: 0 };
  const stack = Array.from({ length: 4 }, (_, i) =>
    samplePart(`A${i + 1}`, [400, 60, 4], {
      placements: [{ origin: { x: 0, y: 0, z: 100 - i * 4 }, xAxis: x, yAxis: { x: 0, y: 1, z: 0 } }],
    }),
  );
  const bodies = modelOf({ ...sampleFrame, parts: stack });
  const middles = bodies.map(({ centre, shift }) => centre.z + shift.z).sort((a, b) => a - b);
  // at 1:5 some 3 mm of paper
  middles.slice(1).forEach((middle, i) => expect(middle - middles[i]!).toBeGreaterThan(14));
});
