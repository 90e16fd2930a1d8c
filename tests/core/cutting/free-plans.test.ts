import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPlan } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { plainJob } from './random-job.ts';
import { planOf } from './solve.ts';

/** Four parts around a fifth: the smallest pattern that no cuts from edge to edge free (the pinwheel; common practice, no source). */
const pinwheel = (kerf: number): CuttingJob => ({
  kerf,
  stock: [{ id: 'sheet', length: 500 - kerf, width: 500 - kerf, cost: 10 }],
  parts: [
    { id: 'long', length: 300 - kerf, width: 200 - kerf, count: 2 },
    { id: 'tall', length: 200 - kerf, width: 300 - kerf, count: 2 },
    { id: 'core', length: 100 - kerf, width: 100 - kerf },
  ],
});

test('five parts around each other come out of one sheet by a router and of two by a saw', () => {
  for (const kerf of [0, 4]) {
    expect(planOf(pinwheel(kerf)).cost).toBe(20);
    const plan = planOf({ ...pinwheel(kerf), cuts: { style: 'free' } }, { work: 4000 });
    expect(plan).toMatchObject({ cost: 10, bound: 10, proven: true });
    expect(plan.layouts[0]?.cuts).toBeNull();
  }
});

test('what a free plan leaves is a leftover where it is large enough, and lies clear of a keep-out', () => {
  const job: CuttingJob = {
    ...pinwheel(4),
    stock: [
      {
        id: 'sheet',
        length: 900,
        width: 496,
        cost: 10,
        keepOut: [{ x: 500, y: 100, length: 50, width: 50 }],
      },
    ],
    cuts: { style: 'free' },
    keepLeftover: { minLength: 200, minWidth: 200 },
  };
  const plan = planOf(job, { work: 4000 });
  expect(plan.cost).toBe(10);
  expect(plan.layouts[0]?.leftovers.length).toBeGreaterThan(0);
});

test('always: a free plan costs no more than the one for the saw, and the same work gives it twice', () => {
  fc.assert(
    fc.property(plainJob, (job) => {
      const free: CuttingJob = { ...job, cuts: { style: 'free' } };
      const plan = planOf(free, { work: 1500 });
      expect(checkPlan(free, plan)).toEqual([]);
      expect(plan.cost).toBeLessThanOrEqual(planOf(job, { work: 1500 }).cost);
      expect({ ...planOf(free, { work: 1500 }), seconds: 0 }).toEqual({ ...plan, seconds: 0 });
    }),
    { numRuns: 25 },
  );
});
