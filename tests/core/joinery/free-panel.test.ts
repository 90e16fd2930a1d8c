import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOfOutline, outlineArea } from '#core/geometry';
import type { FreePanelParameters } from '#core/joinery';
import { areaOf, buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { contextFor, curlewOpening, openingShape } from '../../support/joinery-samples.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { overlaps } from '../../support/joinery-solid.ts';

const build = (parameters: Partial<FreePanelParameters> = {}) =>
  buildKind('free-panel', { width: 600, height: 400, materials: { panel: 'ply18' }, ...parameters });

describe('a panel of an entered size', () => {
  test('is the opening less a gap at each side', () => {
    const built = build({ gaps: [5, 2, 3, 1] });
    expect(worked(built, 'panel_W')).toBe(597);
    expect(worked(built, 'panel_H')).toBe(392);
    expect(partOf(built, 1).finished).toEqual({ length: 392, width: 597, thickness: 18 });
    expect(built.findings).toEqual([]);
  });
  test('weighs volume times density', () => {
    const built = build({ gap: 0, radius: 30 });
    const area = 600 * 400 - (4 - Math.PI) * 30 ** 2;
    expect(worked(built, 'mass')).toBeCloseTo(((area * 18) / 1e9) * 550, 9);
  });
  test('with solid edges on two sides, mitred: core and edges make up the panel', () => {
    const built = build({ gap: 0, lippedSides: [1, 2], lipping: 8 });
    expect(partOf(built, 1).finished).toEqual({ length: 392, width: 592, thickness: 18 });
    expect(areaOf(built.parts)).toBeCloseTo(600 * 400, 6);
    expect(partOf(built, 2).rough).toEqual({ length: 620, width: 8.5, thickness: 20 });
  });
  test('holes and cut-outs lie where they were asked for, from its lower left', () => {
    const built = build({ grain: 'across', holes: [100, 80, 40], cutouts: [300, 200, 120, 60] });
    const boxes = partOf(built, 1).holes.map(boxOfOutline);
    // the face view has y down: measured from the top edge of the panel, 396 high
    expect(boxes[0]).toMatchObject({ minX: 80, maxX: 120, minY: 396 - 100, maxY: 396 - 60 });
    expect(boxes[1]?.minX).toBeCloseTo(300, 9);
    expect(boxes[1]?.maxY).toBeCloseTo(396 - 200, 9);
  });
});

describe('a panel for a shape', () => {
  const shape = openingShape(curlewOpening, {
    edges: [
      { name: 'left', from: 'BL', to: 'TL', sigma: 1, bow: 6 },
      { name: 'right', from: 'BR', to: 'TR', sigma: 1, bow: 0.3 },
      { name: 'head', from: 'TL', to: 'TR' },
      { name: 'sill', from: 'BL', to: 'BR' },
    ],
  });
  const built = buildKind(
    'free-panel',
    { gap: 0, scribedSides: [2, 4], materials: { panel: 'ply9' } },
    contextFor(shape),
  );
  test('follows a bow worth following, by the area of the circle segment', () => {
    // corners by the shoelace formula, the segment of chord c and rise h exactly
    const quad = (641 * 1752 - 649 * 0 + (649 * 1746 - 14 * 1752)) / 2;
    const c = Math.hypot(14, 1746);
    const r = (c * c) / (8 * 6) + 6 / 2;
    const sweep = 2 * Math.asin(c / (2 * r));
    const segment = (r * r * (sweep - Math.sin(sweep))) / 2;
    expect(worked(built, 'area')).toBeCloseTo(quad + segment, -2);
  });
  test('keeps on a scribed side what the rule asks: deviation, twice the 95 %, and 2', () => {
    // joinery A11: S = clamp(ceil(dev + 2u + 2), 5, 25), u = 2 sigma
    expect(worked(built, 'S_2')).toBe(Math.ceil(0.3 + 4 + 2));
    expect(worked(built, 'S_4')).toBe(6);
    expect(partOf(built, 1).edges.map(({ edge, amount }) => [edge, amount])).toEqual([
      ['far-edge', 7],
      ['face-edge', 6],
    ]);
    expect(partOf(built, 1).cut.width).toBeCloseTo(partOf(built, 1).finished.width + 13, 9);
  });
  test('and is sound', () => {
    expectSound(built);
    expectWorking(built);
  });
});

describe('what forbids a panel is said', () => {
  test.each<[string, Partial<FreePanelParameters>]>([
    ['gaps-leave-nothing', { gaps: [210, 0, 200, 0] }],
    ['side-unknown', { lippedSides: [5] }],
    ['radius-too-large', { radius: 250 }],
    ['radius-cuts-lipping', { radius: 40, lippedSides: [1, 2, 3, 4] }],
    ['lipping-leaves-nothing', { width: 20, lipping: 12, lippedSides: [2, 4] }],
    ['list-incomplete', { holes: [10, 10] }],
    ['hole-outside', { holes: [590, 100, 40] }],
  ])('%s', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts).toEqual([]);
  });
  test('a curved side with a solid edge', () => {
    const shape = openingShape(curlewOpening, { edges: [{ name: 'left', from: 'BL', to: 'TL', bow: 6 }] });
    const built = buildKind(
      'free-panel',
      { lippedSides: [4], materials: { panel: 'ply9' } },
      contextFor(shape),
    );
    expect(codesOf(built)).toContain('curved-side-lipped');
  });
  test.each<[string, Partial<FreePanelParameters>]>([
    ['hole-near-edge', { holes: [25, 100, 40] }],
    ['scribed-with-gap', { scribedSides: [1] }],
    ['panel-swells', { gap: 1, fixed: 'glued', materials: { panel: 'oak' } }],
    ['solid-glued-across', { fixed: 'glued', materials: { panel: 'oak' } }],
  ])('and %s leaves it built', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts.length).toBeGreaterThan(0);
  });
  test('a side too uncertain to be scribed from a straight edge', () => {
    const shape = openingShape(curlewOpening, { edges: [{ name: 'left', from: 'BL', to: 'TL', sigma: 8 }] });
    const built = buildKind(
      'free-panel',
      { scribedSides: [4], materials: { panel: 'ply9' } },
      contextFor(shape),
    );
    expect(codesOf(built)).toContain('scribe-too-wide');
    expect(worked(built, 'S_4')).toBe(25);
  });
});

