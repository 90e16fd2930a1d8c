import type { CuttingPlan, Layout } from '#core/cutting';
import { expandLayout, groupParts, viewLayout, type CuttingGroup, type Understanding } from '#core/pipeline';
import { describe, expect, test } from 'vitest';

import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

const fronts = [
  makePart('A1', [396, 111, 9]),
  makePart('A2', [396, 126, 9]),
  makePart('A3', [200, 100, 9], { grain: 'any' }),
];
const set = { id: 's', parts: ['A1', 'A2'], direction: 'across', between: [14], trim: 5 } as const;
const pieces = [makePiece(fronts, [set])];

function makeGroup(): CuttingGroup {
  const group = groupParts(makeProject([makeStock('full')]), pieces).groups[0];
  if (!group) throw new Error('no group');
  return group;
}

function makeLayout(placed: Layout['placed']): Layout {
  return {
    stock: 'full',
    times: 1,
    placed,
    cuts: null,
    leftovers: [{ x: 600, y: 300, length: 400, width: 200 }],
  };
}

describe('a layout part by part', () => {
  test('fronts of a strip lie at their own places on the sheet', () => {
    const layout = makeLayout([{ id: 'A1+A2', x: 10, y: 20, length: 396, width: 261, turned: false }]);
    expect(expandLayout(makeGroup(), layout)).toMatchObject([
      { part: 'A1', set: 's', x: 10, y: 165, length: 396, width: 111, size: [396, 111] },
      { part: 'A2', set: 's', x: 10, y: 25, length: 396, width: 126 },
    ]);
  });

  test('a turned part keeps its size in words and swaps its extents', () => {
    const layout = makeLayout([{ id: 'A3', x: 500, y: 20, length: 100, width: 200, turned: true }]);
    expect(expandLayout(makeGroup(), layout)).toMatchObject([
      { part: 'A3', x: 500, y: 20, length: 100, width: 200, turned: true, size: [200, 100] },
    ]);
  });

  test('the view of a diagram holds stock, trim, parts and leftovers', () => {
    const group = makeGroup();
    const layout = makeLayout([{ id: 'A3', x: 500, y: 20, length: 200, width: 100, turned: false }]);
    const plan: CuttingPlan = {
      cost: 60,
      bound: 60,
      proven: true,
      seconds: 0,
      stockUsed: [{ id: 'full', count: 1 }],
      unplaced: [],
      findings: [],
      layouts: [layout],
    };
    const understanding: Understanding = {
      shapes: [],
      pieces,
      groups: [group],
      routing: [],
      fits: [],
      findings: [],
    };
    expect(viewLayout(understanding, { group, plan }, 0, { width: 190 })).toMatchObject({
      form: 'sheet',
      stock: { length: 2440, width: 1220 },
      usable: { x: 10, y: 10, length: 2430, width: 1210 },
      kerf: 2.2,
      parts: [{ address: 'A3', name: 'part A3', grain: 'any', x: 500, y: 20, length: 200, width: 100 }],
      leftovers: [{ x: 600, y: 300, length: 400, width: 200 }],
      width: 190,
    });
    expect(() => viewLayout(understanding, { group, plan }, 1, { width: 190 })).toThrow('no layout 1');
  });
});
