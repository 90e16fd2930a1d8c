import { expect, test } from 'vitest';
import { sequenceCuts, solveCutting, type Layout } from '#core/cutting';
import type { Page } from '#core/drawing';
import { listSawOrder, planEverything, understandProject, type CuttingGroup } from '#core/pipeline';
import { newProject } from '#core/project';
import { drawPages } from '#formats/bundle';
import { loadGlpk } from '#solver/glpk';
import { nodeFonts } from '../../src/formats/pdf/node-fonts.ts';
import { drawerProject } from '../cli/sample-projects.ts';

const solveLp = await loadGlpk();
const tools = { solveLp, clock: () => 0, work: 500, seed: 1 };

test('a fence stands at the size that comes off, and what is no sheet is called a board', () => {
  const job = {
    kerf: 3,
    stock: [{ id: 's', length: 1000, width: 500 }],
    parts: [{ id: 'p', length: 400, width: 500, count: 2 }],
  };
  const [layout] = solveCutting(job, tools).layouts;
  // two of 400 across the whole width: 400, then 400 of the 597 left
  const blank = { id: 'p', parts: [{ part: 'A1', x: 0, y: 0, length: 400, width: 500 }] };
  const group = { job, section: { thickness: 18 }, blanks: [blank] };
  expect(listSawOrder({ ...group, form: 'sheet' }, layout!, 'mm')).toEqual([
    { label: 'A', words: 'cut across the sheet', fence: '400' },
    { label: 'B', words: 'cut across the rest of the sheet', fence: '400' },
  ]);
  expect(listSawOrder({ ...group, form: 'board' }, layout!, 'inch')).toEqual([
    // 400 / 25.4 = 15.748, to a 32nd 15 24/32
    { label: 'A', words: 'cut across the board', fence: '15 3/4' },
    { label: 'B', words: 'cut across the rest of the board', fence: '15 3/4' },
  ]);
});

/** Five fronts of 300 × 140 that stay one strip till they are parted, 3 mm of kerf between them. */
const strip = {
  ...{ job: { kerf: 3, stock: [{ id: 's', length: 2440, width: 1220 }], parts: [] }, form: 'sheet' as const },
  section: { thickness: 18 },
  blanks: [
    {
      id: 'A1+A2+A3',
      parts: ['A1', 'A2', 'A3'].map((part, at) => ({ part, x: 5 + at * 143, y: 0, length: 140, width: 300 })),
    },
  ],
} as const;

test('the cuts that part a strip follow, each with its fence from the low edge in hand, and letters run on', () => {
  const node = { x: 10, y: 10, length: 436, width: 300 };
  const second = { ...node, x: 449 };
  const root = { x: 10, y: 10, length: 875, width: 300 };
  const layout: Layout = {
    ...{ stock: 's', times: 1, leftovers: [] },
    placed: [node, second].map((each) => ({ id: 'A1+A2+A3', ...each, turned: false })),
    cuts: {
      ...{ ...root, cut: 'across', at: 446 },
      children: [
        { ...node, part: 'A1+A2+A3' },
        { ...second, part: 'A1+A2+A3' },
      ],
    },
  };
  // 5 of trim less its kerf, then parts of 140; the last is as long as the strip: 5 + 3 × 140 + 2 × 3 + 5 = 436
  const own = [
    { words: 'trim the blank of A1 to A3', fence: '2' },
    { words: 'cut A1 off the rest', fence: '140' },
    { words: 'cut A2 off the rest', fence: '140' },
    { words: 'cut A3 off the rest', fence: '140' },
  ];
  expect(listSawOrder(strip, layout, 'mm')).toEqual([
    { label: 'A', words: 'cut across the sheet', fence: '436' },
    ...[...own, ...own].map((line, at) => ({ label: 'abcdefgh'[at], ...line })),
  ]);
});

