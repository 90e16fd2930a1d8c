import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arrangePages,
  boxOfMark,
  drawElevation,
  drawLabels,
  drawLayout,
  drawPart,
  drawTemplate,
  roomOnPage,
} from '#core/drawing';
import type { Mark, Page } from '#core/drawing';
import type { Box } from '#core/geometry';
import {
  sampleBatten,
  sampleDrawerSide,
  sampleFrame,
  sampleInfill,
  sampleJamb,
  sampleLabels,
  sampleLayout,
  samplePart,
} from '../../support/samples.ts';

const info = { job: 'Curlew', piece: 'Saloon door frame', seenFrom: 'from the saloon, looking forward' };
const wordsOn = (page: Page) =>
  page.items.flatMap(({ drawing }) =>
    drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  );

/** Where a mark comes to lie on the page, mm. */
function onPage(mark: Mark, item: Page['items'][number]): Box {
  const box = boxOfMark(mark);
  const [dx, dy] = [item.at.x - item.drawing.bounds.minX, item.at.y - item.drawing.bounds.minY];
  return { minX: box.minX + dx, maxX: box.maxX + dx, minY: box.minY + dy, maxY: box.maxY + dy };
}

function expectOnPaper(page: Page): void {
  for (const item of page.items) {
    if (item.clip) continue;
    for (const mark of item.drawing.marks) {
      const box = onPage(mark, item);
      const what = mark.kind === 'text' ? mark.text : mark.pen;
      expect(box.minX, what).toBeGreaterThanOrEqual(0);
      expect(box.minY, what).toBeGreaterThanOrEqual(0);
      expect(box.maxX, what).toBeLessThanOrEqual(page.width);
      expect(box.maxY, what).toBeLessThanOrEqual(page.height);
    }
  }
}

describe('a template', () => {
  const pages = drawTemplate(sampleInfill, 'A4', info);

  test('is full size on every page, with its page number, place and neighbours', () => {
    expect(pages).toHaveLength(4);
    for (const [i, page] of pages.entries()) {
      expect(page.items[0]?.drawing.scale).toBe(1);
      const words = wordsOn(page).join('\n');
      expect(words).toContain(`page ${i + 1} of 4 · row ${i + 1}, col 1`);
      expect(words).toContain('Print at 100 %');
      expect(words).toContain('C6');
      expect(words).toContain('seen from the saloon');
      expectOnPaper(page);
    }
    expect(wordsOn(pages[0]!)).toContain('join to row 2, col 1');
    expect(wordsOn(pages[1]!)).toEqual(
      expect.arrayContaining(['join to row 1, col 1', 'join to row 3, col 1']),
    );
  });

  test('UP points where the boat is up: to the right for a part that stands on its start end', () => {
    const [page] = pages;
    const marks = page!.items[0]!.drawing.marks;
    const head = marks.filter((mark) => mark.kind === 'path' && mark.fill === 'ink').at(-1);
    const [tip, ...others] = head?.kind === 'path' ? head.points : [];
    expect(tip!.x).toBeGreaterThan(Math.max(...others.map((p) => p.x)));
    expect(wordsOn(page!)).toContain('UP');
    // lying as seen, with its y up in the boat: the view shows y running down
    const upright = samplePart('E1', [150, 100, 18], {
      placements: [
        { origin: { x: 0, y: 0, z: 0 }, xAxis: { x: 1, y: 0, z: 0 }, yAxis: { x: 0, y: 1, z: 0 } },
      ],
    });
    const down = drawTemplate(upright, 'A4', info)[0]!
      .items[0]!.drawing.marks.filter((mark) => mark.kind === 'path' && mark.fill === 'ink')
      .at(-1);
    const [foot, ...back] = down?.kind === 'path' ? down.points : [];
    expect(foot!.y).toBeLessThan(Math.min(...back.map((p) => p.y)));
  });

  test('a stop is stamped across every page', () => {
    for (const page of drawTemplate(sampleInfill, 'A4', { ...info, stamp: 'DO NOT CUT' })) {
      expect(wordsOn(page)).toContain('DO NOT CUT');
      expectOnPaper(page);
    }
  });

  test('a part smaller than a page takes one page and needs no joins', () => {
    const [only, ...more] = drawTemplate(samplePart('E1', [150, 60, 18]), 'Letter', info);
    expect(more).toEqual([]);
    expect(wordsOn(only!).some((text) => text.startsWith('join'))).toBe(false);
  });

  const sizes = fc.tuple(
    fc.integer({ min: 20, max: 2600 }),
    fc.integer({ min: 10, max: 900 }),
    fc.constantFrom('A4', 'Letter') as fc.Arbitrary<'A4' | 'Letter'>,
  );

  test('always: the pages together show the whole part, and each join has two crosses that coincide on both pages', () => {
    fc.assert(
      fc.property(sizes, ([length, width, paper]) => {
        const sheets = drawTemplate(samplePart('E1', [length, width, 18]), paper, info);
        const shown = sheets.map((page) => windowOnPart(page));
        for (const corner of [
          [0, 0],
          [length, 0],
          [length, width],
          [0, width],
          [length / 2, width / 2],
        ] as const) {
          expect(shown.some((box) => covers(box, corner))).toBe(true);
        }
        const crosses = sheets.flatMap(crossesOnPart);
        const byName = new Map<string, (typeof crosses)[number][]>();
        for (const cross of crosses) byName.set(cross.name, [...(byName.get(cross.name) ?? []), cross]);
        for (const [name, [one, other, ...rest]] of byName) {
          expect(rest, name).toEqual([]);
          expect(other, name).toBeDefined();
          expect(Math.hypot(one!.x - other!.x, one!.y - other!.y), name).toBeLessThan(1e-6);
        }
        // a grid of r by c pages has r(c-1) + c(r-1) joins
        const rows = Math.max(...sheets.map((page) => placeOf(page).row));
        const columns = Math.max(...sheets.map((page) => placeOf(page).column));
        expect(byName.size).toBe(2 * (rows * (columns - 1) + columns * (rows - 1)));
      }),
      { numRuns: 40 },
    );
  });
});

