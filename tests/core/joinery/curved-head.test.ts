import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, newPiece } from '#core/joinery';
import type { Point3 } from '#core/geometry';
import type { BuiltPiece, CurvedHeadParameters, Material, Part, Piece } from '#core/joinery';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { openingShape } from '../../support/joinery-samples.ts';
import { occupies, occupiesDeep } from '../../support/joinery-solid.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { countAt, isStopped, massRatio, testAlways } from '../../support/joinery-properties.ts';

const materials: readonly Material[] = [
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed', density: 680 },
  { id: 'ply18', kind: 'sheet', name: 'Marine ply 18', thickness: 18, density: 550 },
];

const head = (parameters: Partial<CurvedHeadParameters> = {}): Extract<Piece, { kind: 'curved-head' }> => ({
  kind: 'curved-head',
  id: 'head',
  letter: 'H',
  name: 'Saloon door head',
  parameters: { span: 540, rise: 60, materials: { head: 'oak', mould: 'ply18' }, ...parameters },
});

const build = (parameters: Partial<CurvedHeadParameters> = {}): BuiltPiece =>
  buildPiece(head(parameters), { shape: null, materials, settings: defaultSettings });

// Span 540, rise 60, five plies of 4. Every value as printed in the trade rulebook's calculated example (joinery B17), whose
// arithmetic was evaluated there.
describe('the worked head', () => {
  const built = build();
  test.each([
    ['R', 637.5],
    ['S', 557.61],
    ['t_max', 5.1],
    ['T', 20],
    ['Rm', 612],
    ['mould_rise', 62.42],
    ['mould_rise_rule', 62.5],
    ['mould_chord', 538.52],
    ['ply_L', 557.61 + 50],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 2);
  });
  test('sawn from one board it wants 115 of width', () => {
    expect(worked(build({ method: 'sawn', segments: 'one' }), 'board_W')).toBeCloseTo(115, 9);
  });
  test('its parts: the plies, a spare, and a mould of layers to make', () => {
    expect(
      built.parts.map((one) => `${one.id} ${one.name} ${one.quantity} ${one.placements.length}`),
    ).toEqual([
      'H1 Ply 1, inner 1 1',
      'H2 Ply 2 1 1',
      'H3 Ply 3 1 1',
      'H4 Ply 4 1 1',
      'H5 Ply 5, outer 1 1',
      'H6 Ply, spare 1 0',
      'H7 Mould, layer 3 0', // plies cut 53 wide over layers of 18
    ]);
    const strip = { length: worked(built, 'ply_L'), width: 53, thickness: 4 };
    expect(built.parts[0]?.rough).toEqual(strip);
    expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});

// Mould radius for a radius and a number of plies: vectors beside the trade rulebook (springback).
test.each([
  [637.5, 5, 612],
  [900, 4, 843.75],
  [400, 8, 393.75],
])('a head of radius %d in %d plies wants a mould of %d', (R, plies, Rm) => {
  const rise = R / 8;
  const built = build({ span: Math.sqrt(8 * rise * (R - rise / 2)), rise, plies, plyThickness: 2 });
  expect(worked(built, 'R')).toBeCloseTo(R, 6);
  expect(worked(built, 'Rm')).toBeCloseTo(Rm, 6);
});

describe('findings', () => {
  test('plies too thick for the radius: beyond a 125th a warning, beyond a 100th a stop', () => {
    expect(build({ plyThickness: 5 }).findings.map(({ code }) => code)).not.toContain('ply-too-thick');
    expect(build({ plyThickness: 6 }).findings[0]).toMatchObject({ severity: 'warn', code: 'ply-too-thick' });
    expect(build({ plyThickness: 7 }).findings[0]).toMatchObject({ severity: 'stop', code: 'ply-too-thick' });
    expect(build({ plyThickness: 7 }).findings[0]?.remedy).toMatch(/^Make the plies 5\.1 or thinner/);
  });
  test('four plies spring back by 6.3 %', () => {
    expect(build({ plies: 4 }).findings.find(({ code }) => code === 'plies-few')?.message).toMatch(
      /^4 plies spring back by 6\.3 %/,
    );
  });
  test('the note says how much the head springs back', () => {
    expect(build().findings.find(({ code }) => code === 'springback')?.message).toMatch(
      /612 for a head of 637\.5: released, it springs back by 2\.4/,
    );
  });
  test('a sawn arc over 45° is made of two unless one is insisted on', () => {
    // 2 a = 2 asin(540 / 1275) = 50.1°
    expect(build({ method: 'sawn' }).parts.map(({ name }) => name)).toEqual([
      'Head, left half',
      'Head, right half',
      'Loose tenon',
    ]);
    const one = build({ method: 'sawn', segments: 'one' });
    expect(one.findings[0]?.message).toBe(
      'One segment turns 50.1°; over 45 the grain at its ends is short and breaks.',
    );
    expect(codesOf(build({ method: 'sawn', rise: 40 }))).not.toContain('short-grain');
  });
  test('a rise over half the span is no arc', () => {
    expect(build({ rise: 280 }).findings[0]?.code).toBe('rise-too-high');
  });
});

test('span and rise of a measured opening are those of its head', () => {
  const flat = openingShape({ BL: [0, 0], BR: [600, 0], TR: [600, 1700], TL: [0, 1700] });
  const edges = flat.edges.map((edge) => {
    const ends = [edge.from, edge.to];
    return ends.includes('TL') && ends.includes('TR') ? { ...edge, bow: 70 } : edge;
  });
  const piece = head({ span: undefined, rise: undefined });
  const context = { materials, settings: defaultSettings, shapeName: 'Door' };
  const built = buildPiece(piece, { ...context, shape: { ...flat, edges } });
  expect([worked(built, 'c'), worked(built, 'f')]).toEqual([600, 70]);
  const straight = buildPiece(piece, { ...context, shape: flat });
  expect(straight.findings[0]?.message).toBe('Saloon door head: its rise is neither measured nor entered.');
});

const sensible: fc.Arbitrary<Partial<CurvedHeadParameters>> = fc
  .record({
    span: fc.integer({ min: 350, max: 1200 }),
    share: fc.double({ min: 0.06, max: 0.4, noNaN: true }),
    depth: fc.integer({ min: 25, max: 90 }),
    method: fc.constantFrom('laminated' as const, 'sawn' as const),
    plies: fc.integer({ min: 4, max: 10 }),
    plyThickness: fc.constantFrom(2, 3),
    faceWidth: fc.integer({ min: 35, max: 80 }),
    segments: fc.constantFrom('auto' as const, 'two' as const),
  })
  .map(({ share, ...rest }) => ({ ...rest, rise: Math.round(rest.span * share) }));

describe('always:', () => {
  testAlways<CurvedHeadParameters>({
    build,
    sensible,
    numbers: [
      ...(['span', 'rise', 'depth', 'plies', 'plyThickness', 'faceWidth'] as const),
      ...(['jambLength', 'jambThickness', 'jointDepth', 'horn'] as const),
    ],
    choices: {
      method: ['laminated', 'sawn'],
      segments: ['auto', 'one', 'two'],
      springing: ['butt', 'housed', 'rebated', 'halved'],
    },
  });

  test('the head fills the ring between its two faces from springing to springing, plies closed up', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const { span = 0, rise = 0 } = parameters;
        // by Pythagoras, without the formula of the rulebook
        const R = (span ** 2 / 4 + rise ** 2) / (2 * rise);
        const thick = parameters.method === 'sawn' ? (parameters.faceWidth ?? 0) : worked(built, 'T');
        const { min, max } = built.envelope;
        for (const { x, y } of spreadPoints(min, max, 300)) {
          const [dx, dy] = [x - span / 2, y - (rise - R)];
          const r = Math.hypot(dx, dy);
          const turn = Math.abs(Math.atan2(dx, dy));
          const limit = Math.asin(Math.min(1, span / 2 / R));
          const off = Math.max(R - r, r - R - thick, (turn - limit) * R);
          const crown = parameters.method === 'sawn' && Math.abs(dx) < 0.1;
          if (Math.abs(off) < 0.15 || crown) continue; // chords of arcs are 0.05 off them
          if (off < 0 && parameters.method === 'laminated') {
            const into = (r - R) % worked(built, 't');
            if (Math.min(into, worked(built, 't') - into) < 0.15) continue; // on a glue line
          }
          expect(countAt(built, { x, y, z: min.z / 8 })).toBe(off > 0 ? 0 : 1);
        }
        expect(max.y).toBeGreaterThanOrEqual(rise + thick - 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('every strip is longer than its ply bent, and the mould is longer than the strip under it', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, method: 'laminated' });
        if (isStopped(built)) return;
        const v = (name: string) => worked(built, name);
        expect(v('ply_L')).toBeGreaterThan(v('S_out'));
        expect(v('Rm')).toBeLessThan(v('R'));
        expect(v('mould_rise')).toBeGreaterThan(v('f'));
        expect(v('layers') * 18).toBeGreaterThanOrEqual(v('ply_W') - 1e-9);
        if (v('mould_a') < 85)
          expect(2 * v('Rm') * ((v('mould_a') * Math.PI) / 180)).toBeCloseTo(v('ply_L'), 6);
      }),
      { numRuns: 60 },
    );
  });

  test('the loose tenon of a sawn head lies in both its pockets', () => {
    const built = build({ method: 'sawn' });
    const tenon = built.parts.find(({ name }) => name === 'Loose tenon')?.placements[0]?.origin;
    if (!tenon) throw new Error('no tenon');
    const low = {
      x: tenon.x + 0.2,
      y: tenon.y - worked(built, 'tenon_W') + 0.2,
      z: tenon.z - worked(built, 'tenon_t') + 0.2,
    };
    const high = { x: tenon.x + worked(built, 'tenon_L') - 0.2, y: tenon.y - 0.2, z: tenon.z - 0.2 };
    for (const point of spreadPoints(low, high, 200)) expect(countAt(built, point)).toBe(1);
  });

  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        // a thin ring fills little of its block: so many points tell it to some 6 %
        expect(Math.abs(massRatio(built, { oak: 680 }, 12_000) - 1)).toBeLessThan(0.08);
      }),
      { numRuns: 15 },
    );
  });
});

