import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint } from '#core/geometry';
import { buildPiece, mirrorMachining } from '#core/joinery';
import type { BuiltPiece, Machining, Part, Piece } from '#core/joinery';
import { doorContext, flatDoor } from '../../support/flat-doors.ts';
import { framedContext, framedDoor } from '../../support/framed-doors.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { overlaps } from '../../support/joinery-solid.ts';
import { expectPlainWords, expectSound, expectWorking } from '../../support/joinery-sound.ts';

type Lock = 'face-latch' | 'mortise-lock' | 'rim-lock' | 'turn-button' | 'none';

const louvred = (parameters: object): Extract<Piece, { kind: 'louvred-door' }> => ({
  kind: 'louvred-door',
  id: 'door',
  letter: 'L',
  name: 'Engine room door',
  parameters: { width: 410, height: 900, materials: { frame: 'mahogany', slats: 'oak' }, ...parameters },
});

const buildOf = {
  flat: (parameters: object) =>
    buildPiece(flatDoor({ width: 560, height: 1500, slots: 0, ...parameters }), doorContext()),
  framed: (parameters: object) =>
    buildPiece(framedDoor({ height: 900, stile: 70, ...parameters }), framedContext()),
  louvred: (parameters: object) => buildPiece(louvred({ stile: 70, ...parameters }), framedContext()),
};
const kinds = ['flat', 'framed', 'louvred'] as const;

const cutsWith = (built: BuiltPiece, start: string) =>
  built.parts.flatMap((part) =>
    part.machining.filter(({ note = '' }) => note.startsWith(start)).map((one) => ({ part, one })),
  );

/** The block a recess takes, in the frame of the piece. */
function placedBox(part: Part, one: Machining) {
  const at = part.placements[0];
  if (one.kind !== 'recess' || !at) throw new Error('no box');
  const [a, b] = [placePoint(at, one.box.min), placePoint(at, one.box.max)];
  const span = (axis: 'x' | 'y' | 'z') => [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])] as const;
  return { x: span('x'), y: span('y'), z: span('z') };
}

describe.each(kinds)('a %s door', (kind) => {
  test('weighs less by what is cut out for its lock', () => {
    const out = (built: BuiltPiece) =>
      ['case of the lock', 'forend of the lock']
        .flatMap((note) => cutsWith(built, note))
        .flatMap(({ one }) => (one.kind === 'recess' ? [one.box] : []))
        .reduce((sum, { min, max }) => sum + (max.x - min.x) * (max.y - min.y) * (max.z - min.z), 0);
    const none = buildOf[kind]({ bevelDegrees: 0, lock: 'none' });
    const lock = buildOf[kind]({ bevelDegrees: 0, lock: 'mortise-lock' });
    const v = (name: string) => worked(lock, name);
    // the forend's bed and the case lie in one another as deep as the bed is
    const twice =
      v('forend_in') * Math.min(v('forend_H'), v('case_H')) * Math.min(v('forend_W'), v('case_T'));
    expect(v('pockets')).toBeCloseTo(out(lock) - twice, 6);
    expect(worked(none, 'mass') - v('mass')).toBeCloseTo(v('pockets') * v('rho') * 1e-6, 9);
  });
  test('with a mortise lock has its case cut whole from the lock edge, in the middle of the thickness', () => {
    const built = buildOf[kind]({ lock: 'mortise-lock', bevelDegrees: 0, hinged: 'left' });
    const v = (name: string) => worked(built, name);
    const cases = cutsWith(built, 'case of the lock');
    const volume = cases.reduce((sum, { one }) => {
      if (one.kind !== 'recess') return sum;
      const { min, max } = one.box;
      return sum + (max.x - min.x) * (max.y - min.y) * (max.z - min.z);
    }, 0);
    expect(volume).toBeCloseTo(v('case_D') * v('case_H') * v('case_T'), 6);
    for (const { part, one } of cases) {
      const { x, y, z } = placedBox(part, one);
      expect((z[0] + z[1]) / 2).toBeCloseTo(-v('T') / 2, 9);
      expect((y[0] + y[1]) / 2).toBeCloseTo(v('lock_at') + 20 - v('case_H') / 2, 9);
      expect(x[0]).toBeGreaterThanOrEqual(v('Wd') - v('case_D') - 1e-9);
    }
    expect(Math.max(...cases.map(({ part, one }) => placedBox(part, one).x[1]))).toBeCloseTo(v('Wd'), 9);
    expect(cutsWith(built, 'handle of the lock')).toHaveLength(1);
    expect(cutsWith(built, 'keyhole')).toHaveLength(1);
    expect(built.fixings.map(({ item }) => item).join()).toContain('Mortise lock with strike and handles');
    expect(built.fixings.map(({ item }) => item)).not.toContain('Latch with strike');
    expect(built.steps.map(({ id }) => id)).toContain('lock');
  });

  test('with a latch on the face is cut as without any', () => {
    const shapes = (built: BuiltPiece) => built.parts.map(({ machining }) => machining);
    expect(shapes(buildOf[kind]({ lock: 'face-latch' }))).toEqual(shapes(buildOf[kind]({})));
    expect(shapes(buildOf[kind]({ lock: 'none' }))).toEqual(shapes(buildOf[kind]({})));
  });

  test('with a finger hole has one right through', () => {
    const built = buildOf[kind]({ lock: 'turn-button' });
    const [hole] = cutsWith(built, 'finger hole');
    expect(hole?.one).toMatchObject({ kind: 'hole', diameter: 28, depth: 'through' });
    expect(built.fixings.map(({ item }) => item)).toContain('Turn button with screw');
  });

  test('hinged on the other side is cut as its mirror image', () => {
    for (const lock of ['mortise-lock', 'rim-lock', 'turn-button'] as const) {
      const [left, right] = (['left', 'right'] as const).map((hinged) => buildOf[kind]({ lock, hinged }));
      if (!left || !right) throw new Error('no doors');
      const places = (built: BuiltPiece, mirrored: boolean) =>
        ['forend of', 'case of', 'handle of', 'keyhole', 'finger'].flatMap((start) =>
          cutsWith(built, start).map(({ part, one }) => {
            const at = part.placements[0];
            if (!at) throw new Error('not placed');
            const point =
              one.kind === 'hole'
                ? { x: one.x, y: one.y, z: 0 }
                : one.kind === 'recess'
                  ? {
                      x: (one.box.min.x + one.box.max.x) / 2,
                      y: (one.box.min.y + one.box.max.y) / 2,
                      z: (one.box.min.z + one.box.max.z) / 2,
                    }
                  : { x: NaN, y: NaN, z: NaN };
            const p = placePoint(at, point);
            const x = mirrored ? worked(built, 'Wd') - p.x : p.x;
            return [x, p.y, p.z].map((value) => value.toFixed(6)).join();
          }),
        );
      expect(places(right, true).sort()).toEqual(places(left, false).sort());
    }
  });
});