test('each cut of each diagram stands once in the orders on paper, within its page', async () => {
  const project = drawerProject();
  const understanding = understandProject(project);
  const { planned } = await planEverything(understanding, {
    clock: tools.clock,
    cut: (job) => Promise.resolve(solveCutting(job, tools)),
    nest: () => Promise.reject(new Error('nothing is routed')),
  });
  const pages = drawPages({ project, understanding, planned, routed: [], fonts: nodeFonts() }).cutting;
  // the title block at the foot names the drawings once more
  const drawings = pages.flatMap((page) => page.items.map(({ drawing }) => drawing));
  const texts = drawings
    .filter(({ title }) => title !== 'frame')
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
  const orders = planned.flatMap(({ group, plan }) =>
    plan.layouts.map((layout, index) => ({
      title: `Saw in this order: ${group.title}, diagram ${index + 1}`,
      lines: listSawOrder(group, layout, project.units),
    })),
  );
  const sawn = orders.filter(({ lines }) => lines.length > 0);
  expect(sawn.length).toBeGreaterThan(0);
  for (const { title } of sawn) expect(texts.filter((text) => text === title)).toHaveLength(1);
  const words = new Set(sawn.flatMap(({ lines }) => lines.map((line) => line.words)));
  const shown = texts.filter((text) => words.has(text));
  expect(shown).toHaveLength(sawn.reduce((sum, { lines }) => sum + lines.length, 0));
  for (const page of pages) {
    for (const { drawing, at } of page.items) {
      expect(at.x + drawing.bounds.maxX - drawing.bounds.minX).toBeLessThanOrEqual(page.width + 1e-6);
      expect(at.y).toBeGreaterThanOrEqual(-1e-6);
    }
  }
});

/** A sheet with so many parts that the list of its cuts has no room beside it. */
function crowded(count: number) {
  const job = {
    kerf: 3,
    stock: [{ id: 's', length: 2440, width: 1220 }],
    parts: Array.from({ length: count }, (_, at) => ({
      id: `A${at + 1}`,
      length: 300 + at * 7,
      width: 150 + at,
    })),
  };
  const blanks = job.parts.map(({ id, length, width }) => ({
    id,
    parts: [{ part: id, x: 0, y: 0, length, width }],
  }));
  const saw = { id: 's', name: 'Saw', kerf: 3, trim: {}, cuts: {} };
  const section = { thickness: 18 };
  const group: CuttingGroup = {
    ...{ id: 'ply', title: 'Ply', material: 'ply', form: 'sheet', section, saw, job, blanks, findings: [] },
  };
  const plan = solveCutting(job, tools);
  const understanding = { shapes: [], pieces: [], groups: [group], routing: [], fits: [], findings: [] };
  const project = newProject('Crowded');
  const source = { project, understanding, planned: [{ group, plan }], routed: [], fonts: nodeFonts() };
  const pages = drawPages(source).cutting.filter(({ title }) => title.startsWith('Crowded · Ply'));
  const textsOf = (page: Page, isFrame: boolean) =>
    page.items
      .filter(({ drawing }) => (drawing.title === 'frame') === isFrame)
      .flatMap(({ drawing }) => drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : [])));
  return { plan, pages, textsOf };
}

test('an order without room beside its diagram is on the page that the diagram names, and that page tells no scale', () => {
  const { plan, pages, textsOf } = crowded(18);
  expect(plan.layouts).toHaveLength(1);
  const pointer = textsOf(pages[0]!, false).find(({ text }) => text.startsWith('order of cuts: page'));
  expect(pointer?.text).toBe('order of cuts: page 2');
  expect(textsOf(pages[0]!, true).some(({ text }) => text.startsWith('Scale 1:'))).toBe(true);
  const words = textsOf(pages[1]!, false);
  expect(words[0]?.text).toBe('Saw in this order: Ply, diagram 1');
  // capitals that are read at arm's length
  expect(Math.min(...words.map(({ height }) => height))).toBeGreaterThanOrEqual(2.5);
  const frame = textsOf(pages[1]!, true).map(({ text }) => text);
  expect(frame.some((text) => text.startsWith('Scale'))).toBe(false);
  expect(frame).toContain('sizes in mm');
  expect(frame).toContain('2 of 2');
});

test('a short order stands beneath its diagram in large lettering, without a pointer', () => {
  const { pages, textsOf } = crowded(3);
  expect(pages).toHaveLength(1);
  const texts = textsOf(pages[0]!, false);
  expect(texts.some(({ text }) => text.startsWith('order of cuts'))).toBe(false);
  expect(texts.find(({ text }) => text.startsWith('Saw in this order'))?.height).toBeGreaterThanOrEqual(3);
});

test('a list longer than a page goes on, numbered on, and none of it is made smaller', () => {
  const { plan, pages, textsOf } = crowded(80);
  const numbers = pages
    .flatMap((page) => textsOf(page, false))
    .filter(({ text }) => /^\d+\.$/.test(text))
    .map(({ text, height }) => ({ number: Number(text.slice(0, -1)), height }));
  const steps = plan.layouts.map((layout) => sequenceCuts(layout, 3).steps.length);
  expect(numbers).toHaveLength(steps.reduce((sum, count) => sum + count, 0));
  expect(Math.max(...numbers.map(({ number }) => number))).toBe(Math.max(...steps));
  expect(numbers.every(({ height }) => height >= 3)).toBe(true);
});