const sensible: fc.Arbitrary<Partial<FreePanelParameters>> = fc.record({
  width: fc.integer({ min: 150, max: 1200 }),
  height: fc.integer({ min: 150, max: 1200 }),
  gaps: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 4, maxLength: 4 }),
  radius: fc.constantFrom(0, 4, 8, 20),
  lippedSides: fc.subarray([1, 2, 3, 4]),
  scribedSides: fc.subarray([1, 2, 3, 4]),
  lipping: fc.integer({ min: 6, max: 15 }),
  grain: fc.constantFrom('up' as const, 'across' as const, 'any' as const),
});

describe('always:', () => {
  test('sound, worked out, its parts fill the outline and lie in no other wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        expect(areaOf(built.parts)).toBeCloseTo(worked(built, 'area'), 4);
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 300))).toEqual([]);
        const [width, height] = [worked(built, 'panel_W'), worked(built, 'panel_H')];
        expect(max.x - min.x).toBeCloseTo(width, 6);
        expect(max.y - min.y).toBeCloseTo(height, 6);
      }),
      { numRuns: 120 },
    );
  });
  test('numbers outside all sense give findings, never a size that is none', () => {
    const wild = fc.oneof(fc.integer({ min: -50, max: 3000 }), fc.constantFrom(0, NaN, Infinity, 1e-9, 1e12));
    const keys = ['width', 'height', 'gap', 'radius', 'lipping', 'scribe', 'thickness', 'cutoutRadius'];
    const any = fc.record(
      {
        ...Object.fromEntries(keys.map((key) => [key, wild])),
        ...Object.fromEntries(
          ['corners', 'gaps', 'radii', 'holes', 'cutouts', 'lippedSides', 'scribedSides'].map((key) => [
            key,
            fc.array(wild, { maxLength: 8 }),
          ]),
        ),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(any, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
      }),
      { numRuns: 300 },
    );
  });
});

test('an outline entered clockwise is the same panel', () => {
  const square = build({ corners: [0, 0, 0, 300, 500, 300, 500, 0] });
  expect(outlineArea(partOf(square, 1).outline)).toBeCloseTo(496 * 296, 6);
});