describe('findings on locks', () => {
  const find = (built: BuiltPiece, code: string) => built.findings.find((one) => one.code === code);

  test('a door too thin for the case stops', () => {
    const thick = buildOf.framed({ lock: 'mortise-lock' });
    expect(find(thick, 'wall-too-thin')).toBeUndefined();
    const found = find(buildOf.framed({ lock: 'mortise-lock', lockCaseThickness: 12 }), 'wall-too-thin');
    expect(found?.message).toContain('Door beside the case of the lock: 4 of wood is left; it needs 5.');
  });

  test('a stile too narrow for the case stops', () => {
    const found = find(buildOf.framed({ lock: 'mortise-lock', stile: 50 }), 'wall-too-thin');
    expect(found?.message).toContain('Stile behind the case of the lock: 0 of wood is left');
  });

  test('a case through the joint of a rail warns, and the height advised is clear', () => {
    const rail = { midRails: 1, lock: 'mortise-lock' };
    const usual = buildOf.framed(rail);
    expect(find(usual, 'lock-meets-joint')).toBeUndefined(); // left out, it keeps clear of itself
    const clash = find(buildOf.framed({ ...rail, lockHeight: 460 }), 'lock-meets-joint');
    const better = Number(/handle at ([\d.]+)/.exec(clash?.remedy ?? '')?.[1]);
    expect(better).toBeGreaterThan(0);
    expect(find(buildOf.framed({ ...rail, lockHeight: better }), 'lock-meets-joint')).toBeUndefined();
  });

  test.each([
    ['lock-off-door', { lock: 'mortise-lock', lockHeight: 20 }],
    ['forend-too-wide', { lock: 'mortise-lock', forendWidth: 19 }],
    ['backset-outside-case', { lock: 'mortise-lock', lockBackset: 50, lockDepth: 40 }],
    ['rim-lock-wide', { lock: 'rim-lock', lockDepth: 80 }],
    ['lock-hole-near-edge', { lock: 'turn-button', lockBackset: 15 }],
    ['lock-hand', { lock: 'mortise-lock' }],
    ['lock-at-rebate', { lock: 'mortise-lock', leaf: 'first', meeting: 'rebate' }],
  ])('%s', (code, parameters) => {
    expect(find(buildOf.framed(parameters), code)?.message).toMatch(/\d/);
  });

  test('vent slots in the way of a lock in a sheet', () => {
    const slots = { slots: 6, slotZone: 480, slotEdge: 650, slotLength: 200, lock: 'mortise-lock' };
    expect(
      find(buildOf.flat({ ...slots, lockHeight: 700, lockDepth: 60 }), 'lock-meets-joint'),
    ).toBeDefined();
  });

  test('a depth of lock alone, as in files from before there was a choice, is a mortise lock in a sheet', () => {
    const built = buildOf.flat({ lockDepth: 40 });
    expect(worked(built, 'case_D')).toBe(40);
    expect(cutsWith(built, 'case of the lock').map(({ part }) => part.name)).toEqual([
      'Core',
      'Lipping, lock edge',
    ]);
  });
});

