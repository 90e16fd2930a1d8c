import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HatchSurroundParameters } from '#core/joinery';
import { areaOf, buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { contextFor, curlewOpening, openingShape } from '../../support/joinery-samples.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const depths = [38, 38.5, 39, 39.5, 40, 39, 38.5, 38];
const build = (parameters: Partial<HatchSurroundParameters> = {}) =>
  buildKind('hatch-surround', { width: 520, height: 520, depths, materials: { ring: 'oak' }, ...parameters });

// Every value as printed in the trade rulebook's calculated example (joinery B16): aperture 520 × 520, r 70, reveal 5, ring 45.
describe('the worked surround', () => {
  test.each([
    ['seg_W', 50.71],
    ['seg_L', 91.84],
    ['straight_A', 380],
    ['ring_W', 620],
    ['waste_share', 0.75],
    ['Ri', 75],
    ['Ro', 120],
  ])('%s is %d', (name, value) => {
    expect(worked(build(), name)).toBeCloseTo(value, 2);
  });
  test('the ring is 45 wide', () => {
    expect((worked(build(), 'ring_W') - 530) / 2).toBe(45);
  });
  test('has four straights, eight segments and twelve tenons', () => {
    expect(
      build()
        .parts.slice(0, 4)
        .map((part) => [part.name, part.quantity]),
    ).toEqual([
      ['Straight, bottom and top', 2],
      ['Straight, left and right', 2],
      ['Corner segment', 8],
      ['Loose tenon', 12],
    ]);
  });
  test('the lining is as deep as the deepest place and 2 more', () => {
    expect(partOf(build(), 6).finished.width).toBe(42);
  });
});

test('in one piece and in segments the ring has the same area', () => {
  const whole = build({ form: 'one-piece', lining: 'none', materials: { ring: 'ply18' } });
  const built = build({ lining: 'none' });
  expect(areaOf(whole.parts)).toBeCloseTo(worked(whole, 'ring_area'), 4);
  expect(areaOf(built.parts.slice(0, 3))).toBeCloseTo(worked(whole, 'ring_area'), 4);
});

test('an aperture out of square is taken at its narrowest', () => {
  const shape = openingShape(curlewOpening);
  const built = buildKind(
    'hatch-surround',
    { lining: 'none', materials: { ring: 'mahogany' } },
    contextFor(shape),
  );
  expect(worked(built, 'A')).toBe(641 - 14);
  expect(worked(built, 'B')).toBe(1746);
});

describe('what forbids a surround is said', () => {
  test.each<[string, Partial<HatchSurroundParameters>]>([
    ['radius-too-large', { cornerRadius: 265 }],
    ['segment-short-grain', { segments: 1 }],
    ['tenon-no-room', { ringWidth: 25 }],
    ['tenon-no-room', { segments: 6 }],
    ['depth-missing', { depths: [] }],
    ['lining-does-not-bend', { cornerRadius: 20, liningThickness: 12 }],
    ['aperture-missing', { width: 0 }],
  ])('%s', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts).toEqual([]);
  });
  test.each<[string, Partial<HatchSurroundParameters>]>([
    ['ring-wastes-blank', { form: 'one-piece', materials: { ring: 'ply18' } }],
    ['ring-segments-of-sheet', { materials: { ring: 'ply18' } }],
    ['depth-varies', { depths: [38, 41, 40, 40, 40, 40, 40, 40] }],
    ['depth-at-few-places', { depths: [40, 40] }],
    ['wall-too-thin', { thickness: 12 }],
    ['lining-plies-thin', { liningThickness: 9 }],
  ])('and %s leaves it built', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts.length).toBeGreaterThan(0);
  });
});

const sensible = fc.record({
  width: fc.integer({ min: 350, max: 900 }),
  height: fc.integer({ min: 350, max: 900 }),
  cornerRadius: fc.integer({ min: 40, max: 160 }),
  segments: fc.integer({ min: 2, max: 3 }),
  ringWidth: fc.integer({ min: 40, max: 90 }),
  thickness: fc.integer({ min: 15, max: 25 }),
  reveal: fc.integer({ min: 0, max: 10 }),
  tenonDepth: fc.integer({ min: 8, max: 14 }),
  liningThickness: fc.integer({ min: 5, max: 12 }),
  form: fc.constantFrom('segments' as const, 'one-piece' as const),
});

describe('always:', () => {
  test('sound, worked out, and no two parts in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, materials: { ring: 'ply18', lining: 'oak' } });
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 300))).toEqual([]);
        const ring = built.parts.filter(({ name }) => /Ring|Straight|segment/.test(name));
        expect(areaOf(ring)).toBeCloseTo(worked(built, 'ring_area'), 3);
      }),
      { numRuns: 80 },
    );
  });
  test('every point of the ring at its face is in one piece of it, no other point in any', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, form: 'segments', lining: 'none' });
        if (built.parts.length === 0) return;
        const { min, max } = built.envelope;
        const [A, B, r] = [parameters.width, parameters.height, parameters.cornerRadius];
        for (const point of spreadPoints(min, max, 250)) {
          const z = worked(built, 'T') - 0.5;
          // how far outside the aperture, its corners rounded
          const dx = Math.max(r - point.x, point.x - (A - r), 0);
          const dy = Math.max(r - point.y, point.y - (B - r), 0);
          const off =
            dx > 0 && dy > 0
              ? Math.hypot(dx, dy) - r
              : Math.max(-point.x, point.x - A, -point.y, point.y - B);
          const edges = [off - parameters.reveal, off - parameters.reveal - parameters.ringWidth];
          if (edges.some((edge) => Math.abs(edge) < 0.2)) continue;
          const inRing = (edges[0] ?? 0) > 0 && (edges[1] ?? 0) < 0;
          const count = built.parts.reduce(
            (sum, part) => sum + part.placements.filter((at) => occupies(part, { ...point, z }, at)).length,
            0,
          );
          expect(count).toBe(inRing ? 1 : 0);
        }
      }),
      { numRuns: 40 },
    );
  });
});