function placeOf(page: Page): { row: number; column: number } {
  const found = /row (\d+), col (\d+)$/.exec(
    wordsOn(page).find((text) => / · row \d+, col \d+$/.test(text)) ?? 'row 1, col 1',
  );
  return { row: Number(found?.[1]), column: Number(found?.[2]) };
}

/** The window of a page in the coordinates of the part. */
function windowOnPart(page: Page): Box {
  const [sheet] = page.items;
  const [dx, dy] = [sheet!.drawing.bounds.minX - sheet!.at.x, sheet!.drawing.bounds.minY - sheet!.at.y];
  const clip = sheet!.clip!;
  return { minX: clip.minX + dx, maxX: clip.maxX + dx, minY: clip.minY + dy, maxY: clip.maxY + dy };
}

const covers = (box: Box, [x, y]: readonly [number, number]) =>
  x >= box.minX - 1e-9 && x <= box.maxX + 1e-9 && y >= box.minY - 1e-9 && y <= box.maxY + 1e-9;

/** The named crosses of the joins of a page, in the coordinates of the part. */
function crossesOnPart(
  page: Page,
): readonly { readonly name: string; readonly x: number; readonly y: number }[] {
  const [sheet, frame] = page.items;
  const [dx, dy] = [sheet!.drawing.bounds.minX - sheet!.at.x, sheet!.drawing.bounds.minY - sheet!.at.y];
  const marks = frame!.drawing.marks;
  return marks.flatMap((mark, i) => {
    if (mark.kind !== 'text' || !/^\d+\.\d+[rb][12]$/.test(mark.text)) return [];
    // a cross is its level and its upright line just before its name
    const [level, upright] = [marks[i - 2], marks[i - 1]];
    if (level?.kind !== 'path' || upright?.kind !== 'path') return [];
    return [{ name: mark.text, x: (upright.points[0]?.x ?? 0) + dx, y: (level.points[0]?.y ?? 0) + dy }];
  });
}

