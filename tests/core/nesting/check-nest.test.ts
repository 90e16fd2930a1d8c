import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkNest } from '#core/nesting';
import type { NestJob, NestPlacement, NestPlan } from '#core/nesting';
import { contractJob, planOf, rectangle } from './examples.ts';
import { randomSheetJob } from './random-nest-job.ts';

const frame = rectangle('frame', 100, 100, {
  holes: [
    [
      [20, 20],
      [80, 20],
      [80, 80],
      [20, 80],
    ],
  ],
});
const job: NestJob = {
  gap: 5,
  margin: 10,
  stock: [
    {
      id: 's',
      length: 300,
      width: 200,
      cost: 7,
      count: 1,
      keepOut: [{ x: 250, y: 150, length: 50, width: 50 }],
    },
  ],
  parts: [frame, rectangle('plug', 50, 40, { angles: [0, 90] })],
};
const at = (id: string, x: number, y: number, angle = 0): NestPlacement => ({ id, sheet: 0, angle, x, y });
const plan: NestPlan = {
  sheets: [{ stock: 's' }],
  placements: [at('frame', 10, 10), at('plug', 35, 40)],
  stockUsed: [{ id: 's', count: 1 }],
  ...{
    length: null,
    cost: 7,
    bound: 7,
    proven: true,
    density: 8400 / 60000,
    unplaced: [],
    seconds: 0,
    findings: [],
  },
};
const codes = (change: Partial<NestPlan>) => checkNest(job, { ...plan, ...change }).map(({ code }) => code);
const laid = (...placements: readonly NestPlacement[]) => codes({ placements });

describe('checkNest', () => {
  test('passes a part within the hole of another, exactly the gap from its edge', () => {
    expect(codes({})).toEqual([]);
    expect(laid(at('frame', 10, 10), at('plug', 35, 35))).toEqual([]);
    expect(laid(at('frame', 10, 10), at('plug', 75, 35, 90))).toEqual([]);
  });

  test('finds a gap too small by a hundredth of a millimetre, and says how wide it is', () => {
    expect(laid(at('frame', 10, 10), at('plug', 34.99, 40))).toEqual(['nest-gap']);
    const [fault] = checkNest(job, { ...plan, placements: [at('frame', 10, 10), at('plug', 34.99, 40)] });
    expect(fault?.message).toContain('lies 4.99 mm, not 5 mm, from');
  });

  test('finds a part that reaches over a hole into the material', () => {
    expect(laid(at('frame', 10, 10), at('plug', 15, 40))).toEqual(['nest-gap']);
    const [fault] = checkNest(job, { ...plan, placements: [at('frame', 10, 10), at('plug', 15, 40)] });
    expect(fault?.message).toContain('overlaps');
  });

  test('finds two parts in exactly one place', () => {
    const twins: NestJob = { ...job, parts: [rectangle('a', 50, 50, { count: 2 })] };
    const doubled = checkNest(twins, {
      ...plan,
      placements: [at('a', 20, 20), at('a', 20, 20)],
      density: 5000 / 60000,
    });
    expect(doubled.map(({ code }) => code)).toEqual(['nest-gap']);
  });

  test('finds a forbidden angle, a part over the margin and one too near a keep-out', () => {
    expect(laid(at('frame', 10, 10), at('plug', 85, 80, 180))).toEqual(['nest-angle-forbidden']);
    expect(laid(at('frame', 9.9, 10), at('plug', 34.9, 40))).toEqual(['nest-over-edge']);
    expect(laid(at('frame', 10, 10), at('plug', 198, 150))).toEqual(['nest-keep-out']);
    expect(laid(at('frame', 10, 10), at('plug', 195, 150))).toEqual([]);
  });

  test('finds wrong counts, sheets, costs, bounds and densities', () => {
    expect(laid(at('frame', 10, 10))).toEqual(['nest-count', 'nest-density']);
    expect(laid(at('frame', 10, 10), { ...at('plug', 35, 40), sheet: 1 })).toContain('nest-sheet-unknown');
    expect(laid(at('frame', 10, 10), at('peg', 35, 40))).toContain('nest-part-unknown');
    expect(codes({ cost: 6 })).toContain('nest-cost');
    expect(codes({ bound: 7.1 })).toContain('nest-bound');
    expect(codes({ bound: null })).toContain('nest-bound');
    expect(codes({ bound: 3 })).toContain('nest-proven');
    expect(codes({ density: 0.15 })).toContain('nest-density');
    expect(codes({ length: 120 })).toContain('nest-length');
    expect(codes({ stockUsed: [{ id: 's', count: 2 }] })).toContain('nest-stock-count');
    expect(codes({ sheets: [{ stock: 's' }, { stock: 's' }] })).toContain('nest-stock-short');
    expect(codes({ sheets: [{ stock: 'x' }] })).toContain('nest-stock-unknown');
  });

  test('a strip ends where its length says', () => {
    const strip: NestJob = { stock: [{ strip: 100 }], parts: [rectangle('a', 80, 60)] };
    const answer = planOf(strip);
    expect(checkNest(strip, answer)).toEqual([]);
    const short = { ...answer, length: 79, cost: 79, bound: 79, density: 4800 / 7900 };
    expect(checkNest(strip, short).map(({ code }) => code)).toEqual(['nest-over-edge']);
  });

  test('always: a plan with one part shifted onto another, or turned by a forbidden angle, is caught', () => {
    fc.assert(
      fc.property(randomSheetJob, fc.nat(1000), (random, pick) => {
        const sound = planOf(random, 40);
        const [first, second] = [sound.placements[0], sound.placements[1]];
        if (!first || !second || first.sheet !== second.sheet) return;
        const shifted = sound.placements.map((each, i) => (i === 1 ? { ...first, id: each.id } : each));
        if (first.id === second.id)
          expect(checkNest(random, { ...sound, placements: shifted }).map(({ code }) => code)).toContain(
            'nest-gap',
          );
        const turned = sound.placements.map((each, i) =>
          i === pick % sound.placements.length ? { ...each, angle: each.angle + 45.5 } : each,
        );
        expect(checkNest(random, { ...sound, placements: turned }).map(({ code }) => code)).toContain(
          'nest-angle-forbidden',
        );
      }),
      { numRuns: 40 },
    );
  });

  test('the worked example of the contract passes, and not with a gap of 9', () => {
    const answer = planOf(contractJob, 50);
    expect(checkNest(contractJob, answer)).toEqual([]);
    const [first, second] = answer.placements;
    expect(first && second && Math.abs(second.y - first.y) + Math.abs(second.x - first.x) > 0).toBe(true);
    expect(checkNest({ ...contractJob, gap: 9 }, answer).map(({ code }) => code)).toContain('nest-gap');
  });
});
