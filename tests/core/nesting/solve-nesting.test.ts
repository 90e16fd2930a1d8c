import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkNest, solveNesting } from '#core/nesting';
import type { NestJob, NestPart } from '#core/nesting';
import { contractJob, planOf, rectangle } from './examples.ts';
import { randomSheetJob, randomStripJob } from './random-nest-job.ts';

describe('true shapes on sheets', () => {
  test('the worked example of the contract comes out on one sheet, proven', () => {
    const plan = planOf(contractJob);
    expect(checkNest(contractJob, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 78, bound: 78, proven: true, unplaced: [], length: null });
    expect(plan.stockUsed).toEqual([{ id: 'ply', count: 1 }]);
    expect(plan.placements).toHaveLength(2);
  });

  test('always: every plan passes the checker, and its bound is no higher than its cost', () => {
    fc.assert(
      fc.property(randomSheetJob, (job) => {
        const plan = planOf(job, 120);
        expect(checkNest(job, plan)).toEqual([]);
        if (plan.bound !== null) expect(plan.bound).toBeLessThanOrEqual(plan.cost);
      }),
      { numRuns: 60 },
    );
  });

  test('a triangle and its twin turned by half fill a square sheet that two unturned do not', () => {
    const half = (angles: readonly number[]): NestJob => ({
      stock: [{ id: 's', length: 101, width: 101, cost: 1 }],
      parts: [
        {
          id: 't',
          outline: [
            [0, 0],
            [100, 0],
            [0, 100],
          ],
          angles,
          count: 2,
        },
      ],
    });
    expect(planOf(half([0, 180]), 4000)).toMatchObject({ cost: 1, proven: true });
    expect(planOf(half([0]), 4000).cost).toBe(2);
  });

  test('a part is laid in the hole of another, the gap from its edge', () => {
    const ring = rectangle('ring', 300, 300, {
      holes: [
        [
          [30, 30],
          [270, 30],
          [270, 270],
          [30, 270],
        ],
      ],
    });
    const job: NestJob = {
      gap: 8,
      margin: 5,
      stock: [{ id: 's', length: 312, width: 312, cost: 5 }],
      parts: [ring, rectangle('plug', 220, 220)],
    };
    const plan = planOf(job, 3000);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 5, proven: true });
  });

  test('of two sheet sizes the cheaper suffices where the parts fit it', () => {
    const job: NestJob = {
      gap: 5,
      stock: [
        { id: 'large', length: 2440, width: 1220, cost: 78 },
        { id: 'small', length: 1220, width: 610, cost: 25 },
      ],
      parts: [rectangle('a', 500, 280, { count: 4 })],
    };
    const plan = planOf(job, 3000);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 25, proven: true, stockUsed: [{ id: 'small', count: 1 }] });
  });

  test('parts keep clear of a clamp by the gap', () => {
    const job: NestJob = {
      gap: 8,
      stock: [
        { id: 's', length: 500, width: 300, cost: 1, keepOut: [{ x: 0, y: 0, length: 60, width: 300 }] },
      ],
      parts: [rectangle('a', 200, 140, { count: 4 })],
    };
    const plan = planOf(job, 2000);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.cost).toBe(1);
    for (const { x } of plan.placements) expect(x).toBeGreaterThanOrEqual(68 - 1e-5);
  });

  test('what is left of the last sheet stays in one piece: the parts lie at its beginning', () => {
    const job: NestJob = {
      gap: 10,
      margin: 10,
      stock: [{ id: 's', length: 2000, width: 1000, cost: 1 }],
      parts: [rectangle('a', 300, 480, { count: 4, angles: [0, 90] })],
    };
    const plan = planOf(job, 3000);
    const reach = Math.max(...plan.placements.map(({ x, angle }) => x + (angle === 0 ? 300 : 0)));
    expect(checkNest(job, plan)).toEqual([]);
    expect(reach).toBeLessThan(640);
  });

  test('a part larger than every sheet is reported and the others are laid', () => {
    const job: NestJob = {
      margin: 10,
      stock: [{ id: 's', length: 500, width: 400 }],
      parts: [rectangle('long', 490, 100), rectangle('a', 100, 100)],
    };
    const plan = planOf(job);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan).toMatchObject({ bound: null, proven: false, unplaced: [{ id: 'long', count: 1 }] });
    expect(plan.findings.map(({ code, about }) => [code, about])).toEqual([
      ['part-larger-than-stock', 'long'],
    ]);
    expect(plan.findings[0]?.message).toContain('480 x 380 mm');
  });

  test('stock that runs out leaves parts over, said how many', () => {
    const job: NestJob = {
      stock: [{ id: 's', length: 210, width: 100, count: 1 }],
      parts: [rectangle('a', 100, 100, { count: 5 })],
    };
    const plan = planOf(job, 2000);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.unplaced).toEqual([{ id: 'a', count: 3 }]);
    expect(plan.findings[0]).toMatchObject({ severity: 'stop', code: 'stock-runs-out' });
  });

  test('notched panels that all cover the middle of a sheet take one each, proven, though little of its area', () => {
    const panel: NestPart = {
      id: 'side',
      outline: [
        [0, 0],
        [560, 0],
        [560, 340],
        [520, 400],
        [0, 400],
      ],
      holes: [
        [
          [20, 20],
          [60, 20],
          [60, 25],
          [20, 25],
        ],
      ],
      count: 3,
    };
    const plan = planOf({ stock: [{ id: 's', length: 1000, width: 640, cost: 1 }], parts: [panel] }, 2000);
    expect(plan).toMatchObject({ cost: 3, bound: 3, proven: true, unplaced: [] });
  });

  test('angles whose boxes cover the middle of a sheet share it all the same', () => {
    const angle: NestPart = {
      id: 'angle',
      outline: [
        [0, 0],
        [600, 0],
        [600, 100],
        [100, 100],
        [100, 600],
        [0, 600],
      ],
      count: 4,
    };
    const nested: NestJob = { stock: [{ id: 's', length: 1000, width: 1000, cost: 1 }], parts: [angle] };
    const plan = planOf(nested, 4000);
    expect(checkNest(nested, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 1, bound: 1, proven: true });
  });
});

