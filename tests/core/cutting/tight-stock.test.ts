import { expect, test } from 'vitest';
import type { CuttingJob, CuttingPart } from '#core/cutting';
import { rollDice, type Dice } from '../../support/random.ts';
import { planOf } from './solve.ts';

/** A rectangle sawn at random, edge to edge, until it is so many parts: what they came from holds them all again. */
function sawApart(dice: Dice, count: number): readonly CuttingPart[] {
  const rests = [{ length: 2440, width: 1220 }];
  while (rests.length < count) {
    rests.sort((a, b) => b.length * b.width - a.length * a.width);
    const whole = rests.shift();
    if (!whole) break;
    const share = dice.between(0.3, 0.7);
    if (whole.length > whole.width) {
      const first = Math.round(whole.length * share);
      rests.push({ ...whole, length: first }, { ...whole, length: whole.length - first });
    } else {
      const first = Math.round(whole.width * share);
      rests.push({ ...whole, width: first }, { ...whole, width: whole.width - first });
    }
  }
  return rests.map((rest, i) => ({ id: `p${i}`, ...rest, count: 1 }));
}

function tightJob(seed: number, sheets: number, partsOfEach: number): CuttingJob {
  const dice = rollDice(seed);
  const parts = Array.from({ length: sheets }, () => sawApart(dice, partsOfEach)).flat();
  return {
    kerf: 0,
    stock: [{ id: 'sheet', length: 2440, width: 1220, cost: 1, count: sheets }],
    parts: parts.map((part, i) => ({ ...part, id: `p${i}` })),
  };
}

test('the sheets at hand, every bit of them needed, are searched on until all parts lie on them', () => {
  const plans = [1, 2, 3, 4, 5, 6].map((seed) => planOf(tightJob(seed, 2, 10), { work: 300_000, seed: 1 }));
  expect(plans.map(({ unplaced }) => unplaced.length)).toEqual([0, 0, 0, 0, 0, 0]);
});

test('sheets that are smaller than their parts together end the search soon, with what fits', () => {
  const job = tightJob(7, 2, 10);
  const short = { ...job, stock: job.stock.map((stock) => ({ ...stock, count: 1 })) };
  const plan = planOf(short, { work: 50_000_000 });
  expect(plan.unplaced.length).toBeGreaterThan(0);
  expect(plan.layouts.length).toBe(1);
}, 20_000);
