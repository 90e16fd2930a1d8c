import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkNest, checkNestJob, solveNesting, startNestingRun } from '#core/nesting';
import type { Corner, NestJob, NestPart } from '#core/nesting';
import { planOf } from './examples.ts';

/** A wavy outline with dents, of so many corners. */
function wavy(id: string, size: number, corners: number): NestPart {
  const round = (share: number, count: number, from: number) =>
    Array.from({ length: count }, (_, i): Corner => {
      const angle = (2 * Math.PI * i) / count;
      const reach = share * size * (1 + 0.25 * Math.sin(3 * angle + from) + 0.1 * Math.sin(7 * angle));
      return [reach * Math.cos(angle), reach * Math.sin(angle)];
    });
  return { id, outline: round(1, corners, size), holes: [round(0.5, 90, size)], angles: [0, 90, 180, 270] };
}

const job = (gap: number): NestJob => ({
  gap,
  margin: 5,
  stock: [{ id: 's', length: 1220, width: 610, cost: 20 }],
  parts: Array.from({ length: 14 }, (_, k) => wavy(`w${k}`, 40 + 7 * k, 300)),
});

/** Leaps at the second time it is asked: most of the time asked for is then gone before the figures are made. */
function leapingClock(to: number): () => number {
  let asked = 0;
  return () => (asked++ === 0 ? 0 : to + asked / 100);
}

describe('outlines of many corners', () => {
  test.each([6, 0])('with a gap of %s mm are laid so that the true outlines keep it', (gap) => {
    const plan = planOf(job(gap), 400);
    expect(plan.unplaced).toEqual([]);
    expect(checkNest(job(gap), plan)).toEqual([]);
  });

  test.each([6, 0])('with a gap of %s mm are laid in a hurry too when time is short, and keep it', (gap) => {
    const plan = solveNesting(job(gap), { clock: leapingClock(900), seconds: 1 });
    expect(plan.unplaced).toEqual([]);
    expect(checkNest(job(gap), plan)).toEqual([]);
  });

  test('a run in a hurry goes on from what one with time has found', () => {
    const patient = startNestingRun(job(6), { clock: () => 0, work: 3000 });
    const heard = patient.work({});
    const hurried = startNestingRun(job(6), { clock: leapingClock(450), seconds: 1, seed: 2 });
    hurried.work({ heard });
    const plan = hurried.finish();
    expect(plan.cost).toBeLessThanOrEqual(patient.finish().cost);
    expect(checkNest(job(6), plan)).toEqual([]);
  });

  test('the bound of very many corners is no higher than that of the same parts with few', () => {
    const disc = (corners: number): NestJob => ({
      gap: 8,
      stock: [{ strip: 300 }],
      parts: Array.from({ length: 5 }, (_, k) => ({
        id: `d${k}`,
        outline: Array.from({ length: corners }, (__, i): Corner => {
          const angle = (2 * Math.PI * i) / corners;
          return [70 * Math.cos(angle), 70 * Math.sin(angle)];
        }),
      })),
    });
    const [few, many] = [planOf(disc(480), 20), planOf(disc(4800), 20)];
    // more corners are a larger disc, by 3e-5 of its area
    expect(many.bound).toBeLessThanOrEqual(few.bound! * 1.0001);
    expect(many.bound).toBeGreaterThan(few.bound! * 0.99);
  });
});

describe('an outline that crosses itself', () => {
  test('is found among 500 corners and told by its sides', () => {
    const outline = [...wavy('w', 100, 500).outline];
    [outline[300], outline[301]] = [outline[301]!, outline[300]!];
    const [fault] = checkNestJob({ ...job(0), parts: [{ id: 'w', outline }] });
    expect(fault?.message).toContain('at its sides 300 and 302');
  });

  test('always: is told from one that does not, as comparing all sides tells it', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(fc.uniqueArray(corner, { minLength: 4, maxLength: 7, selector: String }), (outline) => {
        const faults = checkNestJob({ ...job(0), parts: [{ id: 'w', outline }] });
        fc.pre(!faults.some(({ message }) => message.includes('encloses nothing')));
        expect(faults.length > 0).toBe(meetsItself(outline));
      }),
      { numRuns: 500 },
    );
  });
});

/** Every two sides compared, in whole numbers: whether any meet beside the corner that neighbours share. */
function meetsItself(outline: readonly Corner[]): boolean {
  const n = outline.length;
  const at = (k: number) => outline[k % n]!;
  const turn = (a: Corner, b: Corner, c: Corner) =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  const isBetween = (a: Corner, b: Corner, c: Corner) =>
    turn(a, b, c) === 0 &&
    Math.min(a[0], b[0]) <= c[0] &&
    c[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= c[1] &&
    c[1] <= Math.max(a[1], b[1]);
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (b === c && !isBetween(a, b, d) && !isBetween(c, d, a)) continue;
      if (a === d && !isBetween(a, b, c) && !isBetween(c, d, b)) continue;
      const isCrossing = turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b);
      const touches = isBetween(a, b, c) || isBetween(a, b, d) || isBetween(c, d, a) || isBetween(c, d, b);
      if (isCrossing || touches) return true;
    }
  return false;
}
