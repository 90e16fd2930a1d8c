import { expect, test } from 'vitest';
import { solveCutting } from '#core/cutting';
import { listSawOrder, planEverything, understandProject } from '#core/pipeline';
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
  expect(listSawOrder({ job, form: 'sheet' }, layout!, 'mm')).toEqual([
    { label: 'A', words: 'cut across the sheet', fence: '400' },
    { label: 'B', words: 'cut across the rest of the sheet', fence: '400' },
  ]);
  expect(listSawOrder({ job, form: 'board' }, layout!, 'inch')).toEqual([
    // 400 / 25.4 = 15.748, to a 32nd 15 24/32
    { label: 'A', words: 'cut across the board', fence: '15 3/4' },
    { label: 'B', words: 'cut across the rest of the board', fence: '15 3/4' },
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
