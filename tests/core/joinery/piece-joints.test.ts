import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point3 } from '#core/geometry';
import {
  defaultSettings,
  type BuiltPiece,
  type CarcaseParameters,
  type DividersParameters,
  type HatchSurroundParameters,
  type Part,
  type StepParameters,
} from '#core/joinery';
import { buildKind, expectWords } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectApart, expectEndsMeet } from '../../support/joint-meetings.ts';
import { occupies } from '../../support/joinery-solid.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const heights = [0, 150, 300, 450, 600, 750];
const left = [182, 236, 281, 318, 347, 369];
const right = [205, 262, 309, 347, 377, 399];
const endJoints = ['housing', 'butt', 'dowel', 'loose-tenon'] as const;
const railJoints = ['butt', 'rebate', 'dowel', 'loose-tenon'] as const;
const glues = ['project', 'epoxy', 'pva', 'polyurethane'] as const;

const carcase = (parameters: Partial<CarcaseParameters> & { readonly glue?: (typeof glues)[number] } = {}) =>
  buildKind('carcase', {
    ...{ width: 800, height: 750, heights, left, right, shelves: [300, 500] },
    ...{ materials: { panel: 'ply18' }, ...parameters },
  });
const step = (parameters: Partial<StepParameters> & { readonly glue?: (typeof glues)[number] } = {}) =>
  buildKind('step', { totalRise: 1180, materials: { sides: 'ply18', treads: 'ply18' }, ...parameters });

const dividers = (
  parameters: Partial<DividersParameters> & { readonly glue?: (typeof glues)[number] } = {},
) =>
  buildKind('dividers', {
    ...{ insideWidth: 820, insideDepth: 430, form: 'cells', materials: { dividers: 'ply9' } },
    ...parameters,
  });
type SurroundExtra = { readonly glue?: (typeof glues)[number] };
const surround = (parameters: Partial<HatchSurroundParameters> & SurroundExtra = {}) =>
  buildKind('hatch-surround', {
    ...{ width: 520, height: 520, lining: 'none', materials: { ring: 'oak' } },
    ...parameters,
  });

const named = (built: BuiltPiece, names: RegExp) => built.parts.filter(({ name }) => names.test(name));
const kindsOf = (built: BuiltPiece) => [...new Set(built.joints.map(({ kind }) => kind))];

describe('a carcase', () => {
  test.each(endJoints)('with %s shelves: lengths, lists and steps follow', (joint) => {
    const built = carcase({ joint });
    expect(worked(built, 'shelf_L')).toBe(joint === 'housing' ? 764 + 12 : 764);
    expect(built.joints.filter(({ kind }) => kind === joint).length).toBeGreaterThanOrEqual(4);
    const cut = named(built, /^End/).flatMap(({ machining }) => machining);
    const kinds = { housing: 'housing', butt: 'hole', dowel: 'hole', 'loose-tenon': 'mortise' }[joint];
    expect(cut.some((one) => (one.kind === 'recess' ? one.name : one.kind) === kinds)).toBe(true);
    const shelf = named(built, /^Shelf 1/)[0];
    expect(shelf?.machining.length).toBe(
      joint === 'housing' || joint === 'butt' ? 0 : shelf?.machining.length,
    );
    const pinned = joint === 'dowel' || joint === 'loose-tenon';
    expect(built.steps.some(({ id }) => id === 'shelves')).toBe(!pinned);
    expect(built.fixings.some(({ item }) => item.startsWith('Dowel'))).toBe(joint === 'dowel');
    expect(built.fixings.some(({ item }) => item.startsWith('Loose tenon'))).toBe(joint === 'loose-tenon');
  });
  test('what the table of suitability says of the joint chosen is said (joinery C0)', () => {
    expect(codesOf(carcase())).not.toContain('joint-weak');
    expect(codesOf(carcase({ joint: 'dowel' }))).toContain('joint-weak'); // dowels in plywood: 1
    expect(codesOf(carcase({ joint: 'butt', frontThickness: 0 }))).toContain('joint-weak'); // racked: 1
    expect(codesOf(carcase({ joint: 'loose-tenon', frontThickness: 0 }))).not.toContain('joint-weak');
  });
  test('loose tenons in ends of 9 leave no wall beside them', () => {
    const thin = { materials: { panel: 'ply9' }, joint: 'loose-tenon' } as const;
    expect(codesOf(carcase(thin))).toContain('wall-too-thin');
  });
  test('rebated rails are longer by the depth of both rebates, and their screws are listed', () => {
    const built = carcase({ railJoint: 'rebate' });
    // lip a third of 18 (joinery C8): 12 deep
    expect(worked(built, 'rail_L')).toBe(764 + 24);
    expect(kindsOf(built)).toContain('rebate');
    expect(built.fixings.find(({ use }) => use === 'top rails')?.quantity).toBe(8);
  });
});

