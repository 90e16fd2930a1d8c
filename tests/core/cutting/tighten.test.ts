import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tightBound } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { randomJob } from './random-job.ts';
import { planOf } from './solve.ts';

/** One sheet of 100 x 10 and parts as wide as it: a row. */
function makeRow(parts: readonly (readonly [length: number, count: number])[]): CuttingJob {
  return {
    stock: [{ id: 'sheet', length: 100, width: 10, cost: 1 }],
    parts: parts.map(([length, count], i) => ({ id: `p${i}`, length, width: 10, count })),
  };
}

test('three parts of a little more than a third need two sheets on the coarsest grid', () => {
  expect(tightBound(makeRow([[34, 3]]), [5])).toBe(2);
});

test('a part that is wanted once is not in a sheet twice', () => {
  // two of either would fill a sheet, so that patterns of any number of copies allow half a sheet for each
  const parts = [
    { id: 'lying', length: 100, width: 50 },
    { id: 'standing', length: 50, width: 100 },
  ];
  expect(tightBound({ stock: [{ id: 'sheet', length: 100, width: 100, cost: 1 }], parts }, [100])).toBe(2);
});

test('always: no plan of a job costs less than the bound of a coarse grid', () => {
  fc.assert(
    fc.property(randomJob, fc.integer({ min: 4, max: 60 }), (drawn, cells) => {
      const job = { ...drawn, cuts: { ...drawn.cuts, style: 'guillotine' as const } };
      const plan = planOf(job, { work: 300 });
      fc.pre(plan.unplaced.length === 0 && plan.cost > 0);
      expect(tightBound(job, [cells])).toBeLessThanOrEqual(plan.cost * (1 + 1e-9));
    }),
    { numRuns: 25 },
  );
});