describe('true shapes on a strip', () => {
  test('always: every plan passes the checker, and its bound is no higher than its length', () => {
    fc.assert(
      fc.property(randomStripJob, (job) => {
        const plan = planOf(job, 200);
        expect(checkNest(job, plan)).toEqual([]);
        if (plan.bound !== null) expect(plan.bound).toBeLessThanOrEqual((plan.length ?? 0) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('rectangles that fill a strip but for a hair are packed nearly to the bound', () => {
    const job: NestJob = {
      stock: [{ strip: 100.05 }],
      parts: [
        rectangle('a', 60, 50, { angles: [0, 90] }),
        rectangle('b', 60, 50, { angles: [0, 90] }),
        rectangle('c', 40, 100, { angles: [0, 90] }),
      ],
    };
    const plan = planOf(job, 8000);
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.length).toBeLessThan(100 * 1.02);
  });

  test('parts that all reach across the middle of a strip lie one behind the other: so says the bound', () => {
    const tapered: NestPart = {
      id: 'rib',
      outline: [
        [0, 0],
        [400, 0],
        [386, 700],
        [0, 700],
      ],
      count: 3,
    };
    const plan = planOf({ gap: 10, stock: [{ strip: 1000 }], parts: [tapered] }, 3000);
    // half way up the strip, 500 mm, a rib is 390 mm long; by area alone the strip could be 823 mm
    expect(plan.bound).toBeCloseTo(3 * 390 + 2 * 10, 3);
    expect(plan.length).toBeLessThan(3 * 400 + 2 * 10 + 1);
  });

  test('a single part is proven at once where it cannot be shorter', () => {
    const plan = planOf({ stock: [{ strip: 50 }], parts: [rectangle('a', 80, 40, { angles: [0, 90] })] });
    expect(plan).toMatchObject({ length: 80, proven: true });
  });

  test('a part wider than the strip is reported', () => {
    const plan = planOf({ stock: [{ strip: 50 }], parts: [rectangle('a', 80, 60)] });
    expect(plan).toMatchObject({ length: 0, unplaced: [{ id: 'a', count: 1 }], bound: null });
    expect(plan.findings[0]?.message).toContain('the strip is 50 mm wide');
  });
});

describe('the search', () => {
  const job: NestJob = {
    gap: 4,
    stock: [{ strip: 400 }],
    parts: [
      {
        id: 'l',
        outline: [
          [0, 0],
          [150, 0],
          [150, 40],
          [40, 40],
          [40, 160],
          [0, 160],
        ],
        angles: [0, 90, 180, 270],
        count: 6,
      },
      {
        id: 't',
        outline: [
          [0, 0],
          [120, 0],
          [30, 90],
        ],
        angles: [0, 180],
        count: 6,
      },
    ],
  };

  test('the same seed and work give the same bytes, another seed another plan', () => {
    const first = JSON.stringify(planOf(job, 500));
    expect(JSON.stringify(planOf(job, 500))).toBe(first);
    expect(JSON.stringify(planOf(job, 500, 2))).not.toBe(first);
  });

  test('more work never gives a longer strip', () => {
    const lengths = [1, 100, 400, 1600, 6400].map((work) => planOf(job, work).cost);
    for (let i = 1; i < lengths.length; i++) expect(lengths[i]).toBeLessThanOrEqual(lengths[i - 1] ?? 0);
    expect(lengths.at(-1)).toBeLessThan(lengths[0] ?? 0);
  });

  test('always: more work never gives dearer sheets', () => {
    fc.assert(
      fc.property(randomSheetJob, (random) => {
        const [little, much] = [planOf(random, 30), planOf(random, 300)];
        const left = (plan: typeof little) => plan.unplaced.reduce((sum, { count }) => sum + count, 0);
        expect(left(much)).toBeLessThanOrEqual(left(little));
        if (left(much) === left(little)) expect(much.cost).toBeLessThanOrEqual(little.cost + 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  test('plans told on the way never get worse, each passes the checker, and the last is the answer', () => {
    const costs: number[] = [];
    const plan = solveNesting(job, {
      clock: () => 0,
      work: 1500,
      onProgress: (progress) => {
        costs.push(progress.cost);
        expect(checkNest(job, progress.plan)).toEqual([]);
      },
    });
    expect(costs.length).toBeGreaterThan(2);
    for (let i = 1; i < costs.length; i++) expect(costs[i]).toBeLessThan(costs[i - 1] ?? 0);
    expect(plan.cost).toBe(costs.at(-1));
  });

  test('always: the order in which parts are named changes neither what is laid nor the bound', () => {
    fc.assert(
      fc.property(randomSheetJob, (random) => {
        const [plan, turned] = [
          planOf(random, 60),
          planOf({ ...random, parts: [...random.parts].reverse() }, 60),
        ];
        expect(turned.bound === null).toBe(plan.bound === null);
        if (plan.bound !== null) expect(turned.bound).toBeCloseTo(plan.bound, 6);
      }),
      { numRuns: 25 },
    );
  });

  test('it ends within the time asked for and a tenth, with a plan, however short that is', () => {
    const many: NestJob = {
      stock: [{ id: 's', length: 2440, width: 1220 }],
      parts: [
        {
          id: 't',
          outline: [
            [0, 0],
            [120, 0],
            [30, 90],
          ],
          angles: [0, 180],
          count: 2000,
        },
      ],
    };
    let now = 0;
    const plan = solveNesting(many, { clock: () => (now += 1), seconds: 0.05 });
    expect(plan.unplaced).toEqual([]);
    expect(
      checkNest({ ...many, parts: many.parts }, { ...plan, placements: plan.placements.slice(0, 40) }).every(
        ({ code }) => code === 'nest-count' || code === 'nest-density',
      ),
    ).toBe(true);
  });
});
