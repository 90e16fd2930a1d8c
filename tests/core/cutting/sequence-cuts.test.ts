import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { collectSettings, sequenceCuts } from '#core/cutting';
import type { CutNode, Layout } from '#core/cutting';
import { randomJob } from './random-job.ts';
import { planOf } from './solve.ts';

/** Two rips of 300 and 200 out of a sheet of 1000 x 503; two parts in the first strip, one in the second. */
const cuts: CutNode = {
  ...{ x: 0, y: 0, length: 1000, width: 506, cut: 'along', at: 300 },
  children: [
    {
      ...{ x: 0, y: 0, length: 1000, width: 300, cut: 'across', at: 400 },
      children: [
        { x: 0, y: 0, length: 400, width: 300, part: 'a' },
        {
          ...{ x: 403, y: 0, length: 597, width: 300, cut: 'across', at: 803 },
          children: [
            { x: 403, y: 0, length: 400, width: 300, part: 'a' },
            { x: 806, y: 0, length: 194, width: 300, waste: true },
          ],
        },
      ],
    },
    {
      ...{ x: 0, y: 303, length: 1000, width: 203, cut: 'along', at: 503 },
      children: [
        { x: 0, y: 303, length: 1000, width: 200, part: 'b' },
        { x: 0, y: 506, length: 1000, width: 0, waste: true },
      ],
    },
  ],
};
const layout: Layout = {
  ...{ stock: 's', times: 2, cuts, leftovers: [] },
  placed: [
    { id: 'b', x: 0, y: 303, length: 1000, width: 200, turned: false },
    { id: 'a', x: 403, y: 0, length: 400, width: 300, turned: false },
    { id: 'a', x: 0, y: 0, length: 400, width: 300, turned: false },
  ],
};

describe('the saw sequence', () => {
  test('letters the rips, then numbers the crosscuts in each strip', () => {
    const { steps } = sequenceCuts(layout, 3);
    expect(steps.map((step) => [step.label, step.cut, step.fence, step.piece])).toEqual([
      ['A', 'along', 300, 'sheet'],
      ['B', 'along', 200, 'rest of the sheet'],
      ['A1', 'across', 400, 'strip A'],
      ['A2', 'across', 400, 'rest of strip A'],
    ]);
  });

  test('tells each part its strip and its place in it, in the order of the layout', () => {
    expect(sequenceCuts(layout, 3).places).toEqual([
      { strip: 'B', position: 1 },
      { strip: 'A', position: 2 },
      { strip: 'A', position: 1 },
    ]);
  });

  test('numbers the cuts of a board and sets each from the end in hand', () => {
    const row: Layout = {
      ...{ stock: 'bar', times: 1, cuts: null, leftovers: [] },
      placed: [
        { id: 'a', x: 10, length: 500, turned: false },
        { id: 'b', x: 513, length: 200, turned: false },
      ],
    };
    const { steps, places } = sequenceCuts(row, 3);
    expect(steps.map((step) => [step.label, step.fence])).toEqual([
      ['1', 500],
      ['2', 200],
    ]);
    expect(places).toEqual([
      { strip: null, position: 1 },
      { strip: null, position: 2 },
    ]);
  });

  test('equal fence settings are one batch, passes counted over repeated layouts', () => {
    const settings = collectSettings([layout], 3);
    expect(settings.map((setting) => [setting.cut, setting.fence, setting.passes])).toEqual([
      ['along', 300, 2],
      ['along', 200, 2],
      ['across', 400, 4],
    ]);
  });

  test('always: each cut of the tree is one step, each placed part has a place of its own', () => {
    fc.assert(
      fc.property(randomJob, (job) => {
        const plan = planOf({ ...job, cuts: { ...job.cuts, style: 'guillotine' } }, { work: 20 });
        for (const each of plan.layouts) {
          const { steps, places } = sequenceCuts(each, job.kerf ?? 0);
          expect(steps).toHaveLength(countCuts(each.cuts));
          expect(new Set(steps.map((step) => step.label)).size).toBe(steps.length);
          expect(new Set(places.map((place) => `${place.strip}${place.position}`)).size).toBe(
            each.placed.length,
          );
          expect(places.every((place) => place.strip !== null && place.position >= 1)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });
});

function countCuts(node: CutNode | null): number {
  if (!node || !('cut' in node)) return 0;
  return 1 + node.children.reduce((sum, child) => sum + countCuts(child), 0);
}
