import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point, Shape } from '#core/geometry';
import {
  adjustSurvey,
  adviseEdges,
  bestExtraReading,
  covarianceOfForms,
  formOfSize,
  sigmaOfForm,
  sigmaOfSize,
  spanUncertainty,
} from '#core/measuring';
import type { Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { pick, readOpening, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
function shapeOf(readings: readonly Reading[]): Shape {
  const { shape } = adjustSurvey({ seenFrom, readings });
  if (!shape) throw new Error('no shape');
  return shape;
}
const twelve = readOpening(workedCase);
const at = (points: Readonly<Record<string, Point>>, name: string) => points[name] ?? { x: NaN, y: NaN };
const topWidth = (points: Readonly<Record<string, Point>>) => {
  const [a, b] = [at(points, 'TL'), at(points, 'TR')];
  return Math.hypot(b.x - a.x, b.y - a.y);
};

describe('the uncertainty of derived sizes', () => {
  const shape = shapeOf(twelve);

  test('of a difference of coordinates is that of the span between', () => {
    const form = { 'TR.x': 1, 'TL.x': -1 };
    expect(2 * sigmaOfForm(shape, form)).toBeCloseTo(
      spanUncertainty(shape, ['TL', 'TR'], { x: 1, y: 0 }),
      12,
    );
    expect(sigmaOfForm(shape, { 'XX.x': 1 })).toBe(0);
  });

  test('of a reading after the adjustment is sigma times the root of one less its redundancy', () => {
    // Q of the adjusted reading = sigma² - Qv (joinery A4)
    const told = adjustSurvey({ seenFrom, readings: twelve }).adjustment.readings.find(
      ({ id }) => id === 'wt',
    );
    const expected = (told?.sigma ?? NaN) * Math.sqrt(1 - (told?.redundancy ?? NaN));
    expect(sigmaOfSize(shape, topWidth)).toBeCloseTo(expected, 6);
    expect(Object.keys(formOfSize(shape, topWidth)).sort()).toEqual(['TL.x', 'TL.y', 'TR.x', 'TR.y']);
  });

  test('of sizes from one survey err together, and their sum is worked out with that', () => {
    const [left, right] = [{ 'TL.y': 1 }, { 'TR.y': 1 }];
    const [[a = 0, b = 0] = [], [, c = 0] = []] = covarianceOfForms(shape, [left, right]);
    expect(b).not.toBe(0);
    expect(sigmaOfForm(shape, { 'TL.y': 1, 'TR.y': 1 }) ** 2).toBeCloseTo(a + 2 * b + c, 12);
  });

  test('is what a thousand surveys of the same opening scatter by', () => {
    const random = makeRandom(8);
    const exact = adjustSurvey({ seenFrom, readings: twelve }).adjustment.readings;
    const area = (points: Readonly<Record<string, Point>>) => {
      const [p, q, r] = ['BR', 'TR', 'TL'].map((name) => at(points, name));
      return (
        ((p?.x ?? 0) * (q?.y ?? 0) -
          (q?.x ?? 0) * (p?.y ?? 0) +
          (q?.x ?? 0) * (r?.y ?? 0) -
          (r?.x ?? 0) * (q?.y ?? 0)) /
        2
      );
    };
    const sizes = [topWidth, area].map((size) => ({
      size,
      expected: sigmaOfSize(shape, size),
      drawn: [] as number[],
    }));
    for (let trial = 0; trial < 1000; trial += 1) {
      const readings = twelve.map((reading) => {
        const told = exact.find(({ id }) => id === reading.id);
        return { ...reading, value: (told?.adjusted ?? NaN) + (told?.sigma ?? NaN) * random.normal() };
      });
      const { points } = shapeOf(readings);
      for (const each of sizes) each.drawn.push(each.size(points));
    }
    for (const { drawn, expected } of sizes) {
      const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
      const sigma = Math.sqrt(
        drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (drawn.length - 1),
      );
      expect(sigma / expected).toBeGreaterThan(0.92); // 1000 trials know sigma to 2.2 %
      expect(sigma / expected).toBeLessThan(1.08);
    }
  });
});

describe('the one reading more that raises the chance of fit', () => {
  const plan = { gap: 2, limits: { least: 1, most: 3 } };
  const product = (shape: Shape) => adviseEdges(shape, plan).reduce((all, { chance }) => all * chance, 1);
  const loose = readOpening(pick(['wb', 'hl', 'hr', 'd1', 'd2'])).map((r) => ({
    ...r,
    sigma: r.id === 'd2' ? 3 : 0.7,
  }));

  test('is the weak diagonal once more, where that one is known badly', () => {
    const best = bestExtraReading(shapeOf(loose), loose, plan);
    expect(best?.reading).toMatchObject({ kind: 'distance' });
    expect(best?.then).toBeGreaterThan((best?.chance ?? 1) + 0.01);
    expect(best?.words).toMatch(
      /^Measure the .+: the chance that all edges fit as planned rises from \d+ % to \d+ %, most of it at the .+\.$/,
    );
  });

  test('always: brings what a new adjustment with it brings, and no other distance or width brings more', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 3, max: 30 }), { minLength: 5, maxLength: 5 }), (tenths) => {
        const readings = loose.map((r, k) => ({ ...r, sigma: (tenths[k] ?? 5) / 10 }));
        const shape = shapeOf(readings);
        const best = bestExtraReading(shape, readings, plan);
        if (!best) return;
        expect(best.chance).toBeCloseTo(product(shape), 9);
        const gained = (reading: Reading) => product(shapeOf([...readings, { ...reading, id: 'extra' }]));
        expect(gained(best.reading)).toBeCloseTo(best.then, 4);
        for (const [from, to] of [
          ['BL', 'TR'],
          ['BR', 'TL'],
          ['TL', 'TR'],
          ['BL', 'BR'],
        ] as const) {
          const [a, b] = [at(shape.points, from), at(shape.points, to)];
          const value = Math.hypot(b.x - a.x, b.y - a.y);
          const before = readings.find((r) => r.kind === 'distance' && r.from === from && r.to === to);
          const sigma = before?.sigma ?? (value <= 1000 ? 0.5 : 0.7); // joinery A1, M1
          expect(gained({ id: 'x', kind: 'distance', from, to, value, sigma })).toBeLessThan(
            best.then + 1e-4,
          );
        }
      }),
      { numRuns: 25 },
    );
  });

  test('is none where every edge fits anyway, and none can help where the gap is hopeless', () => {
    expect(bestExtraReading(shapeOf(twelve), twelve, { gap: 9, limits: { least: 0, most: 18 } })).toBeNull();
    expect(bestExtraReading(shapeOf(twelve), twelve, { gap: 9, limits: { least: 30, most: 40 } })).toBeNull();
  });
});
