import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { coatings } from '#core/materials';
import {
  listShopping,
  listSundries,
  nameStock,
  planGroups,
  summarise,
  understandProject,
} from '#core/pipeline';
import type { Project } from '#core/project';
import { drawPages, makeBundle } from '#formats/bundle';
import { readProject } from '#formats/json';
import { loadGlpk } from '#solver/glpk';
import { nodeFonts } from '../../../src/formats/pdf/node-fonts.ts';
import { makeProject, makeStock } from './made-up.ts';

const solveLp = await loadGlpk();

function openProject(file: string): Project {
  const read = readProject(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
  return read.value;
}

/** All that is written for a user of a project, in words: lists, summary, trips and the printed pages. */
async function wordsFor(project: Project) {
  const understanding = understandProject(project);
  const planned = planGroups(understanding.groups, { solveLp, clock: () => 0, work: 300, seed: 1 });
  const source = { project, understanding, planned, routed: [], fonts: nodeFonts() };
  const { files } = await makeBundle(source);
  const textOf = (path: string) => String(files.find((file) => file.path === path)?.content ?? '');
  const pages = Object.values(drawPages(source)).flatMap((set) =>
    set.flatMap((page) =>
      page.items.flatMap(({ drawing }) =>
        drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
      ),
    ),
  );
  return { textOf, pages, used: planned.flatMap(({ plan }) => plan.stockUsed.map(({ id }) => id)) };
}

describe('stock is called by material and size', () => {
  test('lines of the same material and size are told apart by where they come from', () => {
    const project = makeProject([
      makeStock('a', { length: 2440, width: 1220 }),
      makeStock('b', { length: 2440, width: 1220, owned: true }),
      makeStock('c', { length: 800, width: 300, form: 'offcut', owned: true }),
    ]);
    const material = project.materials.find(({ id }) => id === 'ply')!.name;
    expect(nameStock(project, 'a')).toBe(`${material}, sheet 2440 × 1220`);
    expect(nameStock(project, 'b')).toBe(`${material}, sheet 2440 × 1220, from the rack`);
    expect(nameStock(project, 'c')).toBe(`${material}, offcut 800 × 300`);
    expect(nameStock({ ...project, units: 'inch' }, 'c')).toBe(`${material}, offcut 31 1/2 × 11 13/16`);
  });

  test('no list, no label and no page shows the id of a line', async () => {
    const { textOf, pages, used } = await wordsFor(openProject('static/projects/curlew.json'));
    expect(used.length).toBeGreaterThan(2);
    const all =
      ['parts.csv', 'shopping.csv', 'summary.txt', 'trips.txt'].map(textOf).join('\n') + pages.join('\n');
    // ids such as `ply18-sheet`: with a hyphen or figures, so that they are no words
    for (const id of used.filter((each) => /[-\d]/.test(each))) expect(all).not.toContain(id);
  }, 60_000);
});

describe('a project in inches', () => {
  test('says its sizes in inches, machine files and columns named mm excepted', async () => {
    const { textOf, pages } = await wordsFor(openProject('tests/projects/garden-cabin-inches.json'));
    const summary = textOf('summary.txt');
    expect(summary).toContain('Lengths in inches');
    for (const line of summary
      .split('\n')
      .filter((each) => /over all|SLIP|Worth keeping|sheet|Leave|Cut the/.test(each)))
      expect(line).not.toMatch(/\b\d{3,}(\.\d)?\b(?! %)/);
    expect(summary).toMatch(/over all \d+( \d+\/\d+)? × \d+/);
    expect(textOf('shopping.csv').split('\n')[0]).toContain('size in');
    expect(textOf('parts.csv').split('\n')[0]).toContain('finished length mm');
    expect(pages).toContain('sizes in inches');
    expect(pages).not.toContain('sizes in mm');
  }, 60_000);

  test('says the sizes in its findings, steps and notes in inches', async () => {
    const { textOf, pages } = await wordsFor(openProject('tests/projects/garden-cabin-inches.json'));
    const words = textOf('summary.txt') + textOf('trips.txt') + pages.join('\n');
    // what a shop sells by its metric size keeps it
    const left = words
      .split('\n')
      .filter((line) => /\d mm\b/.test(line) && !/metric|Screw|Bolt|Dowel/.test(line));
    expect(left).toEqual([]);
    for (const text of [words, textOf('parts.csv'), textOf('shopping.csv')])
      expect(text).not.toMatch(/[\uE000\uE001]/);
  }, 60_000);

  test('says them as the same project says them in mm, to 1/32 in', () => {
    const inches = openProject('tests/projects/garden-cabin-inches.json');
    const built = (units: Project['units']) => understandProject({ ...inches, units }).pieces;
    const figures = (text: string) =>
      [...text.matchAll(/(\d+) (\d+)\/(\d+) in|(\d+)\/(\d+) in|(\d+(?:\.\d+)?) in/g)].map(
        ([, whole, top, bottom, over, under, plain]) =>
          25.4 * (plain ? Number(plain) : Number(whole ?? 0) + Number(top ?? over) / Number(bottom ?? under)),
      );
    let compared = 0;
    for (const [i, piece] of built('inch').entries())
      for (const [k, step] of piece.steps.entries()) {
        const metric = [...(built('mm')[i]?.steps[k]?.text ?? '').matchAll(/\d+(?:\.\d+)?/g)].map(Number);
        for (const value of figures(step.text)) {
          compared += 1;
          expect(Math.min(...metric.map((each) => Math.abs(each - value)))).toBeLessThan(0.5);
        }
      }
    expect(compared).toBeGreaterThan(10);
  }, 60_000);
});

describe('what else is to be bought', () => {
  const project = openProject('static/projects/curlew.json');
  const { pieces } = understandProject(project);
  const lines = listSundries(project, pieces);

  test('is varnish for all pieces, by the litre each', () => {
    const varnish = lines.find(({ item }) => item.startsWith('Spar varnish'))!;
    const litres = pieces.map(({ letter }) =>
      Number(new RegExp(`\\b${letter} ([\\d.]+) l`).exec(varnish.use)?.[1]),
    );
    expect(litres.every((each) => each > 0)).toBe(true);
    const sum = litres.reduce((a, b) => a + b, 0);
    expect(varnish.count).toBeGreaterThanOrEqual(Math.floor(sum / 0.75));
    expect(varnish.count).toBeLessThanOrEqual(Math.ceil(sum / 0.75 + 0.05));
  });

  test('is the finish that was chosen, in its coats, with what can hurt', () => {
    for (const { kind, name, cautions } of coatings) {
      const chosen = { ...project, settings: { ...project.settings, finish: kind } };
      const understanding = understandProject(chosen);
      expect(listSundries(chosen, pieces)[0]?.item).toContain(name);
      const summary = summarise(chosen, understanding, [], { findings: [], withheld: [], routed: [] });
      for (const caution of cautions) expect(summary.replace(/\s+/g, ' ')).toContain(caution);
    }
  });

  test('is spacers as thick as the gaps, and finish to touch up, where the steps take them', () => {
    expect(lines.some(({ item }) => /^Spacers [\d./ ]+ mm thick$/.test(item))).toBe(true);
    expect(lines.some(({ item }) => item.startsWith('Touch-up finish'))).toBe(true);
    expect(listSundries(project, [])).toEqual([]);
  });

  test('stands on the shopping list with the price entered for it', () => {
    const item = lines[0]!.item;
    const priced = { ...project, fixingPrices: [{ item, price: 21 }] };
    const line = listShopping(priced, understandProject(priced), []).find((each) => each.item === item);
    expect(line).toMatchObject({ kind: 'fixing', from: 'to buy', each: 21 });
  });
});
