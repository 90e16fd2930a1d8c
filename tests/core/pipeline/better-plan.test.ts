import { expect, test } from 'vitest';
import { betterPlan, withBound } from '#core/pipeline';
import { openPlan as plan } from './made-up.ts';

test('the cheaper of two plans keeps the higher bound of both', () => {
  const later = { ...plan, cost: 120, bound: 90 };
  expect(betterPlan(plan, later)).toEqual({ ...plan, bound: 90 });
  expect(betterPlan(later, plan)).toEqual({ ...plan, bound: 90 });
  expect(betterPlan(null, plan)).toBe(plan);
});

test('a plan that leaves fewer parts is better at any cost', () => {
  const short = { ...plan, cost: 10, bound: null, unplaced: [{ id: 'A1', count: 1 }] };
  expect(betterPlan(short, plan)).toEqual(plan);
  expect(betterPlan(plan, short)).toEqual(plan);
  // what nothing is known of stays without a bound
  expect(withBound(short, 10)).toBe(short);
});

test('a bound that meets the cost proves the plan, and is never told above it', () => {
  expect(withBound(plan, 100)).toEqual({ ...plan, bound: 100, proven: true });
  expect(withBound(plan, 100.00000001)).toEqual({ ...plan, bound: 100, proven: true });
  expect(withBound(plan, 70)).toBe(plan);
});
