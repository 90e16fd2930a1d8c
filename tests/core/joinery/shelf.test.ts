import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flattenOutline, outlineArea, placePoint, type Shape } from '#core/geometry';
import type { Material, ShelfParameters } from '#core/joinery';
import { buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const stock: readonly Material[] = [
  { id: 'ply12', kind: 'sheet', name: 'Ply 12', thickness: 12, density: 550 },
  { id: 'wood', kind: 'solid', name: 'Mahogany of no known species', state: 'planed', density: 560 },
];

const build = (parameters: Partial<ShelfParameters> = {}, shape: Shape | null = null) =>
  buildKind(
    'shelf',
    { length: 760, depth: 192, fiddleHeight: 43, materials: { shelf: 'ply12' }, ...parameters },
    { materials: stock, shape, ...(shape && { shapeName: 'Locker' }) },
  );

test('the worked example of joinery B8 comes out to its printed digits', () => {
  const built = build({ itemWidth: 75, itemCentre: 110 });
  const lines: readonly (readonly [string, number, number])[] = [
    ['q', 0.1549, 4],
    ['I', 25920, 6],
    ['sag', 3.71, 2],
    ['long_term', 5.56, 2],
    ['limit', 2.53, 2],
    ['I_f', 166375, 6],
    ['sag_front', 0.2, 2],
    ['f_needed', 72.5, 9],
  ];
  for (const [name, value, digits] of lines) expect(worked(built, name), name).toBeCloseTo(value, digits);
  expect(worked(build({ itemWidth: 170, itemCentre: 120 }), 'f_needed')).toBeCloseTo(35, 9);
  expectSound(built);
  expectWorking(built);
  expectWords(built);
});

test('end cleats stop at the back cleat, however thick', () => {
  for (const cleat of [12, 20, 26, 40]) {
    const built = build({ cleat });
    // the corner below the shelf at the left wall, 20 to 40 before the back
    const points = Array.from({ length: 40 }, (_, i) => ({
      x: 11.3,
      y: -6,
      z: built.envelope.min.z + i + 0.4,
    }));
    expect(overlaps(built, points), `${cleat}`).toEqual([]);
  }
  // joinery B8: end cleats D - 20
  expect(worked(build({ cleat: 12 }), 'end_cleat_L')).toBe(worked(build(), 'end_cleat_L'));
});

test('a known species bends by its own stiffness', () => {
  const oak: Material = { id: 'wood', kind: 'solid', name: 'Oak', species: 'Oak, European', state: 'planed' };
  const built = buildKind(
    'shelf',
    { length: 760, depth: 192, materials: { shelf: 'ply12' } },
    { materials: [stock[0] ?? oak, oak] },
  );
  expect(worked(built, 'E_f')).toBeGreaterThan(9000);
  expect(worked(built, 'E_f')).not.toBe(10000);
});

test('its back follows the hull at its height, clear of it', () => {
  const line = (more: number) => Array.from({ length: 61 }, (_, i) => ({ x: 150 + more + 3 * i, y: 10 * i }));
  const section = (name: string, at: number, more: number) => ({
    name,
    at,
    line: line(more),
    bevels: [],
    sigma: 0.7,
  });
  const shape: Shape = {
    kind: 'sections',
    seenFrom: 'in the saloon, looking to starboard',
    ...{ points: {}, edges: [], order: [], covariance: [], tilt: 0 },
    sections: [section('fore', 0, 0), section('middle', 400, 30), section('aft', 800, 20)],
  };
  const built = buildKind(
    'shelf',
    { height: 300, clearance: 4, materials: { shelf: 'ply12' } },
    { materials: stock, shape, shapeName: 'Hull' },
  );
  expectSound(built);
  expectWorking(built);
  expect(codesOf(built)).toContain('back-on-tabs');
  const shelf = partOf(built, 1);
  const at = shelf.placements[0];
  if (!at) throw new Error('not placed');
  // at height 300 the hull is 240 deep in front of the first section; its slope is 0.3
  const allowed = (x: number) => 240 + (x <= 400 ? 30 : 20) + 12 - 4 * Math.sqrt(1.09);
  for (const point of flattenOutline(shelf.outline)) {
    const { x, z } = placePoint(at, { ...point, z: 0 });
    expect(-z).toBeLessThanOrEqual(allowed(x));
  }
  const foremost = flattenOutline(shelf.outline)
    .map((point) => placePoint(at, { ...point, z: 0 }))
    .filter(({ x, z }) => x < 1 && z < -50);
  expect(-Math.min(...foremost.map(({ z }) => z))).toBeCloseTo(240 - 4 * Math.sqrt(1.09), 1);
});

test('in an outline with odd angles it leaves its clearance at the walls and none in front', () => {
  const points = { A: { x: 0, y: 0 }, B: { x: 700, y: 0 }, C: { x: 660, y: 300 }, D: { x: 30, y: 260 } };
  const names = ['A', 'B', 'C', 'D'];
  const shape: Shape = {
    kind: 'outline',
    seenFrom: 'from above, the front below',
    ...{ points, order: [], covariance: [], tilt: 0 },
    edges: names.map((from, i) => ({ name: `${from}`, from, to: names[(i + 1) % 4] ?? 'A' })),
  };
  const built = build({ clearance: 3 }, shape);
  expectSound(built);
  expectWorking(built);
  const whole = (700 * 0 - 0 + (700 * 300 - 660 * 0) + (660 * 260 - 30 * 300) + 0) / 2;
  const walls = Math.hypot(40, 300) + Math.hypot(630, 40) + Math.hypot(30, 260);
  const expected = whole - 3 * walls - 12 * 700;
  // the strips taken off overlap in the corners by less than 12 times 3 twice and 3 times 3 twice
  expect(outlineArea(partOf(built, 1).outline)).toBeGreaterThan(expected);
  expect(outlineArea(partOf(built, 1).outline)).toBeLessThan(expected + 120);
  expect(built.parts.filter(({ name }) => name.startsWith('Cleat'))).toHaveLength(3);
  const { min, max } = built.envelope;
  expect(overlaps(built, spreadPoints(min, max, 4000))).toEqual([]);
});

test('a fiddle in a rebate takes the edge of the shelf half its thickness deep, a lip of 5 left at least', () => {
  const built = build({ fiddle: 'rebate' });
  const [shelf, fiddle] = built.parts;
  expect(fiddle?.machining).toMatchObject([
    { name: 'rebate', box: { min: { x: 0, y: 43, z: 6 }, max: { y: 55, z: 12 } } },
  ]);
  // overall depth 192: a lip of 6 before the shelf
  expect(shelf?.finished.width).toBe(186);
  expect(built.joints[0]?.kind).toBe('rebate');
  expect(worked(build({ fiddle: 'rebate', fiddleThickness: 8 }), 'rebate')).toBe(3);
  // wood of the fiddle before the shelf and over it, nothing between
  const meets = (y: number, z: number) =>
    built.parts.filter((part) => occupies(part, { x: 380, y, z })).map(({ name }) => name);
  expect(meets(6, -5.9)).toEqual(['Fiddle']);
  expect(meets(6, -6.1)).toEqual(['Shelf']);
  expect(meets(12.1, -11.9)).toEqual(['Fiddle']);
});

describe('what a master would say is said', () => {
  test.each<[string, Partial<ShelfParameters>]>([
    ['shelf-sags', { fiddle: 'none', cornerOpen: 0 }],
    ['shelf-sags', { fiddleHeight: 15, fiddle: 'top', load: 60 }],
    ['fiddle-too-low', { itemWidth: 75, itemCentre: 110 }],
    ['item-cannot-be-lifted', { itemHeight: 300, room: 330 }],
  ])('%s', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts.length).toBeGreaterThan(0);
    expectWords(built);
  });
  test.each<[string, Partial<ShelfParameters>]>([
    ['shelf-size-missing', { length: 0 }],
    ['shelf-impossible', { cornerOpen: 400 }],
  ])('%s forbids it', (code, parameters) => {
    const built = build(parameters);
    expect(codesOf(built)).toContain(code);
    expect(built.parts).toEqual([]);
  });
  test('the height of fiddle it proposes ends the finding', () => {
    const low = build({ length: 1400, load: 60, fiddleHeight: 20 });
    const found = low.findings.find(({ code }) => code === 'shelf-sags');
    const height = Number(/fiddle (\d+) high/.exec(found?.remedy ?? '')?.[1]);
    expect(codesOf(build({ length: 1400, load: 60, fiddleHeight: height }))).not.toContain('shelf-sags');
  });
});

