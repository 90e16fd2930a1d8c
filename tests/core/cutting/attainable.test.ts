import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveCutting } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();
const solve = (job: CuttingJob) => solveCutting(job, { solveLp, clock: () => 0, work: 2000 });

describe('a bound is a total that whole sheets can come to', () => {
  test('two parts that do not fit the small sheet prove the large one', () => {
    const plan = solve({
      stock: [
        { id: 'small', length: 1525, width: 1525, cost: 82 },
        { id: 'large', length: 2440, width: 1220, cost: 96 },
      ],
      parts: [{ id: 'long', length: 1800, width: 300, count: 2 }],
    });
    expect(plan).toMatchObject({ cost: 96, bound: 96, proven: true });
  });

  test('a limited cheap offcut is not counted twice', () => {
    const plan = solve({
      stock: [
        { id: 'offcut', length: 500, width: 500, cost: 5, count: 1 },
        { id: 'sheet', length: 1000, width: 500, cost: 40 },
      ],
      parts: [{ id: 'square', length: 500, width: 500, count: 2 }],
    });
    // 5 + 5 would make 10, but there is one offcut: 40 is the least
    expect(plan).toMatchObject({ cost: 40, bound: 40, proven: true });
  });

  test('always: with one part that fills a sheet the bound is the least sum of prices', () => {
    const price = fc.integer({ min: 1, max: 90 });
    fc.assert(
      fc.property(price, price, fc.integer({ min: 1, max: 6 }), (a, b, count) => {
        const stock = [
          { id: 'a', length: 100, width: 100, cost: a, count: 2 },
          { id: 'b', length: 100, width: 100, cost: b },
        ];
        const plan = solve({ stock, parts: [{ id: 'p', length: 100, width: 100, count }] });
        const fromA = a < b ? Math.min(2, count) : 0;
        expect(plan.cost).toBe(fromA * a + (count - fromA) * b);
        expect(plan.bound).toBeLessThanOrEqual(plan.cost);
        expect(plan.proven).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});

test('steps that a cheaper plan cut short are not counted: one price step after the other is found', () => {
  const stock = [
    { id: 'a', length: 100, width: 100, cost: 87, count: 2 },
    { id: 'b', length: 100, width: 100, cost: 86 },
  ];
  expect(solve({ stock, parts: [{ id: 'p', length: 100, width: 100, count: 4 }] }).cost).toBe(344);
});