describe('at the springings', () => {
  const springings = ['butt', 'housed', 'rebated', 'halved'] as const;
  const withJambs = fc.record({
    span: fc.integer({ min: 400, max: 700 }),
    rise: fc.integer({ min: 40, max: 110 }),
    depth: fc.integer({ min: 30, max: 70 }),
    method: fc.constantFrom('laminated' as const, 'sawn' as const),
    plies: fc.integer({ min: 5, max: 8 }),
    plyThickness: fc.constantFrom(2.5, 3),
    faceWidth: fc.integer({ min: 35, max: 60 }),
    segments: fc.constantFrom('auto' as const, 'two' as const),
    springing: fc.constantFrom(...springings),
    jambLength: fc.integer({ min: 300, max: 900 }),
    jambThickness: fc.integer({ min: 18, max: 30 }),
  });

  test('always: head and jambs are sound and can be worked out again', () => {
    fc.assert(
      fc.property(withJambs, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        if (built.parts.length > 0) expectWorking(built);
      }),
      { numRuns: 100 },
    );
  });

  test('always: no wood is shared with a jamb, and the corner of both is filled but for a housing’s play', () => {
    fc.assert(
      fc.property(withJambs, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const v = (name: string) => worked(built, name);
        const { span, rise, depth, jambThickness } = parameters;
        const R = (span ** 2 / 4 + rise ** 2) / (2 * rise); // by Pythagoras
        const thick = parameters.method === 'sawn' ? parameters.faceWidth : v('T');
        const low = { x: -jambThickness, y: -40, z: 0.3 - depth };
        const high = { x: 30, y: 120, z: -0.3 };
        for (const point of spreadPoints(low, high, 800)) {
          const r = Math.hypot(point.x - span / 2, point.y - (rise - R));
          const here = built.parts.filter((part) => occupiesDeep(part, point, 0.05)).map(({ name }) => name);
          expect(here.length, here.join()).toBeLessThan(2);
          const inRing = r > R + 0.4 && r < R + thick - 0.4;
          const reach = parameters.springing === 'butt' ? 0 : v('e_s');
          const isHead = inRing && point.x > -reach + 0.4 && (reach > 0 || point.x > 0.4);
          const glue = parameters.method === 'laminated' ? (r - R) % v('t') : 1;
          const seam = Math.min(glue, Math.abs(v('depth') / 2 + point.z)) < 0.3;
          const edge = parameters.method === 'laminated' && v('t') - glue < 0.3;
          const step = Math.abs(point.x) < 0.3 || Math.abs(r - R) < 0.3 || seam || edge;
          if (isHead && !step) expect(here.length, `${point.x} ${point.y} ${point.z}`).toBe(1);
          const isJamb = point.x < -0.3 && r < R - 0.4 && parameters.springing !== 'butt';
          if (isJamb && point.x > 0.3 - jambThickness) expect(here).toHaveLength(1);
        }
      }),
      { numRuns: 40 },
    );
  });

  /** Wood of the left half seen in a plane so far behind the face, mm²: all the same through half the depth. */
  const woodAt = (built: BuiltPiece, z: number, count = 30_000): number => {
    const { min, max } = built.envelope;
    const [low, high] = [
      { ...min, z },
      { x: worked(built, 'c') / 2, y: max.y, z: z + 0.01 },
    ];
    const found = spreadPoints(low, high, count).filter((point) => countAt(built, point) > 0).length;
    return (found / count) * (high.x - low.x) * (high.y - low.y);
  };
  test('mass is volume times density, jambs and laps counted in the planes of both halves', () => {
    fc.assert(
      fc.property(withJambs, fc.boolean(), (parameters, jambs) => {
        const { jambLength, ...rest } = parameters;
        const built = build(jambs ? { ...rest, jambLength: Math.round(jambLength / 4) } : rest);
        if (isStopped(built)) return;
        const { depth } = parameters;
        const area = woodAt(built, -0.1 * depth) + woodAt(built, -0.9 * depth);
        const kg = (area * depth * 680) / 1e9; // 30,000 points tell an area to 3 %
        expect(Math.abs(kg / worked(built, 'mass') - 1)).toBeLessThan(0.04);
      }),
      { numRuns: 10 },
    );
  });
  test('a halved head weighs less by its laps, and with jambs by what these weigh more', () => {
    const one = { method: 'sawn', segments: 'one', springing: 'halved' } as const;
    const [alone, whole] = [build(one), build({ ...one, jambLength: 800 })];
    const v = (name: string) => worked(whole, name);
    // what lies between the two arcs over a jamb, summed in strips of a hundredth of it
    const strip = v('tj') / 100;
    const high = (x: number) => Math.sqrt((v('R') + v('w')) ** 2 - x ** 2) - Math.sqrt(v('R') ** 2 - x ** 2);
    const laps = Array.from({ length: 100 }, (_, i) => strip * high(v('c') / 2 + (i + 0.5) * strip));
    expect(v('in_jamb')).toBeCloseTo(
      laps.reduce((sum, each) => sum + each, 0),
      2,
    );
    const kgOf = (area: number) => (area * v('depth') * 680) / 1e9;
    expect(worked(alone, 'mass')).toBeCloseTo(kgOf(v('head_area') - v('in_jamb')), 9);
    const longer = worked(build({ ...one, jambLength: 900 }), 'mass');
    expect(longer - worked(whole, 'mass')).toBeCloseTo(kgOf(2 * 100 * v('tj')), 9);
  });

  test('always: the right jamb is the mirror image of the left', () => {
    fc.assert(
      fc.property(withJambs, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const v = (name: string) => worked(built, name);
        const [left, right] = built.parts.filter(({ name }) => name.startsWith('Jamb'));
        if (!left || !right) throw new Error('no jambs');
        const low = { x: -v('tj'), y: -50, z: -v('depth') };
        for (const point of spreadPoints(low, { x: 0, y: 100, z: 0 }, 200)) {
          const mirrored = { ...point, x: v('c') - point.x };
          const near = (part: Part, at: Point3): boolean => occupiesDeep(part, at, 0.06); // chords of arcs
          if (near(left, point)) expect(occupies(right, mirrored)).toBe(true);
          if (near(right, mirrored)) expect(occupies(left, point)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('a head housed in jambs made elsewhere is still cut for them', () => {
    const built = build({ springing: 'housed' });
    expect(built.parts.some(({ name }) => name.startsWith('Jamb'))).toBe(false);
    expect(built.envelope.min.x).toBeCloseTo(-7, 9);
    expect(built.envelope.max.x).toBeCloseTo(547, 9);
    expect(build({ springing: 'housed', jambLength: 800 }).joints.map(({ kind }) => kind)).toContain(
      'housing',
    );
  });

  test.each([
    ['springing-too-steep', { rise: 260, springing: 'housed' as const }],
    ['springing-flat', { jambLength: 800 }],
    ['wall-too-thin', { springing: 'housed' as const, jointDepth: 17 }],
  ])('%s is found', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
  });
});

test('a new one of a usual size can be made', () => {
  const piece = newPiece('curved-head', { id: 'n', letter: 'N', name: 'New', materials });
  const built = buildPiece(piece, { shape: null, materials, settings: defaultSettings });
  expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
});