const sensible: fc.Arbitrary<Partial<ShelfParameters>> = fc.record({
  length: fc.integer({ min: 250, max: 1500 }),
  depth: fc.integer({ min: 120, max: 400 }),
  fiddle: fc.constantFrom('edge' as const, 'rebate' as const, 'top' as const, 'none' as const),
  fiddleHeight: fc.integer({ min: 20, max: 100 }),
  cornerOpen: fc.integer({ min: 0, max: 50 }),
  endFiddles: fc.constantFrom('none' as const, 'left' as const, 'right' as const, 'both' as const),
  backHeld: fc.constantFrom('cleat' as const, 'tabs' as const, 'no' as const),
  cleat: fc.integer({ min: 12, max: 40 }),
});

describe('always:', () => {
  test('sound, worked out, in no other wood, as large as asked for, mass is volume times density', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 400))).toEqual([]);
        expect(max.x - min.x).toBeCloseTo(parameters.length ?? 0, 6);
        expect(max.z - min.z).toBeCloseTo(parameters.depth ?? 0, 6);
        const { outline } = partOf(built, 1);
        expect(worked(built, 'mass')).toBeCloseTo((outlineArea(outline) * 12 * 550) / 1e9, 6);
      }),
      { numRuns: 150 },
    );
  });
  test('numbers outside all sense give findings, never a size that is none', () => {
    const wild = fc.oneof(fc.integer({ min: -50, max: 3000 }), fc.constantFrom(0, NaN, Infinity, 1e-9, 1e12));
    const keys = [
      'length',
      'depth',
      'height',
      'clearance',
      'thickness',
      'fiddleHeight',
      'cornerOpen',
      'cleat',
    ];
    const more = ['load', 'itemWidth', 'itemCentre', 'itemHeight', 'angle', 'room'];
    const any = fc.record(Object.fromEntries([...keys, ...more].map((key) => [key, wild])), {
      requiredKeys: [],
    });
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