describe('a step', () => {
  test.each([...endJoints, 'rebate'] as const)('box with %s: lengths and lists follow', (joint) => {
    const built = step({ joint, boxRisers: 2 });
    const enters = { housing: [6, 6], rebate: [6, 9], butt: [0, 0], dowel: [0, 0], 'loose-tenon': [0, 0] };
    const [tread = 0, riser = 0] = enters[joint];
    expect(worked(built, 'low_tread_L')).toBe(354 + 2 * tread);
    expect(worked(built, 'riser_board_L')).toBe(354 + 2 * riser);
    expect(kindsOf(built)).toContain(joint);
    const texts = built.steps.map(({ text }) => text).join(' ');
    const word = {
      housing: 'House',
      rebate: 'Rebate',
      butt: 'screws',
      dowel: 'dowels',
      'loose-tenon': 'Slot',
    };
    expect(texts).toContain(word[joint]);
  });
  test('treads that are stood on want more than screws (joinery C0)', () => {
    expect(codesOf(step({ joint: 'butt', boxRisers: 2 }))).toContain('joint-weak');
    expect(codesOf(step({ boxRisers: 2 }))).not.toContain('joint-weak');
  });
  test('a flight has no risers for rebates', () => {
    const built = step({ form: 'flight', joint: 'rebate' });
    expect(codesOf(built)).toContain('rebates-in-flight');
    expect(kindsOf(built)).toEqual(['housing']);
  });
});

describe('a hatch surround', () => {
  test('in half-laps has a part for each segment of a corner, no tenons, and asks for short enough turns', () => {
    const built = surround({ joint: 'half-lap', segments: 3 });
    expect(named(built, /^Corner segment/).map(({ quantity }) => quantity)).toEqual([4, 4, 4]);
    expect(named(built, /tenon|Spline/)).toEqual([]);
    expect(kindsOf(built)).toEqual(['half-lap']);
    // two segments of 45 degrees and a lap let the grain run out at more than 22.5 (joinery B16)
    expect(codesOf(surround({ joint: 'half-lap', segments: 2 }))).toContain('segment-short-grain');
    expect(codesOf(surround({ joint: 'half-lap', segments: 3, lapLength: 60 }))).toContain('lap-too-long');
  });
  test('with splines has twelve of them, a millimetre less wide than both slots (joinery C14)', () => {
    const built = surround({ joint: 'mitre-and-spline' });
    const [spline] = named(built, /^Spline/);
    expect(spline?.quantity).toBe(12);
    expect(spline?.finished.length).toBe(23);
    expect(kindsOf(built)).toEqual(['mitre-and-spline']);
  });
  test('says what plywood and thin rings do not hold', () => {
    const parameters = { joint: 'half-lap', segments: 3, materials: { ring: 'ply9' } } as const;
    expect(codesOf(surround(parameters))).toEqual(expect.arrayContaining(['lap-thin', 'lap-in-sheet']));
  });
});

describe('a tray of dividers', () => {
  test.each(['box', 'rebate', 'butt'] as const)(
    'with %s corners: its walls and the cells follow',
    (walls) => {
      const built = dividers({ walls });
      expect(named(built, /^Wall/)).toHaveLength(4);
      // the locker less 1, less two walls of 9 (joinery B15); a lip of 5 at each end (C8)
      expect(worked(built, 'in_x')).toBe(820 - 1 - 18);
      expect(worked(built, 'wall_z')).toBe(429 - 2 * { box: 0, rebate: 5, butt: 9 }[walls]);
      expect(kindsOf(built)).toEqual(['cross-halving', walls, 'housing']);
      expect(built.envelope.max.x - built.envelope.min.x).toBe(819);
      expect(built.envelope.max.z - built.envelope.min.z).toBe(429);
    },
  );
  test('without walls is as it was, in a locker', () => {
    expect(dividers()).toEqual(dividers({ walls: 'none' }));
    expect(named(dividers(), /^Wall/)).toEqual([]);
  });
  test('of thin plywood says what its corners do not hold', () => {
    const thin = { materials: { dividers: 'ply6' } };
    expect(codesOf(dividers({ walls: 'rebate', ...thin }))).toContain('rebate-too-shallow');
    expect(codesOf(dividers({ walls: 'butt', ...thin }))).toContain('screw-into-end');
    expect(codesOf(dividers({ walls: 'box', ...thin }))).not.toContain('joint-weak');
  });
});

