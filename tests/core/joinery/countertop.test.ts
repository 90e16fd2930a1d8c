import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arcBetween, flattenOutline, outlineArea, placePoint, sidesOf } from '#core/geometry';
import type { CountertopParameters } from '#core/joinery';
import { areaOf, buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { overlaps } from '../../support/joinery-solid.ts';

const materials = { top: 'ply18' };
const build = (parameters: Partial<CountertopParameters> = {}) =>
  buildKind('countertop', { width: 1180, depth: 540, materials, ...parameters });

// joinery B9: sink 396 × 346 with a flange of 420 × 370, 80 from the back of a top 1180 × 540
const sink = [600, 540 - 80 - 175, 396, 346, 420, 370];
const flush = { overhang: 0, wallGap: 0 };

describe('the worked example', () => {
  const shift = 540 / Math.tan((76 * Math.PI) / 180);
  const built = build({
    ...flush,
    corners: [0, 0, 1180, 0, 1180, 540, 0, 540].map((n, i) =>
      i === 0 || i === 2 || i === 4 ? n + shift : n,
    ),
    openSides: [1, 4],
    radii: [50, 0, 0, 0],
    cutouts: [600 + shift, ...sink.slice(1)],
  });
  test('comes out to its printed digits', () => {
    const lines: readonly (readonly [string, number, number])[] = [
      ['cut_w_1', 400, 9],
      ['cut_d_1', 350, 9],
      ['overlap_1', 10, 9],
      ['front_bridge_1', 110, 6],
    ];
    for (const [name, value, digits] of lines) expect(worked(built, name), name).toBeCloseTo(value, digits);
  });
  test('and so does the corner of 104 degrees with a radius of 50', () => {
    expect(worked(built, 'alpha_1')).toBeCloseTo(104, 9);
    expect(worked(built, 'tangent_1')).toBeCloseTo(39.06, 2);
    expect(worked(built, 'cut_back_1')).toBeCloseTo(13.45, 2);
    expect(worked(built, 'arc_1')).toBeCloseTo(66.32, 2);
    expect(worked(built, 'strip_max_1')).toBeCloseTo(0.83, 2);
  });
  test('its arcs are arcs of 50 and of 30 within the solid edge, in core and corner block', () => {
    const radiiOf = (number: number) =>
      sidesOf(partOf(built, number).outline).flatMap(
        ({ from, to, bulge }) => arcBetween(from, to, bulge)?.radius ?? [],
      );
    expect(radiiOf(1)).toHaveLength(1);
    expect(radiiOf(1)[0]).toBeCloseTo(30, 6);
    const block = built.parts.find(({ name }) => name.includes('corner'));
    const radii = radiiOf(Number(block?.id.slice(1))).sort((a, b) => a - b);
    expect(radii[0]).toBeCloseTo(30, 6);
    expect(radii[1]).toBeCloseTo(50, 6);
  });
  test('is sound and worked out', () => {
    expectSound(built);
    expectWorking(built);
    expectWords(built);
  });
});

describe('what a master would say is said', () => {
  test.each<[string, Partial<CountertopParameters>]>([
    ['bridge-too-narrow', { cutouts: [600, 520 - 175, 396, 346, 420, 370] }],
    ['cutouts-too-close', { cutouts: [300, 285, 396, 346, 420, 370, 730, 285, 396, 346, 420, 370] }],
    ['flange-too-narrow', { cutouts: [600, 285, 396, 346, 406, 356] }],
    ['cutout-corner-sharp', { cutouts: sink, cutoutRadius: 3 }],
    ['top-unsupported', {}],
    ['body-meets-support', { cutouts: sink, supports: [0, 400, 600, 1180] }],
    ['corner-at-hip-height', { openSides: [1, 2], radius: 20 }],
  ])('%s', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts.length).toBeGreaterThan(0);
    expectWords(built);
  });
  test.each<[string, Partial<CountertopParameters>]>([
    ['gaps-leave-nothing', { width: 15, depth: 15, overhang: 0, wallGap: 9 }],
    ['radius-too-large', { radii: [700, 0, 0, 0], lipping: 0 }],
    ['radius-needs-both-edges', { radii: [60, 0, 0, 0] }],
    ['side-unknown', { openSides: [7] }],
    ['list-incomplete', { cutouts: [1, 2, 3] }],
    ['cutout-outside', { cutouts: [100, 285, 396, 346, 420, 370] }],
    ['outline-missing', { width: 0 }],
  ])('%s forbids it', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts).toEqual([]);
    expectWords(built);
  });
  test('held every 450 it is not unsupported', () => {
    expect(codesOf(build({ supports: [0, 400, 800, 1178] }))).not.toContain('top-unsupported');
  });
});

const sensible: fc.Arbitrary<Partial<CountertopParameters>> = fc.record({
  width: fc.integer({ min: 500, max: 1800 }),
  depth: fc.integer({ min: 380, max: 700 }),
  overhang: fc.integer({ min: 0, max: 30 }),
  openSides: fc.constantFrom([1], [1, 2], [1, 4], [1, 2, 4], [1, 2, 3, 4], []),
  fiddleSides: fc.constantFrom([1], [1, 2], [0]),
  radius: fc.constantFrom(0, 25, 40, 80),
  lipping: fc.constantFrom(0, 8, 20),
  cutouts: fc.constantFrom([], [240, 190, 200, 150, 230, 180]),
});

describe('always:', () => {
  test('sound, worked out, core and edges fill the outline and lie in no other wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 400))).toEqual([]);
        const flat = built.parts.filter(({ name }) => /^Top|^Solid/.test(name));
        const hole = partOf(built, 1).holes.reduce((sum, one) => sum + outlineArea(one), 0);
        expect(areaOf(flat) + hole).toBeCloseTo(worked(built, 'area'), 3);
        expect(worked(built, 'mass')).toBeCloseTo(((areaOf(flat) + hole) * 18 * 550) / 1e9, 6);
        const across = flat.flatMap((part) =>
          part.placements.flatMap((at) =>
            flattenOutline(part.outline).map((p) => placePoint(at, { ...p, z: 0 }).x),
          ),
        );
        expect(Math.min(...across)).toBeCloseTo(0, 6);
        expect(Math.max(...across)).toBeCloseTo(worked(built, 'top_W'), 6);
      }),
      { numRuns: 120 },
    );
  });
  test('numbers outside all sense give findings, never a size that is none', () => {
    const wild = fc.oneof(fc.integer({ min: -50, max: 3000 }), fc.constantFrom(0, NaN, Infinity, 1e-9, 1e12));
    const keys = [
      'width',
      'depth',
      'overhang',
      'wallGap',
      'radius',
      'lipping',
      'cutoutRadius',
      'doubler',
      'cornerOpen',
    ];
    const lists = ['corners', 'openSides', 'radii', 'cutouts', 'fiddleSides', 'supports'];
    const any = fc.record(
      {
        ...Object.fromEntries(keys.map((key) => [key, wild])),
        ...Object.fromEntries(lists.map((key) => [key, fc.array(wild, { maxLength: 8 })])),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(any, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
      }),
      { numRuns: 200 },
    );
  });
});
