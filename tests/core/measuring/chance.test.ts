import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adjustSurvey,
  adviseEdge,
  adviseEdges,
  chanceOfFit,
  edgeDeviation,
  edgeUncertainty,
  scribeAllowance,
  stackTolerances,
} from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { pick, readOpening, sixKeys, workedCase } from './openings.ts';

describe('the chance that a gap lies within limits', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1: P(1), P(1.96), P(2), P(3).
  test.each([
    [1, 0.6826894921],
    [1.96, 0.9500042097],
    [2, 0.9544997361],
    [3, 0.9973002039],
  ])('within %d sigma either way is that of the table', (z, printed) => {
    expect(chanceOfFit(5, 2, { least: 5 - 2 * z, most: 5 + 2 * z })).toBeCloseTo(printed, 9);
  });
  test('is one half at a limit, and nothing when the limits leave no room', () => {
    expect(chanceOfFit(5, 1, { least: 5, most: 1000 })).toBeCloseTo(0.5, 12);
    expect(chanceOfFit(5, 1, { least: 6, most: 4 })).toBe(0);
    expect(chanceOfFit(5, 1, { least: 5, most: Infinity })).toBeCloseTo(0.5, 12);
    expect(chanceOfFit(5, 1, { least: -Infinity, most: Infinity })).toBe(1);
  });
  test('is certain either way when the gap is known exactly', () => {
    expect(chanceOfFit(5, 0, { least: 5, most: 6 })).toBe(1);
    expect(chanceOfFit(4.9, 0, { least: 5, most: 6 })).toBe(0);
  });
  test('always: agrees with drawing the gap many times', () => {
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: -3, max: 20, noNaN: true }), (seed, gap) => {
        const random = makeRandom(seed);
        const sigma = 2.5;
        const draws = Array.from({ length: 4000 }, () => gap + sigma * random.normal());
        const share = draws.filter((drawn) => drawn >= 0 && drawn <= 18).length / draws.length;
        // Five of its own standard deviations at most.
        expect(Math.abs(share - chanceOfFit(gap, sigma, { least: 0, most: 18 }))).toBeLessThan(0.04);
      }),
      { numRuns: 30 },
    );
  });
});

describe('wood left to scribe', () => {
  test('is what strays, twice the uncertainty and 2, within 5 and 25 (joinery A11)', () => {
    expect(scribeAllowance(8, 2)).toBe(14);
    expect(scribeAllowance(0, 0.5)).toBe(5);
    expect(scribeAllowance(13.2, 2)).toBe(20);
    expect(scribeAllowance(19, 2)).toBe(25);
  });
  test('is not known beyond 25: a template comes first', () => {
    expect(scribeAllowance(19.1, 2)).toBeNull();
  });
  // Joinery B1, worked infill: 212, 221, 204 above the head, u = 2; the middle strays by 13 from the line of the ends.
  test('takes the deviation from the best straight line', () => {
    expect(edgeDeviation([0, 300, 600], [212, 221, 204])).toBeCloseTo(13, 9);
    expect(scribeAllowance(edgeDeviation([0, 300, 600], [212, 221, 204]), 2)).toBe(19);
    expect(edgeDeviation([0, 300], [5, 9])).toBe(0);
  });
});

describe('advice for an edge', () => {
  const limits = { least: 0, most: 18 };
  const edge = { name: 'head', gap: 5, deviation: 1, uncertainty: 2.6, limits };

  test('cut now when the gap is as good as sure', () => {
    const advice = adviseEdge(edge);
    expect(advice).toMatchObject({ kind: 'cut-now', allowance: 0 });
    expect(advice.chance).toBeGreaterThan(0.999);
    expect(advice.words).toBe('Cut the head now: 99 % that its gap lies between 0 and 18 mm.');
  });
  test('leave wood when it is not', () => {
    const advice = adviseEdge({ ...edge, gap: 1, deviation: 3, limits: { least: 0, most: 4 } });
    expect(advice).toMatchObject({ kind: 'scribe', allowance: 11 }); // 3 + 2 x 2.6 + 2, up
    // The edge may lie 0 to 1 further in, of a deviation of 1.3: 0 to 0.769 sigma, 27.9 % by the table.
    expect(advice.chance).toBeCloseTo(0.279, 3);
    expect(advice.words).toMatch(/^Leave 11 mm on the head to scribe: it is only 27 % that its gap/);
  });
  test('wait for the dry fit when the edge strays or is unknown too much to scribe', () => {
    const advice = adviseEdge({ ...edge, deviation: 30 });
    expect(advice).toMatchObject({ kind: 'dry-fit', allowance: null });
    expect(advice.words).toContain('Make a template first.');
  });
  test('a cover saves the scribing where it laps the widest gap, twice the uncertainty and 3 (joinery A11)', () => {
    const open = { ...edge, gap: 5, deviation: 4, limits: { least: 0, most: 6 } };
    const enough = 5 + 4 + 2 * 2.6 + 3;
    expect(adviseEdge(open).kind).toBe('scribe');
    expect(adviseEdge({ ...open, cover: enough - 0.01 }).kind).toBe('scribe');
    expect(adviseEdge({ ...open, cover: enough + 0.01 }).kind).toBe('cut-now');
    // A cover does not help a piece that is too large to go in.
    expect(adviseEdge({ ...open, gap: -4, cover: 40 }).kind).toBe('scribe');
  });

  test('follows what was measured: more readings, a better chance on every edge', () => {
    const shapeOf = (keys: Parameters<typeof pick>[0]) => {
      const { shape } = adjustSurvey({ seenFrom: 'from the saloon', readings: readOpening(pick(keys)) });
      if (!shape) throw new Error('no shape');
      return shape;
    };
    const plan = { gap: 2, limits: { least: 0, most: 4 } };
    const six = adviseEdges(shapeOf(sixKeys), plan);
    const all = shapeOf(Object.keys(workedCase) as (keyof typeof workedCase)[]);
    const twelve = adviseEdges(all, plan);
    expect(twelve.map(({ name }) => name)).toEqual(['sill', 'right jamb', 'head', 'left jamb']);
    twelve.forEach((advice, i) => {
      expect(advice.chance).toBeGreaterThanOrEqual(six[i]?.chance ?? NaN);
      const edgeOf = all.edges[i];
      if (!edgeOf) throw new Error('no edge');
      expect(advice.chance).toBeCloseTo(chanceOfFit(2, edgeUncertainty(all, edgeOf) / 2, plan.limits), 12);
    });
  });
});

// Joinery A12, the worked door gap: opening 1.0, door 0.5, two hinge settings 0.5, two films 0.3 on one line.
describe('tolerances together', () => {
  const gap = [
    { factor: 1, tolerance: 1 },
    { factor: 1, tolerance: 0.5 },
    { factor: 1, tolerance: 0.5 },
    { factor: 1, tolerance: 0.5 },
    { factor: 2, tolerance: 0.3 },
  ];
  test('are taken statistically from four terms on: 2.18, which leaves 3.82 of 6', () => {
    expect(stackTolerances(gap)).toBeCloseTo(2.18, 2);
    expect(2 * 3 - stackTolerances(gap)).toBeCloseTo(3.82, 2);
  });
  test('and at their worst below that', () => {
    expect(stackTolerances(gap.slice(0, 3))).toBe(2);
    expect(stackTolerances([{ factor: -2, tolerance: 0.4 }])).toBe(0.8);
    expect(stackTolerances([])).toBe(0);
  });
});