describe('labels', () => {
  test('fourteen go on a sheet, in order', () => {
    const many = Array.from({ length: 31 }, (_, i) => ({ ...sampleLabels[i % 2]!, address: `P${i + 1}` }));
    const pages = drawLabels(many, 'A4');
    expect(pages).toHaveLength(3);
    expect(wordsOn(pages[1]!).filter((text) => /^P\d+$/.test(text))).toEqual(
      many.slice(14, 28).map((label) => label.address),
    );
    expect(drawLabels([], 'A4')).toEqual([]);
  });

  test('carry address, name, size, face side, joints, scribes, stock and the next step', () => {
    const [page] = drawLabels(sampleLabels, 'A4');
    const words = wordsOn(page!);
    for (const text of [
      'C6',
      'C1',
      'Left jamb',
      '1742 × 62 × 20',
      'Scribe: far edge 12',
      'From oak-70 · board 1, 1st',
      'Next: take to the boat and scribe',
      'UP',
    ]) {
      expect(words).toContain(text);
    }
    expect(words.some((text) => text.startsWith('face side to the saloon · seen from the saloon'))).toBe(
      true,
    );
  });

  test('stay on their label, long texts and stamps too, on either paper', () => {
    const long = {
      ...sampleLabels[1]!,
      name: 'A name that goes on and on '.repeat(6),
      next: 'and on '.repeat(60),
      joints: Array<string>(20).fill('housing 7 deep'),
    };
    for (const paper of ['A4', 'Letter'] as const) {
      for (const page of drawLabels(Array(14).fill(long), paper, { stamp: 'DO NOT CUT' })) {
        const [columns, rows] = [2, 7];
        const [w, h] = [(page.width - 20) / columns, (page.height - 20) / rows];
        const marks = page.items
          .flatMap(({ drawing }) => drawing.marks)
          .filter((mark) => mark.kind === 'text' && !mark.text.startsWith('Labels,'));
        for (const mark of marks) {
          const box = boxOfMark(mark);
          const cell = (x: number, y: number) => `${Math.floor((x - 10) / w)},${Math.floor((y - 10) / h)}`;
          expect(cell(box.minX, box.minY), mark.kind === 'text' ? mark.text : '').toBe(
            cell(box.maxX, box.maxY),
          );
        }
      }
    }
  });
});

describe('pages of drawings', () => {
  const drawings = [
    drawLayout(sampleLayout),
    drawLayout(sampleBatten),
    drawLayout(sampleBatten),
    drawElevation(sampleFrame, { width: roomOnPage('A4', false).width }),
    drawPart(sampleJamb, { width: 180 }),
    drawPart(sampleDrawerSide, { width: 180 }),
  ];

  test('hold every drawing once, within the frame, none over another', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const pages = arrangePages(drawings, paper, 'Curlew');
      const placed = pages.flatMap((page) => page.items.filter((item) => item.drawing.title !== 'frame'));
      expect(placed.map((item) => item.drawing.title)).toEqual(drawings.map((drawing) => drawing.title));
      for (const page of pages) {
        expectOnPaper(page);
        const boxes = page.items
          .filter((item) => item.drawing.title !== 'frame')
          .map(({ drawing, at }) => {
            const { minX, maxX, minY, maxY } = drawing.bounds;
            return { minX: at.x, maxX: at.x + maxX - minX, minY: at.y, maxY: at.y + maxY - minY };
          });
        boxes.forEach((box, i) => {
          expect(box.minY).toBeGreaterThanOrEqual(22 - 1e-9);
          for (const other of boxes.slice(i + 1)) expect(box.minY).toBeGreaterThan(other.maxY);
        });
      }
    }
  });

  test('are numbered, give the scale, and share a page where there is room', () => {
    const pages = arrangePages(drawings, 'A4', 'Curlew, cutting');
    expect(pages.length).toBeLessThan(drawings.length);
    expect(wordsOn(pages[0]!)).toEqual(
      expect.arrayContaining([`1 of ${pages.length}`, 'Scale 1:10', 'Curlew, cutting']),
    );
  });

  test('of drawings in order only those not to be used are stamped, on pages of their own', () => {
    const three = [0, 1, 2].map((i) => ({ ...drawings[0]!, title: `no. ${i}` }));
    const pages = arrangePages(three, 'A4', 'Curlew', { stamp: 'DO NOT CUT', stamped: three.slice(1, 2) });
    expect(pages.map((page) => wordsOn(page).filter((words) => words === 'DO NOT CUT').length > 0)).toEqual([
      false,
      true,
      false,
    ]);
    expect(wordsOn(pages[1]!)).toContain('2 of 3');
  });

  test('a drawing larger than the page is made to fit and its scale says so', () => {
    const [page] = arrangePages([drawLayout({ ...sampleLayout, width: 600 })], 'A4', 'Curlew');
    expectOnPaper(page!);
    expect(wordsOn(page!).some((text) => text.startsWith('Scale about 1:'))).toBe(true);
  });

  test('a stop is stamped across every page', () => {
    for (const page of arrangePages(drawings, 'A4', 'Curlew', { stamp: 'DO NOT CUT' })) {
      expect(wordsOn(page)).toContain('DO NOT CUT');
      expectOnPaper(page);
    }
  });
});
