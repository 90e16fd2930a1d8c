import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPlan, measurePlan, offerByWeights, offerPlans, solveCutting } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';
import { randomJob } from './random-job.ts';
import { planOf } from './solve.ts';

const solveLp = await loadGlpk();
const tools = { solveLp, clock: () => performance.now(), work: 3000, seed: 1 };

const berth: CuttingJob = {
  kerf: 3,
  stock: [
    { id: 'ply', length: 2440, width: 1220, cost: 78 },
    { id: 'half', length: 1220, width: 1220, cost: 40 },
  ],
  parts: [
    { id: 'top', length: 1900, width: 610, count: 2 },
    { id: 'front', length: 1150, width: 380, count: 2 },
    { id: 'rib', length: 560, width: 360, count: 5 },
    { id: 'ledge', length: 760, width: 90, count: 4 },
  ],
  keepLeftover: { minLength: 300, minWidth: 100 },
};

test('a plan is measured in money, pieces, settings and leftovers', () => {
  const job: CuttingJob = {
    kerf: 3,
    stock: [{ id: 'ply', length: 1000, width: 500, cost: 20 }],
    parts: [{ id: 'p', length: 400, width: 500, count: 2 }],
    keepLeftover: { minLength: 100, minWidth: 100 },
  };
  // two crosscuts at 400 leave 1000 - 2 x 403 = 194 of the length
  expect(measurePlan(job, planOf(job))).toEqual({
    ...{ cost: 20, pieces: 1, sizes: 1, settings: 1, passes: 2, leftovers: 1 },
    largest: { length: 194, width: 500 },
  });
});

test('offers cost no more than the plan where they say so, and are better in what they are offered for', () => {
  const plan = planOf(berth, { aim: { leftovers: 0, settings: 0, cuts: 0, turns: 0 } });
  const [own, ...others] = offerPlans(berth, plan, tools);
  expect(own).toMatchObject({ character: 'as-planned', plan });
  expect(others.length).toBeGreaterThan(0);
  for (const { character, plan: offered, figures } of others) {
    expect(checkPlan(berth, offered)).toEqual([]);
    expect(figures).toEqual(measurePlan(berth, offered));
    if (character !== 'sizes') expect(offered.cost).toBe(plan.cost);
    if (character === 'settings') expect(figures.settings).toBeLessThan(own?.figures.settings ?? 0);
  }
});

test('a plan by weights costs the same, and has what weighs most', () => {
  const none = { leftovers: 0, settings: 0, cuts: 0, turns: 0 };
  const plan = planOf(berth, { aim: none });
  const own = measurePlan(berth, plan);
  const fewCuts = offerByWeights(berth, plan, tools, { ...none, cuts: 1 });
  const fewSettings = offerByWeights(berth, plan, tools, { ...none, settings: 1 });
  for (const offer of [fewCuts, fewSettings]) {
    expect(offer?.plan.cost).toBe(plan.cost);
    expect(checkPlan(berth, offer?.plan ?? plan)).toEqual([]);
  }
  expect(fewCuts?.figures.passes ?? Infinity).toBeLessThan(own.passes);
  expect(fewSettings?.figures.settings ?? Infinity).toBeLessThanOrEqual(own.settings);
  // one part alone can be cut in one way only
  const alone: CuttingJob = {
    stock: [{ id: 's', length: 100, width: 100, cost: 1 }],
    parts: [{ id: 'p', length: 100, width: 100 }],
  };
  expect(offerByWeights(alone, planOf(alone), tools, { cuts: 1 })).toBeNull();
});

test('parts left out leave nothing to choose', () => {
  const job: CuttingJob = {
    stock: [{ id: 's', length: 500, width: 500 }],
    parts: [{ id: 'p', length: 600, width: 10 }],
  };
  expect(offerPlans(job, planOf(job), tools)).toHaveLength(1);
});

test('always: a search that goes on from a plan never ends dearer', () => {
  fc.assert(
    fc.property(randomJob, fc.integer({ min: 1, max: 1000 }), (job, seed) => {
      const plan = planOf(job);
      if (plan.unplaced.length > 0) return;
      const next = solveCutting(job, { ...tools, work: 1, seed, start: plan });
      expect(checkPlan(job, next)).toEqual([]);
      expect(next.cost).toBeLessThanOrEqual(plan.cost);
    }),
    { numRuns: 25 },
  );
});