describe('the glue', () => {
  const slot = (built: BuiltPiece) =>
    named(built, /^Shelf 1/)[0]?.machining.flatMap((one) => (one.kind === 'recess' ? [one.box] : []))[0];
  const wide = (built: BuiltPiece) => (slot(built)?.max.z ?? 0) - (slot(built)?.min.z ?? 0);
  // joinery C: PVA and polyurethane 0.05 to 0.10 on each face, epoxy 0.10 to 0.30; the middle is taken
  test('sets the gap on each face of a tenon', () => {
    expect(wide(carcase({ joint: 'loose-tenon' }))).toBeCloseTo(6.2, 9);
    expect(wide(carcase({ joint: 'loose-tenon', glue: 'pva' }))).toBeCloseTo(6.15, 9);
    expect(wide(carcase({ joint: 'loose-tenon', glue: 'epoxy' }))).toBeCloseTo(6.4, 9);
  });
  test('of the project holds for every piece that says nothing else, on the shopping list too', () => {
    const settings = { ...defaultSettings, glue: 'pva' } as const;
    const parameters = { totalRise: 1180, materials: { sides: 'ply18', treads: 'ply18' } };
    const items = (built: BuiltPiece) => built.fixings.map(({ item }) => item);
    expect(items(buildKind('step', parameters, { settings }))).toContain(
      'White glue (D3, water-resistant), small bottle',
    );
    const own = buildKind('step', { ...parameters, glue: 'epoxy' }, { settings });
    expect(items(own)).toContain('Epoxy glue, small pack');
  });
  test('that takes splashes only is warned of in the wet', () => {
    const parameters = { totalRise: 1180, materials: { sides: 'ply18', treads: 'ply18' } };
    const wet = (glue: 'pva' | 'epoxy') => buildKind('step', { ...parameters, glue, wet: 'wet' });
    expect(codesOf(wet('pva'))).toContain('glue-not-for-wet');
    expect(codesOf(wet('epoxy'))).not.toContain('glue-not-for-wet');
    const settings = { ...defaultSettings, wet: true, glue: 'polyurethane' } as const;
    expect(codesOf(buildKind('step', parameters, { settings }))).toContain('glue-not-for-wet');
    expect(codesOf(buildKind('step', { ...parameters, wet: 'dry' }, { settings }))).not.toContain(
      'glue-not-for-wet',
    );
  });
});

describe('what was saved before there was a choice', () => {
  test('is built as with the joint it always had', () => {
    expect(carcase()).toEqual(carcase({ joint: 'housing', railJoint: 'butt', glue: 'project' }));
    expect(step()).toEqual(step({ joint: 'housing', glue: 'project' }));
    expect(surround()).toEqual(surround({ joint: 'loose-tenon', glue: 'project' }));
    const usual = { ...defaultSettings, glue: 'usual', wet: false } as const;
    const parameters = { totalRise: 1180, materials: { sides: 'ply18', treads: 'ply18' } };
    expect(buildKind('step', parameters, { settings: usual })).toEqual(buildKind('step', parameters));
  });
});

test('the try of ends notices one that stops half a millimetre short', () => {
  const built = step({ boxRisers: 2 });
  const [tread] = named(built, /^Tread/);
  if (!tread) throw new Error('no tread');
  const sides = named(built, /^Side/);
  const look = (part: Part) => expectEndsMeet(part, sides, { widths: [0.45], beyond });
  expect(look(tread)).toBeGreaterThan(0);
  const short = { ...tread, finished: { ...tread.finished, length: tread.finished.length - 0.5 } };
  expect(() => look(short)).toThrow();
});

const carcases = fc.record({
  width: fc.integer({ min: 400, max: 1000 }),
  joint: fc.constantFrom(...endJoints),
  railJoint: fc.constantFrom(...railJoints),
  glue: fc.constantFrom(...glues),
  endBack: fc.constantFrom('square' as const, 'bevelled' as const),
  cleats: fc.boolean(),
});
const steps = fc.record({
  form: fc.constantFrom('box' as const, 'flight' as const),
  joint: fc.constantFrom(...endJoints, 'rebate' as const),
  glue: fc.constantFrom(...glues),
  width: fc.integer({ min: 350, max: 700 }),
  treadDepth: fc.integer({ min: 180, max: 330 }),
  boxRisers: fc.integer({ min: 1, max: 3 }),
  soleSlopeDegrees: fc.constantFrom(0, 1.5, 4),
  fallsTo: fc.constantFrom('left' as const, 'right' as const),
});