const locks: readonly Lock[] = ['face-latch', 'mortise-lock', 'rim-lock', 'turn-button', 'none'];
const sensible = fc.record({
  kind: fc.constantFrom(...kinds),
  lock: fc.constantFrom(...locks),
  hinged: fc.constantFrom('left' as const, 'right' as const),
  leaf: fc.constantFrom('whole' as const, 'first' as const, 'second' as const),
  meeting: fc.constantFrom('gap' as const, 'rebate' as const),
  width: fc.integer({ min: 700, max: 1050 }),
  height: fc.integer({ min: 600, max: 1800 }),
  lockHeight: fc.oneof(fc.constant(undefined), fc.integer({ min: 100, max: 560 })),
  lockDepth: fc.integer({ min: 30, max: 60 }),
  lockCaseThickness: fc.integer({ min: 6, max: 10 }),
  midRails: fc.integer({ min: 0, max: 2 }),
});

describe('always:', () => {
  const build = ({ kind, midRails, ...rest }: typeof sensible extends fc.Arbitrary<infer T> ? T : never) =>
    buildOf[kind]({ ...rest, ...(kind !== 'flat' && { midRails }) });

  test('whatever the lock and the leaf, cuts stay inside their parts and numbers can be worked out again', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectWorking(built);
        for (const found of built.findings) expect(found.message).not.toMatch(/NaN|undefined/);
      }),
      { numRuns: 150 },
    );
  });

  test('sizes of locks and meetings outside all sense give findings, never a size below nothing or no number', () => {
    const wild = fc.oneof(
      fc.integer({ min: -50, max: 2000 }),
      fc.constantFrom(0, NaN, Infinity, -Infinity, 1e-9, 1e12),
    );
    const keys = ['lockHeight', 'lockBackset', 'lockDepth', 'lockCaseHeight', 'lockCaseThickness'];
    const more = ['forendHeight', 'forendWidth', 'forendThickness', 'meetingGap', 'meetingRebate', 'height'];
    const any = fc.record(
      {
        ...Object.fromEntries([...keys, ...more].map((key) => [key, wild])),
        kind: fc.constantFrom(...kinds),
        lock: fc.constantFrom(...locks),
        leaf: fc.constantFrom('whole' as const, 'first' as const, 'second' as const),
        meeting: fc.constantFrom('gap' as const, 'rebate' as const),
      },
      { requiredKeys: ['kind'] },
    );
    fc.assert(
      fc.property(any, ({ kind, ...parameters }) => {
        const built = buildOf[kind as (typeof kinds)[number]](parameters);
        expectSound(built);
        expectPlainWords(built);
      }),
      { numRuns: 300 },
    );
  });

  test('no two parts are in the same wood at the lock edge', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const { min, max } = built.envelope;
        const edge = (from: number, to: number) => ({ min: { ...min, x: from }, max: { ...max, x: to } });
        const at = parameters.hinged === 'left' ? edge(max.x - 80, max.x) : edge(min.x, min.x + 80);
        expect(overlaps(built, spreadPoints(at.min, at.max, 500))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('two doors that meet fill their opening with the gap between them, and the lap of one lies under the other', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const [first, second] = (['first', 'second'] as const).map((leaf) =>
          build({ ...parameters, leaf, hinged: leaf === 'first' ? 'left' : 'right' }),
        );
        if (!first || !second) throw new Error('no doors');
        const lap = parameters.meeting === 'rebate' ? worked(first, 'lap') : 0;
        const both = worked(first, 'Wd') + worked(second, 'Wd');
        expect(both + worked(first, 'gm') - lap).toBeCloseTo(parameters.width, 9);
        expect(first.envelope.max.x).toBeCloseTo(worked(first, 'Wd'), 9);
        if (lap === 0) return;
        const left = worked(first, 'T') - worked(first, 'lap_D'); // of the first over that of the second
        const room = worked(first, 'T') - left - (worked(second, 'T') - worked(second, 'lap_D'));
        expect(room).toBeCloseTo(1 + 2 * worked(first, 'f_v'), 9);
      }),
      { numRuns: 60 },
    );
  });

  test('a cut mirrored twice is the same', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        for (const part of build(parameters).parts)
          for (const one of part.machining) {
            const back = mirrorMachining(mirrorMachining(one, 'x', part.finished), 'x', part.finished);
            expect(JSON.parse(JSON.stringify(back, round))).toEqual(JSON.parse(JSON.stringify(one, round)));
          }
      }),
      { numRuns: 30 },
    );
  });
});

const round = (_: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toFixed(6)) + 0 : value;

test('the mid rails of a louvred door part its slats into even fields', () => {
  const built = buildPiece(louvred({ height: 1500, midRails: 1 }), framedContext());
  expect(codesOf(built)).not.toContain('mid-rail-wanted');
  expect(codesOf(buildPiece(louvred({ height: 1500 }), framedContext()))).toContain('mid-rail-wanted');
  const v = (name: string) => worked(built, name);
  expect(2 * v('clear') + v('wm') + v('wt') + v('wb')).toBeCloseTo(v('Hd'), 9);
  const slat = built.parts.find(({ name }) => name === 'Slat');
  expect(slat?.placements).toHaveLength(2 * v('nl'));
  expect(built.parts.find(({ name }) => name === 'Mid rail')?.placements).toHaveLength(1);
});
