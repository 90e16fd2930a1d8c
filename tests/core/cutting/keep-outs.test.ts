import { expect, test } from 'vitest';
import { checkPlan, type CuttingJob } from '#core/cutting';
import { planOf } from './solve.ts';

// The costs expected here were found by trying every cut on a grid of whole millimetres, with a program outside this project.

test('a part that touches two bad spots is cut, though the saw makes dust of all that is left beside it', () => {
  const job: CuttingJob = {
    kerf: 2,
    trim: { top: 1 },
    stock: [
      {
        id: 'sheet',
        length: 9,
        width: 6,
        cost: 12,
        keepOut: [
          { x: 6, y: 2, length: 3, width: 1 },
          { x: 0, y: 3, length: 1, width: 2 },
        ],
      },
    ],
    parts: [{ id: 'part', length: 6, width: 3, count: 2 }],
  };
  const plan = planOf(job, { work: 20_000 });
  expect(checkPlan(job, plan)).toEqual([]);
  expect([plan.cost, plan.unplaced, plan.proven]).toEqual([24, [], true]);
});

test('two bad spots side by side are left behind with one cut', () => {
  const job: CuttingJob = {
    kerf: 1,
    stock: [
      { id: 'whole', length: 10, width: 10, cost: 100, count: 1 },
      {
        id: 'spotted',
        length: 5,
        width: 7,
        cost: 10,
        keepOut: [
          { x: 1, y: 0, length: 2, width: 2 },
          { x: 3, y: 1, length: 2, width: 2 },
        ],
      },
    ],
    parts: [{ id: 'part', length: 5, width: 4, count: 3 }],
  };
  const plan = planOf(job, { work: 20_000 });
  expect(checkPlan(job, plan)).toEqual([]);
  expect([plan.cost, plan.proven]).toEqual([30, true]);
});

test('stock that costs nothing and that nothing lies on is not in the plan', () => {
  const job: CuttingJob = {
    kerf: 3,
    trim: { left: 10 },
    cuts: { style: 'length' },
    stock: [
      { id: 'rest', length: 3600, cost: 0 },
      { id: 'short', length: 2400, cost: 0, count: 2 },
    ],
    parts: [
      { id: 'a', length: 315.09 },
      { id: 'b', length: 427.69 },
      { id: 'c', length: 698.15 },
      { id: 'd', length: 58.98, count: 3 },
    ],
  };
  const plan = planOf(job, { work: 20_000 });
  expect(plan.layouts.filter(({ placed }) => placed.length === 0)).toEqual([]);
  expect(plan.stockUsed.reduce((sum, { count }) => sum + count, 0)).toBe(
    plan.layouts.reduce((sum, { times }) => sum + times, 0),
  );
});

test('a bound that proves the plan is its cost, to the last figure', () => {
  const job: CuttingJob = {
    kerf: 3.2,
    cuts: { style: 'length' },
    stock: [
      { id: 'dear', length: 3600, cost: 10.3 },
      { id: 'unpriced', length: 3000, count: 2 },
    ],
    parts: [
      { id: 'a', length: 334.1 },
      { id: 'b', length: 972.9 },
      { id: 'c', length: 1025.7 },
      { id: 'd', length: 193.3 },
    ],
  };
  const plan = planOf(job, { work: 20_000 });
  expect([plan.proven, plan.bound]).toEqual([true, plan.cost]);
});
