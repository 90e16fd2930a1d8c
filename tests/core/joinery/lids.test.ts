import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInside, type Point, type Shape } from '#core/geometry';
import { buildPiece, newPiece } from '#core/joinery';
import type { BuiltPiece, LidsParameters, Material, Piece } from '#core/joinery';
import { defaultSettings } from '#core/joinery';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { countAt, isStopped, massRatio, testAlways } from '../../support/joinery-properties.ts';

const materials: readonly Material[] = [
  { id: 'ply12', kind: 'sheet', name: 'Marine ply 12', thickness: 12, density: 550 },
  { id: 'ply9', kind: 'sheet', name: 'Marine ply 9', thickness: 9, density: 550 },
  { id: 'oak', kind: 'solid', name: 'Oak, planed', species: 'Oak, European', state: 'planed', density: 680 },
];

const lids = (parameters: Partial<LidsParameters> = {}): Extract<Piece, { kind: 'lids' }> => ({
  kind: 'lids',
  id: 'lids',
  letter: 'B',
  name: 'Berth lids',
  parameters: { length: 1840, width: 610, materials: { lids: 'ply12', cleats: 'oak' }, ...parameters },
});

const build = (parameters: Partial<LidsParameters> = {}, shape: Shape | null = null): BuiltPiece =>
  buildPiece(lids(parameters), { shape, shapeName: 'Berth', materials, settings: defaultSettings });

/** An outline with straight edges between corners A, B, C, …, known exactly. */
function outline(corners: readonly Point[], kind: 'opening' | 'outline' = 'outline'): Shape {
  const names =
    kind === 'opening' ? ['BL', 'BR', 'TR', 'TL'] : corners.map((_, i) => String.fromCharCode(65 + i));
  return {
    kind,
    seenFrom: 'from above, looking forward',
    points: Object.fromEntries(corners.map((corner, i) => [names[i] ?? '', corner])),
    edges: names.map((from, i) => {
      const to = names[(i + 1) % names.length] ?? '';
      return { name: `${from}${to}`, from, to };
    }),
    order: [],
    covariance: [],
    tilt: 0,
  };
}

