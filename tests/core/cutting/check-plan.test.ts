import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '#core/cutting';
import type { CutNode, CuttingJob, CuttingPlan } from '#core/cutting';
import { randomJob } from './random-job.ts';
import { planOf } from './solve.ts';

/** The worked example of the command-line contract. */
const job: CuttingJob = {
  kerf: 3,
  trim: { left: 10, right: 0, bottom: 10, top: 0 },
  stock: [{ id: 'ply', length: 2440, width: 1220, cost: 78, count: null }],
  parts: [{ id: 'A1', length: 700, width: 300, count: 2 }],
  keepLeftover: { minLength: 300, minWidth: 100 },
};
const strip: CutNode = {
  ...{ x: 10, y: 10, length: 2430, width: 300, cut: 'across', at: 710 },
  children: [
    { x: 10, y: 10, length: 700, width: 300, part: 'A1' },
    {
      ...{ x: 713, y: 10, length: 1727, width: 300, cut: 'across', at: 1413 },
      children: [
        { x: 713, y: 10, length: 700, width: 300, part: 'A1' },
        { x: 1416, y: 10, length: 1024, width: 300, leftover: true },
      ],
    },
  ],
};
const plan: CuttingPlan = {
  ...{ cost: 78, bound: 78, proven: true, seconds: 0.1, unplaced: [], findings: [] },
  stockUsed: [{ id: 'ply', count: 1 }],
  layouts: [
    {
      ...{ stock: 'ply', times: 1 },
      placed: [
        { id: 'A1', x: 10, y: 10, length: 700, width: 300, turned: false },
        { id: 'A1', x: 713, y: 10, length: 700, width: 300, turned: false },
      ],
      cuts: {
        ...{ x: 10, y: 10, length: 2430, width: 1210, cut: 'along', at: 310 },
        children: [strip, { x: 10, y: 313, length: 2430, width: 907, leftover: true }],
      },
      leftovers: [
        { x: 10, y: 313, length: 2430, width: 907 },
        { x: 1416, y: 10, length: 1024, width: 300 },
      ],
    },
  ],
};

const codes = (changed: Partial<CuttingJob>, wrong: CuttingPlan = plan) =>
  checkPlan({ ...job, ...changed }, wrong).map((problem) => problem.code);
const layout = plan.layouts[0] as CuttingPlan['layouts'][number];
const withLayout = (change: Partial<typeof layout>): CuttingPlan => ({
  ...plan,
  layouts: [{ ...layout, ...change }],
});

describe('checkPlan', () => {
  test('passes the worked example of the contract', () => {
    expect(checkPlan(job, plan)).toEqual([]);
  });

  test('a wider kerf brings the parts too close together', () => {
    expect(codes({ kerf: 3.2 })).toContain('plan-too-close');
  });

  test('a larger trim leaves parts outside', () => {
    expect(codes({ trim: { left: 12, right: 0, bottom: 10, top: 0 } })).toContain('plan-outside-stock');
  });

  test('a keep-out under a part, and under a leftover', () => {
    const on = (x: number, y: number) => [
      {
        ...job.stock[0],
        id: 'ply',
        length: 2440,
        width: 1220,
        cost: 78,
        keepOut: [{ x, y, length: 5, width: 5 }],
      },
    ];
    expect(codes({ stock: on(100, 100) })).toEqual(['plan-in-keep-out']);
    expect(codes({ stock: on(2000, 900) })).toEqual(['plan-in-keep-out']);
    expect(
      codes({
        stock: on(1600, 310.5).map((s) => ({ ...s, keepOut: [{ x: 100, y: 310.5, length: 50, width: 2 }] })),
      }),
    ).toEqual([]);
  });

  test('stages, first cut, rip and saw line are held', () => {
    expect(codes({ cuts: { maxStages: 1 } })).toContain('plan-stages');
    expect(codes({ cuts: { maxStages: 2, exact: true } })).toEqual([]);
    expect(codes({ cuts: { firstCut: 'across' } })).toEqual(['plan-first-cut']);
    expect(codes({ cuts: { maxRip: 250 } })).toContain('plan-rip');
    expect(codes({ cuts: { maxCut: 2400 } })).toEqual(['plan-cut-long']);
  });

  test('counts, cost, bound and proof are held', () => {
    expect(codes({ parts: [{ id: 'A1', length: 700, width: 300, count: 3 }] })).toEqual(['plan-part-count']);
    expect(codes({}, { ...plan, cost: 77 })).toContain('plan-cost');
    expect(codes({}, { ...plan, bound: 79 })).toEqual(['plan-bound']);
    expect(codes({}, { ...plan, proven: false })).toEqual(['plan-proven']);
    expect(codes({}, { ...plan, stockUsed: [] })).toEqual(['plan-stock-listed']);
    expect(codes({ stock: [{ id: 'ply', length: 2440, width: 1220, cost: 78, count: 0 }] })).toEqual([
      'plan-stock-count',
    ]);
    expect(codes({}, { ...plan, unplaced: [{ id: 'A1', count: 1 }] })).toContain('plan-unplaced-silent');
  });

  test('a part turned against its grain, or of another size', () => {
    const [first, second] = layout.placed;
    if (!first || !second) throw new Error('the example has two parts');
    expect(codes({}, withLayout({ placed: [{ ...first, turned: true }, second] }))).toContain(
      'plan-part-turned',
    );
    expect(codes({}, withLayout({ placed: [{ ...first, length: 699 }, second] }))).toContain(
      'plan-part-size',
    );
  });

  test('a tree that does not free what is listed', () => {
    expect(codes({}, withLayout({ leftovers: layout.leftovers.slice(1) }))).toEqual(['plan-leaf-unlisted']);
    expect(codes({}, withLayout({ cuts: null }))).toEqual(['plan-cuts']);
    expect(codes({}, withLayout({ cuts: strip }))).toContain('plan-cuts-root');
  });

  test('always: a number of a good plan changed by a millimetre or one is caught', () => {
    fc.assert(
      fc.property(sawnJob, fc.nat(), fc.constantFrom(-1, 1), (randomly, which, by) => {
        const good = planOf(randomly, { work: 30 });
        const paths = numberPaths(good).filter((path) => good.proven || path[0] !== 'bound');
        const path = paths[which % paths.length];
        if (!path) return;
        const wrong = changeAt(good, path, by) as CuttingPlan;
        expect(checkPlan(randomly, wrong), `${path.join('.')} by ${by}`).not.toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

/** With a tree of cuts every number of a layout is fixed; without one a part may lie a little further. */
const sawnJob = randomJob.map((each) => ({ ...each, cuts: { ...each.cuts, style: 'guillotine' as const } }));

type Path = readonly (string | number)[];

/** Every number that a plan must get right; only the seconds are free. */
function numberPaths(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value === 'number') return path.includes('seconds') ? [] : [path];
  if (typeof value !== 'object' || value === null || path.includes('findings')) return [];
  return Object.entries(value).flatMap(([key, each]) =>
    numberPaths(each, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

function changeAt(value: unknown, path: Path, by: number): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return (value as number) + by;
  if (Array.isArray(value))
    return value.map((each, i) => (i === key ? changeAt(each, rest, by) : (each as unknown)));
  const record = value as Record<string, unknown>;
  return { ...record, [key]: changeAt(record[key], rest, by) };
}
