import { expect, test } from 'vitest';
import type { CuttingJob } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import { planOf } from './solve.ts';

function makeJob(kinds: number): CuttingJob {
  const random = makeRandom(3);
  const parts = Array.from({ length: kinds }, (_, i) => ({
    id: `p${i}`,
    length: random.whole(80, 900),
    width: random.whole(50, 500),
  }));
  return { kerf: 3, turn: true, stock: [{ id: 's', length: 2440, width: 1220, cost: 1 }], parts };
}

test('a thousand kinds of parts in two seconds, within a tenth of the bound', () => {
  const start = performance.now();
  const plan = planOf(makeJob(1000), { work: undefined, seconds: 2 });
  // 10 % over, and half a second for a machine that is busy with other tests
  expect(performance.now() - start).toBeLessThan(2700);
  expect(plan.cost).toBeLessThanOrEqual(1.1 * (plan.bound ?? 0));
});

test('a part as large as the sheet, a kerf wider than a part, and a grid of hundredths all end in plans', () => {
  const stock = [{ id: 's', length: 300, width: 200, cost: 1 }];
  expect(planOf({ stock, parts: [{ id: 'p', length: 300, width: 200, count: 3 }] }).cost).toBe(3);
  expect(planOf({ kerf: 20, stock, parts: [{ id: 'p', length: 10, width: 10, count: 4 }] }).cost).toBe(1);
  expect(
    planOf({ kerf: 3.17, stock, parts: [{ id: 'p', length: 71.83, width: 63.57, count: 12 }] }).cost,
  ).toBe(1);
});
