import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustSurvey, openingChecklist } from '#core/measuring';
import type { OpeningKey, Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { exactValue, readOpening, usualSigma } from './openings.ts';
import type { Corners } from './openings.ts';

const keys = openingChecklist.map(({ key }) => key);
const seenFrom = 'from the cockpit, looking aft';

/** Openings as boats have them: 300 to 1500 wide, 300 to 2200 high, each corner up to 60 mm out of square. */
const openings: fc.Arbitrary<Corners> = fc
  .record({
    width: fc.integer({ min: 300, max: 1500 }),
    height: fc.integer({ min: 300, max: 2200 }),
    off: fc.array(fc.integer({ min: -600, max: 600 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ width, height, off: [a = 0, b = 0, c = 0, d = 0] }) => ({
    BL: { x: 0, y: 0 },
    BR: { x: width, y: 0 },
    TR: { x: width + a / 10, y: height + b / 10 },
    TL: { x: c / 10, y: height + d / 10 },
  }));

const tilts = fc.integer({ min: -80, max: 80 }).map((thousandths) => thousandths / 1000);

function exactReadings(
  corners: Corners,
  tilt: number,
  chosen: readonly OpeningKey[] = keys,
): readonly Reading[] {
  return readOpening(Object.fromEntries(chosen.map((key) => [key, exactValue(key, corners, tilt)])));
}

describe('openings', () => {
  test('always: exact readings give back the corners and the tilt, and nobody is suspected', () => {
    fc.assert(
      fc.property(openings, tilts, (corners, tilt) => {
        const { adjustment, shape } = adjustSurvey({ seenFrom, readings: exactReadings(corners, tilt) });
        for (const [name, { x, y }] of Object.entries(corners)) {
          expect(Math.abs((shape?.points[name]?.x ?? NaN) - x)).toBeLessThan(1e-6);
          expect(Math.abs((shape?.points[name]?.y ?? NaN) - y)).toBeLessThan(1e-6);
        }
        expect(Math.abs((shape?.tilt ?? NaN) - tilt)).toBeLessThan(1e-8);
        expect(adjustment.chi2).toBeLessThan(1e-9);
        expect(adjustment.suspects).toEqual([]);
        expect(adjustment.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test('always: six exact distances are enough for the corners', () => {
    fc.assert(
      fc.property(openings, (corners) => {
        const readings = exactReadings(corners, 0, ['wb', 'wt', 'hl', 'hr', 'd1', 'd2']);
        const { shape } = adjustSurvey({ seenFrom, readings });
        for (const [name, { x, y }] of Object.entries(corners)) {
          expect(Math.abs((shape?.points[name]?.x ?? NaN) - x)).toBeLessThan(1e-5);
          expect(Math.abs((shape?.points[name]?.y ?? NaN) - y)).toBeLessThan(1e-5);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('always: redundancy sums to the degrees of freedom, and no residual exceeds its reading’s share', () => {
    fc.assert(
      fc.property(openings, fc.subarray(keys, { minLength: 1 }), fc.integer(), (corners, chosen, seed) => {
        const random = makeRandom(seed);
        const readings = exactReadings(corners, 0.01, chosen).map((reading) => ({
          ...reading,
          value: reading.value + usualSigma(reading.id as OpeningKey) * random.normal(),
        }));
        const { adjustment } = adjustSurvey({ seenFrom, readings });
        const sum = adjustment.readings.reduce((total, { redundancy }) => total + redundancy, 0);
        expect(Math.abs(sum - adjustment.dof)).toBeLessThan(1e-6);
        for (const { redundancy } of adjustment.readings) {
          expect(redundancy).toBeGreaterThanOrEqual(0);
          expect(redundancy).toBeLessThanOrEqual(1);
        }
        expect(JSON.stringify(adjustment)).not.toMatch(/NaN|Infinity/);
      }),
      { numRuns: 100 },
    );
  });

  test('always: the order of the readings changes nothing but where the coordinates begin', () => {
    fc.assert(
      fc.property(
        openings,
        fc.integer(),
        fc.shuffledSubarray(keys, { minLength: 12 }),
        (corners, seed, order) => {
          const random = makeRandom(seed);
          const noise = new Map(keys.map((key) => [key, usualSigma(key) * random.normal()]));
          const readings = exactReadings(corners, 0.02).map((reading) => ({
            ...reading,
            value: reading.value + (noise.get(reading.id as OpeningKey) ?? 0),
          }));
          const shuffled = order.flatMap((key) => readings.filter(({ id }) => id === key));
          const [first, second] = [readings, shuffled].map((list) =>
            adjustSurvey({ seenFrom, readings: list }),
          );
          if (!first || !second) throw new Error('nothing adjusted');
          expect(Math.abs(first.adjustment.chi2 - second.adjustment.chi2)).toBeLessThan(1e-6);
          for (const name of Object.keys(corners)) {
            const [p, q] = [first.shape?.points[name], second.shape?.points[name]];
            expect(Math.hypot((p?.x ?? NaN) - (q?.x ?? 0), (p?.y ?? NaN) - (q?.y ?? 0))).toBeLessThan(1e-4);
          }
          for (const { id, residual } of first.adjustment.readings) {
            const other = second.adjustment.readings.find((reading) => reading.id === id);
            expect(Math.abs((other?.residual ?? NaN) - residual)).toBeLessThan(1e-4);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('always: ten times the size and sigmas gives ten times the corners', () => {
    fc.assert(
      fc.property(openings, fc.integer(), (corners, seed) => {
        const random = makeRandom(seed);
        const readings = exactReadings(corners, 0).map((r) => ({ ...r, value: r.value + random.normal() }));
        const large = readings.map((r) => ({ ...r, value: 10 * r.value, sigma: 10 * (r.sigma ?? 1) }));
        const [a, b] = [readings, large].map((list) => adjustSurvey({ seenFrom, readings: list }));
        expect(Math.abs((a?.adjustment.chi2 ?? NaN) - (b?.adjustment.chi2 ?? 0))).toBeLessThan(1e-6);
        expect(
          Math.abs(10 * (a?.shape?.points['TR']?.y ?? NaN) - (b?.shape?.points['TR']?.y ?? 0)),
        ).toBeLessThan(1e-4);
      }),
      { numRuns: 30 },
    );
  });
});

describe('triangles and fans of named points', () => {
  test('always: exact distances between all pairs give back every distance', () => {
    const point = fc.record({ x: fc.integer({ min: 0, max: 2000 }), y: fc.integer({ min: 0, max: 2000 }) });
    fc.assert(
      fc.property(fc.array(point, { minLength: 4, maxLength: 6 }), (points) => {
        const pairs = points.flatMap((a, i) =>
          points.slice(i + 1).map((b, k) => [i, i + 1 + k, a, b] as const),
        );
        const area = (a: number, b: number, c: number) => {
          const [p, q, r] = [points[a], points[b], points[c]];
          return p && q && r ? Math.abs((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)) : 0;
        };
        const triples = points.flatMap((_, i) =>
          points.flatMap((__, j) => points.map((___, k) => [i, j, k] as const)),
        );
        fc.pre(triples.every(([i, j, k]) => !(i < j && j < k) || area(i, j, k) > 4e4));
        const readings = pairs.map(([i, j, a, b]): Reading => ({
          id: `${i}-${j}`,
          kind: 'distance',
          from: `P${i}`,
          to: `P${j}`,
          value: Math.hypot(a.x - b.x, a.y - b.y),
          sigma: 0.5,
        }));
        const { adjustment } = adjustSurvey({ seenFrom, readings });
        expect(adjustment.chi2).toBeLessThan(1e-9);
        expect(adjustment.dof).toBe(pairs.length - 2 * points.length + 3);
        expect(adjustment.suspects).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a slip among the twelve', () => {
  // joinery A3: in simulation a 10 mm slip in any tape reading was detected and named in at least 99 % of trials.
  test('of 10 mm in a tape reading is found, and named alone, in at least 99 of 100 seeded trials', () => {
    const random = makeRandom(20);
    const corners: Corners = {
      BL: { x: 0, y: 0 },
      BR: { x: 641, y: 0 },
      TR: { x: 648.7, y: 1751.9 },
      TL: { x: 13.8, y: 1745.8 },
    };
    const tapes = keys.filter((key) => usualSigma(key) < 1);
    const trials = 400;
    let [found, named, first] = [0, 0, 0];
    for (let trial = 0; trial < trials; trial += 1) {
      const guilty = tapes[trial % tapes.length];
      const slip = random.next() < 0.5 ? -10 : 10;
      const readings = exactReadings(corners, 0.005).map((reading) => {
        const noise = usualSigma(reading.id as OpeningKey) * random.normal();
        return { ...reading, value: reading.value + noise + (reading.id === guilty ? slip : 0) };
      });
      const { suspects } = adjustSurvey({ seenFrom, readings }).adjustment;
      if (suspects.length > 0) found += 1;
      if (suspects[0]?.id === guilty) first += 1;
      if (suspects.length === 1 && suspects[0]?.id === guilty) named += 1;
    }
    expect(found / trials).toBeGreaterThanOrEqual(0.99);
    expect(first / trials).toBeGreaterThanOrEqual(0.99);
    expect(named / trials).toBeGreaterThanOrEqual(0.99);
  });

  // joinery A3: 55 % at a sigma of 0.5, 20 % at 0.7; 400 trials are good to 7 in a hundred (2.8 sigma).
  test.each([
    [0.5, 0.55],
    [0.7, 0.2],
  ])(
    'of 10 mm in a width of a tall narrow opening is found by six readings only now and then (sigma %d)',
    (sigma, share) => {
      const random = makeRandom(9);
      const corners: Corners = {
        BL: { x: 0, y: 0 },
        BR: { x: 640, y: 0 },
        TR: { x: 640, y: 1750 },
        TL: { x: 0, y: 1750 },
      };
      let found = 0;
      for (let trial = 0; trial < 400; trial += 1) {
        const readings = exactReadings(corners, 0, ['wb', 'wt', 'hl', 'hr', 'd1', 'd2']).map((reading) => {
          const value = reading.value + sigma * random.normal() + (reading.id === 'wb' ? 10 : 0);
          return { ...reading, sigma, value };
        });
        const { suspects } = adjustSurvey({ seenFrom, readings }).adjustment;
        if (suspects.length > 0) found += 1;
        expect(suspects.length).not.toBe(1);
      }
      expect(Math.abs(found / 400 - share)).toBeLessThan(0.07);
    },
  );

  test('false alarms among honest readings stay near one in a hundred sets', () => {
    // Twelve tests at 0.1 % each; at most 1.2 % of sets, 3 % allowed for the luck of 400 trials.
    const random = makeRandom(5);
    const corners: Corners = {
      BL: { x: 0, y: 0 },
      BR: { x: 700, y: 0 },
      TR: { x: 690, y: 1200 },
      TL: { x: -20, y: 1190 },
    };
    let alarms = 0;
    for (let trial = 0; trial < 400; trial += 1) {
      const readings = exactReadings(corners, 0).map((reading) => ({
        ...reading,
        value: reading.value + usualSigma(reading.id as OpeningKey) * random.normal(),
      }));
      if (adjustSurvey({ seenFrom, readings }).adjustment.suspects.length > 0) alarms += 1;
    }
    expect(alarms / 400).toBeLessThan(0.03);
  });
});
