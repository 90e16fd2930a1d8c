import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, FramedDoorParameters } from '#core/joinery';
import type { Point3 } from '#core/geometry';
import { framedContext, framedDoor } from '../../support/framed-doors.ts';
import { spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';
import { expectPlainWords, expectSound, expectWorking } from '../../support/joinery-sound.ts';

const joints = [
  'haunched-tenon',
  'through-tenon',
  'stub-tenon',
  'groove-tongue',
  'bridle',
  'scribed-moulding',
  'loose-tenon',
  'dowel',
  'half-lap',
] as const;

const sensible: fc.Arbitrary<Partial<FramedDoorParameters>> = fc.record({
  width: fc.integer({ min: 280, max: 750 }),
  height: fc.integer({ min: 450, max: 1800 }),
  hinged: fc.constantFrom('left' as const, 'right' as const),
  thickness: fc.integer({ min: 18, max: 28 }),
  stile: fc.integer({ min: 45, max: 90 }),
  topRail: fc.integer({ min: 45, max: 90 }),
  bottomRail: fc.integer({ min: 55, max: 120 }),
  midRails: fc.integer({ min: 0, max: 2 }),
  midRail: fc.integer({ min: 45, max: 80 }),
  midStile: fc.constantFrom('none' as const, 'one' as const),
  joint: fc.constantFrom(...joints),
  tenon: fc.constant(undefined),
  grooveDepth: fc.integer({ min: 8, max: 11 }),
  panelThickness: fc.integer({ min: 6, max: 10 }),
  bevelDegrees: fc.constantFrom(0, 2.5),
  materials: fc.constantFrom(
    { frame: 'oak', panel: 'mahogany' },
    { frame: 'mahogany', panel: 'ply6' },
    { frame: 'mahogany', panel: 'ply9' },
  ),
});

const build = (parameters: Partial<FramedDoorParameters>): BuiltPiece =>
  buildPiece(framedDoor(parameters), framedContext());

const partsAt = (built: BuiltPiece, point: Point3) =>
  built.parts.flatMap((part) => part.placements.filter((at) => occupies(part, point, at)).map(() => part));

describe('always:', () => {
  test('every part is a positive size, square and its machining inside it; every number can be worked out again', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        if (built.parts.length > 0) expectWorking(built);
      }),
      { numRuns: 200 },
    );
  });

  test('sizes outside all sense give findings, never a size below nothing or no number', () => {
    const wild = fc.oneof(
      fc.integer({ min: -50, max: 2000 }),
      fc.constantFrom(0, NaN, Infinity, -Infinity, 1e-9, 1e12),
    );
    const keys = ['width', 'height', 'thickness', 'stile', 'topRail', 'bottomRail', 'midRails', 'midRail'];
    const more = [
      'tenon',
      'grooveDepth',
      'panelThickness',
      'panelEdge',
      'panelGap',
      'hingeLength',
      'bevelDegrees',
    ];
    const any = fc.record(
      {
        ...Object.fromEntries([...keys, ...more].map((key) => [key, wild])),
        joint: fc.constantFrom(...joints),
        midStile: fc.constantFrom('none' as const, 'one' as const),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(any, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectPlainWords(built);
      }),
      { numRuns: 300 },
    );
  });

  test('no two parts are in the same wood, at joints least of all', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (built.findings.some(({ severity }) => severity === 'stop')) return;
        const { min, max } = built.envelope;
        const v = (name: string) => worked(built, name);
        const corner = { x: v('ws') + 12, y: v('wb') + 12, z: max.z };
        const top = { x: max.x - v('ws') - 12, y: max.y - v('wt') - 12, z: min.z };
        const points = [
          ...spreadPoints(min, max, 300),
          ...spreadPoints(min, corner, 300),
          ...spreadPoints(top, max, 300),
        ];
        expect(overlaps(built, points)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('seen from the face, the frame fills the door but for the panels, and each panel lies behind its opening', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0 });
        if (built.findings.some(({ severity }) => severity === 'stop')) return;
        const { width = 0, height = 0 } = parameters;
        const panel = built.parts.find(({ name }) => name === 'Panel');
        const depth = -worked(built, 'panel_z') - worked(built, 'tp') + 0.3; // just in front of the back of the panel
        const behind = spreadPoints({ x: 2.5, y: 0.5, z: 0 }, { x: width - 2.5, y: height - 0.5, z: 0 }, 300);
        const tenon = (point: Point3) => partsAt(built, { ...point, z: -0.5 }).filter((one) => one !== panel);
        for (const point of behind) {
          const [inFront, atPanel] = [tenon(point), partsAt(built, { ...point, z: depth })];
          const through =
            parameters.joint === 'scribed-moulding' &&
            inFront.length === 0 &&
            !atPanel.includes(panel as never);
          if (inFront.length === 0 && !through) expect(atPanel).toEqual([panel]);
          expect(inFront.length).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0, joint: 'haunched-tenon' });
        if (built.findings.some(({ severity }) => severity === 'stop')) return;
        const { min, max } = built.envelope;
        const count = 6000;
        const volume = (max.x - min.x) * (max.y - min.y) * (max.z - min.z);
        const density = { mahogany: 543, oak: 680, ply6: 550, ply9: 550 } as const;
        const kg = spreadPoints(min, max, count).reduce((sum, point) => {
          const [part] = partsAt(built, point);
          return sum + (part ? density[part.material as keyof typeof density] : 0);
        }, 0);
        expect(((kg / count) * volume) / 1e9 / worked(built, 'mass')).toBeCloseTo(1, 1);
      }),
      { numRuns: 20 },
    );
  });
});