const trays = fc.record({
  insideWidth: fc.integer({ min: 300, max: 1200 }),
  insideDepth: fc.integer({ min: 300, max: 800 }),
  height: fc.integer({ min: 40, max: 200 }),
  columns: fc.integer({ min: 1, max: 6 }),
  rows: fc.integer({ min: 1, max: 5 }),
  walls: fc.constantFrom('box' as const, 'rebate' as const, 'butt' as const),
  form: fc.constantFrom('cells' as const, 'bins' as const),
  binTaper: fc.integer({ min: 5, max: 25 }),
  materials: fc.constantFrom({ dividers: 'ply9' }, { dividers: 'ply6' }),
  glue: fc.constantFrom(...glues),
});
const rings = fc.record({
  width: fc.integer({ min: 350, max: 900 }),
  height: fc.integer({ min: 350, max: 900 }),
  cornerRadius: fc.integer({ min: 60, max: 160 }),
  segments: fc.integer({ min: 2, max: 5 }),
  ringWidth: fc.integer({ min: 40, max: 90 }),
  thickness: fc.integer({ min: 15, max: 25 }),
  joint: fc.constantFrom('loose-tenon' as const, 'mitre-and-spline' as const, 'half-lap' as const),
  lapLength: fc.integer({ min: 15, max: 40 }),
  tenonDepth: fc.integer({ min: 8, max: 14 }),
  glue: fc.constantFrom(...glues),
});

/** The widest gap of any glue on one face, and a little (joinery C: thickened epoxy). */
const beyond = 0.35;

describe('always, whatever joint and glue:', () => {
  test('a carcase is sound, its parts share no wood, the ends of its shelves and rails meet its ends', () => {
    fc.assert(
      fc.property(carcases, (parameters) => {
        const built = carcase(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        expectApart(built, 250);
        const ends = named(built, /^End/);
        const looked = named(built, /^(Shelf|Top rail)/).map((part) =>
          expectEndsMeet(part, ends, { widths: [0.5, 0.7, 0.95], beyond }),
        );
        expect(Math.min(...looked)).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
  test('a step is sound, its parts share no wood, the ends of its boards meet its sides', () => {
    fc.assert(
      fc.property(steps, (parameters) => {
        const built = step(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        expectApart(built, 250);
        const sides = named(built, /^(Side|String)/);
        for (const part of named(built, /^(Tread|Riser)/))
          expect(expectEndsMeet(part, sides, { widths: [0.1, 0.45, 0.8], beyond })).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
  test('a tray is sound, its parts share no wood, its walls meet at the corners and its dividers meet its walls', () => {
    fc.assert(
      fc.property(trays, (parameters) => {
        const built = dividers(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        expectApart(built, 250);
        const walls = named(built, /^Wall/);
        for (const part of named(built, /^Divider/))
          expect(expectEndsMeet(part, walls, { widths: [0.1, 0.5, 0.9], beyond })).toBeGreaterThan(0);
        // every point of a corner is in a wall or within the gap of one
        const v = (name: string) => worked(built, name);
        const [low, t, far] = [v('fit') / 2, v('t'), v('fit') / 2 + v('wall_x')];
        for (const x of [low, far - v('t')])
          for (const z of [low, parameters.insideDepth - low - t])
            for (const point of spreadPoints(
              { x: x + 0.1, y: 0, z: -z - t + 0.1 },
              { x: x + t - 0.1, y: parameters.height, z: -z - 0.1 },
              40,
            ))
              expect(near(point).some((p) => walls.some((wall) => occupies(wall, p)))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
  test('a surround is sound, its parts share no wood, and its ring is whole at every depth', () => {
    fc.assert(
      fc.property(rings, (parameters) => {
        const built = surround(parameters);
        expectSound(built);
        expectWords(built);
        if (built.parts.length === 0) return;
        expectWorking(built);
        expectApart(built, 250);
        const v = (name: string) => worked(built, name);
        const { min, max } = built.envelope;
        const bodies = built.parts.flatMap((part) => part.placements.map((at) => ({ part, at })));
        const filled = (p: Point3) => bodies.some(({ part, at }) => occupies(part, p, at));
        // nowhere in the ring is a void wider than the gap meant: 0.3 on each face, a lap's play, the glue wells of slots
        for (const point of spreadPoints(min, max, 300)) {
          if (offRing(point, parameters, v) > -1.2) continue;
          const inSlot = parameters.joint !== 'half-lap' && Math.abs(point.z - v('T') / 2) < v('t') / 2 + 0.3;
          if (!inSlot) expect(near(point).some(filled)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });
});

/** How far a point lies outside the ring in plan; less than nothing inside it. */
function offRing(
  { x, y }: Point3,
  {
    width,
    height,
    cornerRadius: r,
  }: { readonly width: number; readonly height: number; readonly cornerRadius: number },
  v: (name: string) => number,
): number {
  const dx = Math.max(r - x, x - (width - r), 0);
  const dy = Math.max(r - y, y - (height - r), 0);
  const off = dx > 0 && dy > 0 ? Math.hypot(dx, dy) - r : Math.max(-x, x - width, -y, y - height);
  return Math.max(v('rv') - off, off - v('rv') - v('w'));
}

const near = (p: Point3): readonly Point3[] =>
  (['x', 'y', 'z'] as const).flatMap((axis) =>
    [-beyond, 0, beyond].map((by) => ({ ...p, [axis]: p[axis] + by })),
  );
