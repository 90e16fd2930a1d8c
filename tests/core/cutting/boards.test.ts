import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CuttingJob } from '#core/cutting';
import { planOf } from './solve.ts';

function boardJob(length: number, parts: readonly (readonly [length: number, count: number])[]): CuttingJob {
  return {
    cuts: { style: 'length' },
    stock: [{ id: 'board', length, cost: 1 }],
    parts: parts.map(([size, count], i) => ({ id: `p${i}`, length: size, count })),
  };
}

describe('boards', () => {
  test('parts just over a half take a board each, and that is proven', () => {
    expect(planOf(boardJob(1000, [[501, 7]]))).toMatchObject({ cost: 7, bound: 7, proven: true });
  });

  /**
   * Marcotte's kind of instance whose relaxation says less than any plan can do (Gau 1994 and others, from memory): boards
   * of 132 for 2 of 44, 3 of 33 and 6 of 12 come to 259/132 = 1.962 boards, rounded up 2, and no plan uses fewer than 3.
   */
  test('where the relaxed program says a board too few, trying all proves the next one', () => {
    const plan = planOf(
      boardJob(132, [
        [44, 2],
        [33, 3],
        [12, 6],
      ]),
    );
    expect(plan).toMatchObject({ cost: 3, bound: 3, proven: true });
  });

  test('sets of three that fill their board are all found: sixty parts, twenty boards', () => {
    // triplets as Falkenauer (1996) draws them, from memory: two drawn, the third is the rest
    const parts: [number, number][] = [];
    for (let i = 0; i < 20; i++) {
      const first = 380 + ((i * 37) % 111);
      const second = 250 + ((i * 53) % Math.floor((1000 - first) / 2 - 249));
      parts.push([first, 1], [second, 1], [1000 - first - second, 1]);
    }
    expect(planOf(boardJob(1000, parts), { work: 20_000 })).toMatchObject({ cost: 20, proven: true });
  });

  test('always: boards drawn full are cut from as many boards, or the plan says how many fewer might do', () => {
    const row = fc.array(fc.integer({ min: 60, max: 500 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 2, maxLength: 8 }),
        fc.integer({ min: 0, max: 4 }),
        (rows, kerf) => {
          const full = rows.map((lengths) => lengths.reduce((sum, each) => sum + each + kerf, 0));
          const length = Math.max(...full);
          const plan = planOf({
            ...boardJob(
              length,
              rows.flat().map((each) => [each, 1]),
            ),
            kerf,
          });
          expect(plan.cost).toBeLessThanOrEqual(rows.length + 1e-9);
          expect(plan.bound ?? 0).toBeLessThanOrEqual(plan.cost + 1e-9);
        },
      ),
      { numRuns: 25 },
    );
  });
});
