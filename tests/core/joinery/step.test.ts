import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineArea, placePoint } from '#core/geometry';
import type { StepParameters } from '#core/joinery';
import { buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, occupiesDeep } from '../../support/joinery-solid.ts';

const build = (parameters: Partial<StepParameters> = {}) =>
  buildKind('step', { totalRise: 1180, materials: { sides: 'ply18', treads: 'oak' }, ...parameters });

// Every value as printed in the trade rulebook's calculated example (joinery B13): rise 1180, box one riser high, 420 wide,
// 260 deep, T 18, overhang 15, sole slope 1.5 degrees across.
describe('the worked step', () => {
  const built = build({ soleSlopeDegrees: 1.5 });
  test.each([
    ['n', 5, 9],
    ['riser', 236.0, 9],
    ['slope', 54.2, 1],
    ['side_h', 218.0, 9],
    ['side_d', 245, 9],
    ['inner_W', 354.0, 9],
    ['top_tread_L', 420.0, 9],
    ['riser_board_L', 366.0, 9],
    ['foot_diff', 10.21, 2],
    ['side_cut_h', 233.2, 1],
  ])('%s is %d', (name, value, digits) => {
    expect(worked(built, name)).toBeCloseTo(value, digits);
  });
  test('sides are a mirrored pair, the one on the lower foot longer, both cut alike', () => {
    const [left, right] = [partOf(built, 1), partOf(built, 2)];
    expect([left.hand, right.hand]).toEqual(['left', 'right']);
    expect(right.finished.length - left.finished.length).toBeCloseTo(10.21, 2);
    expect(left.cut.length).toBe(right.cut.length);
  });
  test('the kick is as high as its lower end stands above the sole, no more', () => {
    const kick = built.parts.find(({ name }) => name === 'Kick');
    // its end is 12 (18 of side less 6 of housing) inside the outer face of the lower side: 60 + 10.21 - 12 tan 1.5° = 69.90
    expect(kick?.finished.width).toBeCloseTo(69.9, 2);
    expect(Math.max(...(kick?.outline ?? []).map(({ y }) => y))).toBeCloseTo(kick?.finished.width ?? 0, 9);
  });
  test('has the parts of the rulebook', () => {
    expect(built.parts.map(({ name }) => name)).toEqual([
      'Side, left',
      'Side, right',
      'Top tread',
      'Riser 1',
      'Kick',
    ]);
  });
});

describe('a flight', () => {
  const built = build({ form: 'flight', treadDepth: 160 });
  test('has one tread less than risers, all alike', () => {
    expect(partOf(built, 3)).toMatchObject({ name: 'Tread', quantity: 4 });
    expect(partOf(built, 3).placements.map(({ origin }) => origin.y)).toEqual([236, 472, 708, 944]);
  });
  test('its strings have level feet, plumb tops, and housings as large as a tread', () => {
    const string = partOf(built, 2);
    const at = string.placements[0];
    if (!at) throw new Error('not placed');
    const points = string.outline.map((p) => placePoint(at, { ...p, z: 0 }));
    expect(points.filter(({ y }) => Math.abs(y) < 1e-6)).toHaveLength(2);
    const back = Math.min(...points.map(({ z }) => z));
    expect(-back).toBeCloseTo(worked(built, 'run'), 6);
    expect(points.filter(({ z }) => Math.abs(z - back) < 1e-6)).toHaveLength(2);
    for (const one of string.machining) {
      if (one.kind !== 'prism') throw new Error('not a housing');
      // a housing is 0.15 wider than what stands in it (joinery C7: 0.1 to 0.2)
      expect(outlineArea(one.outline)).toBeCloseTo(160 * 18.15, 6);
    }
  });
  test('every tread stands 6 in both strings', () => {
    for (const at of partOf(built, 3).placements) {
      const { x } = at.origin;
      expect(x).toBe(12);
      expect(x + partOf(built, 3).finished.length).toBe(420 - 12);
    }
  });
});

describe('what stands against it is said', () => {
  test.each<[string, Partial<StepParameters>]>([
    ['box-higher-than-way', { totalRise: 240, boxRisers: 2 }],
    ['kick-takes-riser', { kickHeight: 210 }],
    ['kick-takes-depth', { kickDepth: 240 }],
    ['flight-of-one', { form: 'flight', totalRise: 200 }],
    ['riser-dangerous', { totalRise: 450, mostRiser: 460 }],
    ['step-impossible', { width: 60 }],
  ])('%s', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts).toEqual([]);
  });
  test.each<[string, Partial<StepParameters>]>([
    ['riser-unusual', { totalRise: 340 }],
    ['slope-unusual', { going: 250 }],
    ['tread-shallow', { form: 'flight', treadDepth: 130 }],
    ['step-narrow', { width: 300 }],
    ['no-kick-space', { kickHeight: 0 }],
    ['step-heavy', { form: 'flight' }],
    ['step-does-not-pass', { between: 424 }],
    ['solid-too-wide', { materials: { sides: 'oak', treads: 'oak' } }],
  ])('and %s leaves it built', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts.length).toBeGreaterThan(2);
  });
  test('with 6 of play it passes', () => {
    expect(codesOf(build({ between: 426 }))).not.toContain('step-does-not-pass');
  });
});

const sensible = fc.record({
  form: fc.constantFrom('box' as const, 'flight' as const),
  totalRise: fc.integer({ min: 500, max: 1400 }),
  mostRiser: fc.integer({ min: 200, max: 300 }),
  going: fc.integer({ min: 150, max: 250 }),
  width: fc.integer({ min: 350, max: 700 }),
  treadDepth: fc.integer({ min: 180, max: 330 }),
  boxRisers: fc.integer({ min: 1, max: 3 }),
  overhang: fc.integer({ min: 0, max: 25 }),
  kickHeight: fc.constantFrom(0, 60, 80),
  kickDepth: fc.integer({ min: 20, max: 50 }),
  soleSlopeDegrees: fc.constantFrom(0, 1.5, 4),
  fallsTo: fc.constantFrom('left' as const, 'right' as const),
});

describe('always:', () => {
  test('sound and worked out', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length > 0) expectWorking(built);
      }),
      { numRuns: 150 },
    );
  });
  test('no two copies of parts are in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const { min, max } = built.envelope;
        const copies = built.parts.flatMap((part) =>
          part.placements.map((at) => ({ ...part, placements: [at] })),
        );
        for (const point of spreadPoints(min, max, 500))
          expect(
            copies.filter((copy) => occupiesDeep(copy, point)).map(({ name }) => name).length,
          ).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });
  test('every tread is a whole number of risers up and all its housed ends meet their bottoms', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const uprights = built.parts.filter(({ name }) => /^(Side|String)/.test(name));
        for (const part of built.parts.filter(({ name }) => /tread/i.test(name))) {
          for (const at of part.placements) {
            const risers = at.origin.y / worked(built, 'riser');
            expect(risers).toBeCloseTo(Math.round(risers), 9);
            if (part.name === 'Top tread') continue;
            // just beyond the end of the tread, in its middle, there is the wood of the side
            const { length, width, thickness } = part.finished;
            for (const x of [-0.3, length + 0.3]) {
              const beyond = placePoint(at, { x, y: width * 0.45, z: thickness / 2 });
              expect(uprights.some((side) => occupies(side, beyond))).toBe(true);
            }
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
