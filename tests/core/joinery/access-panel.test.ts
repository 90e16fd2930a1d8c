import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, newPiece } from '#core/joinery';
import type { AccessPanelParameters, BuiltPiece, Material, Piece } from '#core/joinery';
import type { Shape } from '#core/geometry';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { openingShape } from '../../support/joinery-samples.ts';
import { countAt, isStopped, massRatio, testAlways } from '../../support/joinery-properties.ts';
import { occupies } from '../../support/joinery-solid.ts';

const materials: readonly Material[] = [
  { id: 'ply9', kind: 'sheet', name: 'Marine ply 9', thickness: 9, density: 550 },
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed', density: 680 },
];

const panel = (
  parameters: Partial<AccessPanelParameters> = {},
): Extract<Piece, { kind: 'access-panel' }> => ({
  kind: 'access-panel',
  id: 'panel',
  letter: 'P',
  name: 'Seacock panel',
  parameters: { width: 360, height: 280, materials: { panel: 'ply9', solid: 'oak' }, ...parameters },
});

const build = (parameters: Partial<AccessPanelParameters> = {}, shape: Shape | null = null): BuiltPiece =>
  buildPiece(panel(parameters), { shape, shapeName: 'Hole', materials, settings: defaultSettings });

// A hole 360 × 280, lap 15, gap 2, cleats 15, buttons 16 wide. Every value as printed in the trade rulebook's calculated
// example (joinery B14), whose arithmetic was evaluated there.
describe('the worked panel', () => {
  test.each([
    ['panel_W', 390],
    ['panel_H', 310],
    ['buttons', 4],
    ['e', 10],
    ['arm', 20],
  ])('lapped: %s is %d', (name, value) => {
    expect(worked(build(), name)).toBe(value);
  });
  test.each([
    ['panel_W', 356],
    ['bearing', 13],
  ])('inset: %s is %d', (name, value) => {
    expect(worked(build({ mount: 'inset' }), name)).toBe(value);
  });
  test('its parts: packers where it laps, cleats where it is inset', () => {
    const names = (built: BuiltPiece) => built.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`);
    expect(names(build())).toEqual(['P1 Panel 1', 'P4 Turn button 4', 'P5 Packer under a button 4']);
    expect(names(build({ mount: 'inset' }))).toEqual([
      'P1 Panel 1',
      'P2 Cleat, above and below 2',
      'P3 Cleat, side 2',
      'P4 Turn button 4',
    ]);
  });
  test('nothing stands against it either way', () => {
    for (const mount of ['lap', 'inset'] as const)
      expect(build({ mount }).findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});

describe('findings', () => {
  test('a bearing under 10 names the cleat that does', () => {
    const found = build({ mount: 'inset', gap: 3, cleatWidth: 12 }).findings.find(
      ({ code }) => code === 'panel-hold-small',
    );
    expect(found?.message).toBe('The panel bears 9 on its cleats; 10 is the least.');
    expect(found?.remedy).toMatch(/13 wide/);
  });
  test('a button that reaches too little, or does not clear the panel when open', () => {
    expect(codesOf(build({ arm: 18 }))).toContain('button-short');
    expect(codesOf(build({ pivot: 9 }))).toContain('button-in-the-way');
    expect(build({ pivot: 7 }).findings[0]).toMatchObject({ severity: 'stop', code: 'button-in-the-way' });
  });
  test('a gap eaten by the films', () => {
    expect(build({ mount: 'inset', gap: 1 }).findings[0]?.code).toBe('no-room-once-finished');
  });
  test('too little room to pull it out', () => {
    expect(codesOf(build({ pullRoom: 25 }))).toContain('panel-cannot-be-pulled');
    expect(codesOf(build({ pullRoom: 29 }))).not.toContain('panel-cannot-be-pulled');
  });
  test('a measured hole out of square: lapped for its largest, inset for its smallest sizes', () => {
    const shape = openingShape({ BL: [0, 0], BR: [360, 0], TR: [362, 280], TL: [-3, 280] });
    const size = { width: undefined, height: undefined };
    expect(worked(build(size, shape), 'hole_W')).toBeCloseTo(365, 6);
    const inset = build({ ...size, mount: 'inset' }, shape);
    expect(worked(inset, 'hole_W')).toBeCloseTo(360, 6);
    expect(codesOf(inset)).toContain('hole-not-square');
  });
  test('a hole neither measured nor entered is asked for', () => {
    expect(build({ width: undefined }).findings[0]?.code).toBe('hole-missing');
  });
});

const sensible: fc.Arbitrary<Partial<AccessPanelParameters>> = fc.record({
  width: fc.integer({ min: 150, max: 900 }),
  height: fc.integer({ min: 150, max: 900 }),
  mount: fc.constantFrom('lap' as const, 'inset' as const),
  lap: fc.integer({ min: 10, max: 30 }),
  gap: fc.integer({ min: 2, max: 4 }),
  buttonWidth: fc.integer({ min: 12, max: 24 }),
  notch: fc.constantFrom('hole' as const, 'ring' as const, 'none' as const),
});

describe('always:', () => {
  testAlways<AccessPanelParameters>({
    build,
    sensible,
    numbers: [
      'width',
      'height',
      'lap',
      'gap',
      'cleatWidth',
      'cleatThickness',
      'buttons',
      'buttonWidth',
      'buttonThickness',
      'pivot',
      'arm',
      'pullRoom',
    ],
    choices: { mount: ['lap', 'inset'], notch: ['hole', 'none'] },
  });

  test('the panel covers the hole or fills it less its gaps, and lies on its cleats', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, notch: 'none' });
        if (isStopped(built)) return;
        const { width = 0, height = 0, mount, gap = 0, lap = 0 } = parameters;
        const off = mount === 'lap' ? lap : -gap;
        const z = mount === 'lap' ? 0.5 : -0.5;
        const [sheet] = built.parts;
        const at = sheet?.placements[0];
        for (const { x, y } of spreadPoints(
          { x: -40, y: -40, z },
          { x: width + 40, y: height + 40, z },
          200,
        )) {
          const inside = x > -off && x < width + off && y > -off && y < height + off;
          expect(sheet && at && occupies(sheet, { x, y, z }, at)).toBe(inside);
        }
        // behind the rim of an inset panel is a cleat, all round
        if (mount === 'inset')
          for (const [x, y] of [
            [7, height / 2],
            [width - 7, height / 2],
            [width / 2, 7],
            [width / 2, height - 7],
            [7, 7],
          ])
            expect(countAt(built, { x: x ?? 0, y: y ?? 0, z: -9.5 })).toBe(1);
      }),
      { numRuns: 60 },
    );
  });

  test('closed buttons hold the panel, open ones let it out', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const { width = 0, height = 0 } = parameters;
        const off = worked(built, 'out');
        const buttons = built.parts.find(({ name }) => name === 'Turn button');
        for (const at of buttons?.placements ?? []) {
          const half = worked(built, 'bw') / 2;
          const pivot = {
            x: at.origin.x + (at.xAxis.x + at.yAxis.x) * half,
            y: at.origin.y + (at.xAxis.y + at.yAxis.y) * half,
          };
          const tip = {
            x: pivot.x + at.xAxis.x * worked(built, 'arm'),
            y: pivot.y + at.xAxis.y * worked(built, 'arm'),
          };
          const beyond = ({ x, y }: { x: number; y: number }) =>
            Math.max(-off - x, x - width - off, -off - y, y - height - off);
          expect(beyond(tip)).toBeLessThanOrEqual(-10 + 1e-9); // on the panel
          expect(beyond(pivot)).toBeGreaterThanOrEqual(half + 2 - 1e-9); // open, its side is 2 clear
        }
      }),
      { numRuns: 100 },
    );
  });

  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, notch: 'none' });
        if (isStopped(built)) return;
        expect(Math.abs(massRatio(built, { ply9: 550, oak: 680 }, 9000) - 1)).toBeLessThan(0.06);
      }),
      { numRuns: 15 },
    );
  });
});

test('a new one of a usual size can be made', () => {
  const piece = newPiece('access-panel', { id: 'n', letter: 'N', name: 'New', materials });
  const built = buildPiece(piece, { shape: null, materials, settings: defaultSettings });
  expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
});