describe('corners fill, but for the room left for glue', () => {
  test.each(joints)('%s', (joint) => {
    const built = build({
      joint,
      tenon: undefined,
      bevelDegrees: 0,
      hinged: 'right',
      materials: { frame: 'oak', panel: 'ply6' },
    });
    const v = (name: string) => worked(built, name);
    for (const [low, high] of [
      [
        { x: 0, y: 0, z: -20 },
        { x: v('ws'), y: v('wb'), z: 0 },
      ],
      [
        { x: 399 - v('ws'), y: 679 - v('wt'), z: -20 },
        { x: 399, y: 679, z: 0 },
      ],
    ] as const) {
      const points = spreadPoints(low, high, 8000);
      const empty = points.filter((point) => partsAt(built, point).length === 0);
      // outside the inner square, where the panel's corner sits in the groove and a moulding turns the corner
      const inner = (x: number, y: number) => {
        const [dx, dy] = low.x === 0 ? [v('ws') - x, v('wb') - y] : [x - low.x, y - low.y];
        return dx < 10 && dy < 10;
      };
      const left = empty.filter(({ x, y }) => !inner(x, y));
      expect(left.length / points.length).toBeLessThan(0.02);
      // glue room is there: nothing is a press fit
      if (joint !== 'groove-tongue') expect(empty.length).toBeGreaterThan(0);
    }
  });
  test('the room in a haunched corner is that of the mortise: 0.5 longer, 1.5 deeper, 0.2 wider', () => {
    const built = build({
      tenon: 30,
      bevelDegrees: 0,
      hinged: 'right',
      materials: { frame: 'oak', panel: 'ply6' },
    });
    const [b, hh] = [worked(built, 'tenon_b_top'), worked(built, 'hh')];
    const points = spreadPoints({ x: 0, y: 679 - 55, z: -20 }, { x: 45, y: 679, z: 0 }, 40000);
    const empty = points.filter((point) => partsAt(built, point).length === 0).length;
    const mortise = (b + 0.25) * 31.5 * 6.2 - b * 30 * 6 - 10 * (6.2 - 6) * b; // the part within the groove is not counted
    const volume = (empty / points.length) * 45 * 55 * 20;
    expect(volume).toBeGreaterThan(0.7 * mortise);
    expect(volume).toBeLessThan(1.4 * mortise + hh * 10 * 0.2);
  });
});
