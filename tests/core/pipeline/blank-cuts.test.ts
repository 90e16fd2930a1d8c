import { groupParts, viewLayout } from '#core/pipeline';
import type { CuttingPlan } from '#core/cutting';
import { describe, expect, test } from 'vitest';

import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

describe('cuts inside a strip', () => {
  function viewOf(between: number) {
    const parts = [makePart('A1', [396, 111, 9]), makePart('A2', [396, 126, 9])];
    const set = { id: 's', parts: ['A1', 'A2'], direction: 'across', between: [between], trim: 5 } as const;
    const pieces = [makePiece(parts, [set])];
    const group = groupParts(makeProject([makeStock('full')]), pieces).groups[0];
    if (!group) throw new Error('no group');
    const width = 111 + 126 + between + 10;
    const plan: CuttingPlan = {
      cost: 60,
      bound: 60,
      proven: true,
      seconds: 0,
      stockUsed: [{ id: 'full', count: 1 }],
      unplaced: [],
      findings: [],
      layouts: [
        {
          stock: 'full',
          times: 1,
          placed: [{ id: 'A1+A2', x: 10, y: 10, length: 396, width, turned: false }],
          cuts: {
            ...{ x: 10, y: 10, length: 2430, width: 1210, cut: 'along', at: 10 + width },
            children: [
              {
                ...{ x: 10, y: 10, length: 2430, width, cut: 'across', at: 406 },
                children: [
                  { x: 10, y: 10, length: 396, width, part: 'A1+A2' },
                  { x: 408.2, y: 10, length: 2031.8, width, leftover: true },
                ],
              },
              { x: 10, y: 12.2 + width, length: 2430, width: 1207.8 - width, leftover: true },
            ],
          },
          leftovers: [],
        },
      ],
    };
    return viewLayout(
      { shapes: [], pieces, groups: [group], routing: [], fits: [], findings: [] },
      { group, plan },
      0,
      {
        width: 190,
      },
    );
  }

  test('fronts 14 apart are parted by two cuts each side of the piece thrown away, and trimmed at both ends', () => {
    const view = viewOf(14);
    // strip from y 10: A2 at 15 to 141, A1 at 155 to 266; the kerf is 2.2
    const inside = view.cuts.filter((cut) => /^[a-z]$/.test(cut.label));
    expect(inside.map((cut) => cut.y1)).toEqual([13.9, 142.1, 153.9, 267.1]);
    expect(inside.every((cut) => cut.x1 === 10 && cut.x2 === 406)).toBe(true);
  });

  test('fronts a kerf apart are parted by one cut', () => {
    const inside = viewOf(2.2).cuts.filter((cut) => /^[a-z]$/.test(cut.label));
    expect(inside).toHaveLength(3);
  });

  test('parts of a strip say where they come out, and the saw does the sheet before the strip', () => {
    const view = viewOf(14);
    expect(view.parts.map((part) => part.place)).toEqual(['strip A, 1st, no. 1', 'strip A, 1st, no. 2']);
    expect(view.cuts.map((cut) => cut.label)).toEqual(['A', 'A1', 'a', 'b', 'c', 'd']);
    expect(view.cuts.map((cut) => cut.order)).toEqual([1, 2, 3, 4, 5, 6]);
  });
});
