import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { usualAim, type CuttingPlan } from '#core/cutting';
import type { NestPlan } from '#core/nesting';
import type { CostMeasure } from '#core/pipeline';
import type { Search } from '#app/saw/cutting-room.svelte.ts';
import { nowAndThen } from '#app/saw/now-and-then.ts';
import { weightsOf } from '#app/saw/weights.ts';
import { boundOf, layingWords, searchWords } from '#app/saw/words.ts';

const plan: CuttingPlan = {
  cost: 100,
  bound: 80,
  proven: false,
  seconds: 1,
  stockUsed: [],
  unplaced: [],
  findings: [],
  layouts: [],
};
const search: Search = { state: 'running', plan: null, shown: null, progress: null, isQueued: false };
const euro: CostMeasure = { unit: { kind: 'money', currency: 'EUR' }, isRack: false, unpriced: [] };

describe('how a search stands is said', () => {
  test('while it runs, with the best plan so far and the higher of the bounds known', () => {
    expect(searchWords(search, euro)).toBe('Looking for a first plan.');
    const progress = { cost: 100, bound: 90, phase: 'search' };
    expect(searchWords({ ...search, shown: plan, progress }, euro)).toBe(
      'Best so far 100.00 EUR, at least 90.00 EUR; still looking.',
    );
    const short = { ...plan, bound: null, unplaced: [{ id: 'A1', count: 2 }] };
    expect(searchWords({ ...search, shown: short, progress }, euro)).toBe(
      'Best so far leaves 2 parts; still looking.',
    );
  });

  test('a plan that is to be sought further waits for the search under way', () => {
    const queued = { ...search, state: 'done', plan, shown: plan, isQueued: true } as const;
    expect(searchWords(queued, euro)).toBe('Goes on as soon as the search under way is done.');
    expect(searchWords({ ...queued, isQueued: false }, euro)).toContain('at most 20.00 EUR');
  });

  test('a bound is only told where one is known', () => {
    expect(boundOf(null, undefined)).toBeNull();
    expect(boundOf(null, -Infinity)).toBeNull();
    expect(boundOf({ ...plan, bound: null }, 70)).toBe(70);
    expect(boundOf(plan, 70)).toBe(80);
    expect(boundOf(plan, 0)).toBe(80);
  });

  test('a plan of the router tells what a better one could save', () => {
    const nest = { ...plan, sheets: [{}, {}], placements: [], density: 0.6 } as unknown as NestPlan;
    expect(layingWords({ state: 'done', plan: nest }, euro)).toBe(
      '2 sheets. Not proven: a better plan could save at most 20.00 EUR.',
    );
    expect(layingWords({ state: 'done', plan: { ...nest, bound: null } }, euro)).toBe(
      '2 sheets. Whether it could be had for less is not known.',
    );
  });
});

describe('news that come often are shown now and then', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test('the first at once, then the latest of each span', () => {
    const shown: number[] = [];
    const { tell } = nowAndThen<number>(100, (value) => shown.push(value));
    for (const value of [1, 2, 3]) tell(value);
    expect(shown).toEqual([1]);
    vi.advanceTimersByTime(100);
    expect(shown).toEqual([1, 3]);
    vi.advanceTimersByTime(1000);
    expect(shown).toEqual([1, 3]);
    tell(4);
    expect(shown).toEqual([1, 3, 4]);
  });

  test('nothing after it was stopped', () => {
    const shown: number[] = [];
    const { tell, stop } = nowAndThen<number>(100, (value) => shown.push(value));
    for (const value of [1, 2]) tell(value);
    stop();
    vi.advanceTimersByTime(1000);
    expect(shown).toEqual([1]);
  });
});

test('weights as chosen are times the usual ones, what is left out counts as usual', () => {
  expect(weightsOf({})).toEqual(usualAim);
  expect(weightsOf({ settings: 30, leftovers: 0 })).toEqual({
    ...usualAim,
    leftovers: 0,
    settings: 30 * usualAim.settings,
  });
});