// Aperture 1840 × 610, cleats of 20, gaps of 3, ply of 12 at 550 kg/m³ and 7000 N/mm². Every value as printed in the trade
// rulebook's calculated example (joinery B10), whose arithmetic was evaluated there.
describe('the worked lids', () => {
  const built = build();
  test.each([
    ['n', 3, 2],
    ['lid_L', 609.33, 2],
    ['lid_W', 604, 2],
    ['bearing', 17, 2],
    ['lid_mass', 2.43, 2],
    ['I', 87744, -0.5],
    ['sag', 4.93, 2],
    ['sag_limit', 5.7, 2],
  ])('%s is %d', (name, value, digits) => {
    expect(worked(built, name)).toBeCloseTo(value, digits);
  });
  test('ply of 9 sags 11.7 and is reported with the thickness that does', () => {
    const thin = build({ materials: { lids: 'ply9', cleats: 'oak' } });
    expect(worked(thin, 'sag')).toBeCloseTo(11.7, 1);
    expect(thin.findings.find(({ code }) => code === 'lid-sags')?.remedy).toMatch(/^Take a sheet 12 thick/);
    expect(codesOf(built)).not.toContain('lid-sags');
  });
  test('its parts: three lids alike, two bearers on four blocks, cleats all round', () => {
    expect(built.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`)).toEqual([
      'B1 Lid 3',
      'B2 Cross bearer 2',
      'B3 Block 4',
      'B4 Cleat 1 2',
      'B5 Cleat 2 2',
    ]);
  });
  test('face grain runs from cleat to cleat', () => {
    const [lid] = built.parts;
    expect(lid?.grain).toBe('along-length');
    expect(lid?.placements[0]?.xAxis).toEqual({ x: 0, y: 1, z: 0 });
  });
  test('nothing stands against it', () => {
    expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});

describe('findings', () => {
  test('a bearing below 15 (B10.1), on cleats and on bearers', () => {
    const found = build({ gap: 6 }).findings.find(({ code }) => code === 'bearing-small');
    expect(found?.message).toBe('A lid bears 14 on its cleats; 15 is the least.');
    expect(build({ bearerWidth: 32 }).findings.map(({ message }) => message)).toContain(
      'A lid bears 14.5 on its cross bearers; 15 is the least.',
    );
  });
  test('a finger hole over a bearer (B10.2)', () => {
    expect(codesOf(build({ holeIn: 45 }))).toContain('hole-over-bearer');
    expect(codesOf(build({ lids: 16 }))).toContain('hole-over-bearer');
    expect(codesOf(build())).not.toContain('hole-over-bearer');
  });
  test('a lid over 6 kg (B10.3)', () => {
    expect(codesOf(build({ lids: 1 }))).toContain('lid-heavy');
  });
  test('few vents are a note', () => {
    expect(codesOf(build({ ventPitch: 200, ventDiameter: 15 }))).toContain('vents-few');
  });
  test('neither a shape nor both sizes: nothing to make', () => {
    expect(build({ width: undefined }).findings[0]?.code).toBe('aperture-missing');
  });
});

describe('a tapered aperture', () => {
  // 1840 long, 610 wide at the left and 410 at the right, as of a quarter berth
  const corners = [
    { x: 100, y: 50 },
    { x: 1940, y: 50 },
    { x: 1940, y: 460 },
    { x: 100, y: 660 },
  ];
  test('each lid has its own outline and number', () => {
    const built = build({ length: undefined, width: undefined }, outline(corners, 'opening'));
    const own = built.parts.filter(({ name }) => name.startsWith('Lid'));
    expect(own.map(({ name }) => name)).toEqual(['Lid 1', 'Lid 2', 'Lid 3']);
    const widths = own.map(({ finished }) => finished.length);
    expect([...widths].sort((a, b) => b - a)).toEqual(widths);
    // by similar triangles: the slope of the far side is 200 in 1840, and 3 square to it is 3 / cos along y
    const slope = 200 / 1840;
    const far = (x: number) => 610 - slope * x - 3 * Math.hypot(1, slope);
    expect(widths[0]).toBeCloseTo(far(3) - 3, 6);
  });
  test('an outline with a notch or a cut corner is followed too', () => {
    const cut = [
      { x: 0, y: 0 },
      { x: 1500, y: 0 },
      { x: 1500, y: 400 },
      { x: 1300, y: 600 },
      { x: 0, y: 600 },
    ];
    const built = build({ length: undefined, width: undefined }, outline(cut));
    expect(built.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    const area = built.parts
      .filter(({ name }) => name.startsWith('Lid'))
      .flatMap((part) => part.placements.map(() => part.outline));
    expect(area.at(-1)).toHaveLength(5);
  });
});

const sensible: fc.Arbitrary<Partial<LidsParameters>> = fc.record({
  length: fc.integer({ min: 400, max: 2400 }),
  width: fc.integer({ min: 350, max: 800 }),
  gap: fc.integer({ min: 2, max: 5 }),
  cleatWidth: fc.integer({ min: 20, max: 40 }),
  bearerWidth: fc.integer({ min: 40, max: 80 }),
  vents: fc.boolean(),
});

describe('always:', () => {
  testAlways<LidsParameters>({
    build,
    sensible,
    numbers: [
      'length',
      'width',
      'lids',
      'gap',
      'cleatWidth',
      'cleatThickness',
      'bearerWidth',
      'holeDiameter',
      'holeIn',
      'ventDiameter',
      'ventPitch',
    ],
    choices: { vents: [true, false] },
  });

  test('lids fill the aperture but for their gaps and holes; every vent is clear of what is under it', () => {
    const taper = fc.record({ right: fc.integer({ min: 300, max: 700 }), parameters: sensible });
    fc.assert(
      fc.property(taper, ({ right, parameters }) => {
        const { length = 0, width = 0, gap = 0, ...rest } = parameters;
        const corners = [
          { x: 0, y: 0 },
          { x: length, y: 0 },
          { x: length, y: Math.min(right, width) },
          { x: 0, y: width },
        ];
        const built = build(
          { ...rest, gap, length: undefined, width: undefined },
          outline(corners, 'opening'),
        );
        expect(isStopped(built)).toBe(false);
        const { min, max } = built.envelope;
        for (const { x, y } of spreadPoints(min, max, 400)) {
          const there = countAt(built, { x, y, z: -1 });
          const inside = isInside({ x, y }, corners);
          expect(there).toBeLessThanOrEqual(inside ? 1 : 0);
        }
        // wood at lid level by area: aperture less what the gaps take
        const area = built.working.find(({ name }) => name === 'lids_area')?.value ?? 0;
        const n = worked(built, 'n');
        const whole = (length * (width + Math.min(right, width))) / 2;
        const sides = 2 * length + 2 * width + (width - Math.min(right, width));
        const gaps = gap * (sides + (n - 1) * width);
        expect(whole - area).toBeGreaterThan(0);
        expect(whole - area).toBeLessThan(gaps * 1.1);
        for (const part of built.parts.filter(({ name }) => name.startsWith('Lid')))
          for (const hole of part.holes.slice(1))
            for (const { x, y } of hole)
              for (const at of part.placements)
                expect(countAt(built, { x: at.origin.x + y, y: at.origin.y + x, z: -13 })).toBe(0);
      }),
      { numRuns: 50 },
    );
  });

  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, vents: false });
        if (isStopped(built)) return;
        expect(Math.abs(massRatio(built, { ply12: 550, oak: 680 }, 12000) - 1)).toBeLessThan(0.06);
      }),
      { numRuns: 15 },
    );
  });
});

test('a new one of a usual size can be made', () => {
  const piece = newPiece('lids', { id: 'n', letter: 'N', name: 'New', materials });
  const built = buildPiece(piece, { shape: null, materials, settings: defaultSettings });
  expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
});
