import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, newPiece } from '#core/joinery';
import type { BuildContext, BuiltPiece, Piece, SlatLiningParameters } from '#core/joinery';
import { framedContext, framedMaterials } from '../../support/framed-doors.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { curlewOpening, openingShape } from '../../support/joinery-samples.ts';
import { countAt, isStopped, massRatio, testAlways } from '../../support/joinery-properties.ts';

const lining = (parameters: Partial<SlatLiningParameters> = {}): Extract<Piece, { kind: 'slat-lining' }> => ({
  kind: 'slat-lining',
  id: 'lining',
  letter: 'S',
  name: 'Ceiling over the berth',
  parameters: { run: 1200, span: 742, materials: { slats: 'oak', cleats: 'oak' }, ...parameters },
});

const build = (
  parameters: Partial<SlatLiningParameters> = {},
  more: Partial<BuildContext> = {},
): BuiltPiece => buildPiece(lining(parameters), framedContext(more));

// Slats of 45 in a clear 742 with gaps of about 8: as printed in the trade rulebook's calculated example (joinery B4).
describe('the worked slats', () => {
  test('14 slats with gaps of 7.467', () => {
    const built = build();
    expect(worked(built, 'n')).toBe(14);
    expect(worked(built, 'g')).toBeCloseTo(7.467, 3);
  });
  test('slats of 44.429 keep the gap of 8', () => {
    const built = build({ adjust: 'slat' });
    expect(worked(built, 's')).toBeCloseTo(44.429, 3);
    expect(worked(built, 'g')).toBe(8);
  });
  test('without gaps at the ends the first and the last slat touch the sides', () => {
    const built = build({ endGaps: false });
    const ys = built.parts[0]?.placements.map((at) => at.origin.y) ?? [];
    expect(Math.min(...ys)).toBeCloseTo(45, 9);
    expect(Math.max(...ys)).toBeCloseTo(742, 9);
  });
});

describe('findings', () => {
  test('slats that swell more than their gap leaves', () => {
    const found = build({ gap: 2, slatWidth: 70, adjust: 'slat' }).findings.find(
      ({ code }) => code === 'slats-swell',
    );
    expect(found?.message).toMatch(
      /A slat swells [\d.]+ aboard; a gap of [\d.]+ is too small, [\d.]+ is the least\./,
    );
  });
  test('gaps and widths that come out beyond what is usual', () => {
    expect(codesOf(build({ span: 130, slatWidth: 70 }))).toContain('gap-unusual');
    expect(codesOf(build({ span: 100, adjust: 'slat', slatWidth: 70 }))).toContain('slat-width-unusual');
  });
  test('a size left out without a shape is asked for', () => {
    const built = build({ run: undefined });
    expect(built.findings[0]?.message).toBe('Ceiling over the berth: the size along the slats is not known.');
  });
  test('ten thousand slats are a slip of the unit', () => {
    expect(build({ span: 9900, slatWidth: 20, gap: 4 }).findings[0]?.code).toBe('slats-too-many');
  });
});

describe('size from a shape', () => {
  test('of an opening the smaller sides, the slats 1 short of them at each end', () => {
    const shape = openingShape(curlewOpening);
    const built = build({ run: undefined, span: undefined }, { shape, shapeName: 'Locker side' });
    const { BL, BR, TR, TL } = shape.points as Record<string, { x: number; y: number }>;
    const length = (a = { x: 0, y: 0 }, b = { x: 0, y: 0 }) => Math.hypot(a.x - b.x, a.y - b.y);
    expect(worked(built, 'run')).toBeCloseTo(Math.min(length(BL, BR), length(TL, TR)) - 2, 9);
    expect(worked(built, 'O')).toBeCloseTo(Math.min(length(BL, TL), length(BR, TR)), 9);
    expect(built.working.find(({ name }) => name === 'O')?.source).toBe('shape Locker side');
    // what was measured and what is left free can be followed
    expect(built.working.find(({ name }) => name === 'clear')?.source).toBe('shape Locker side');
    expect(built.working.find(({ name }) => name === 'run')?.formula).toBe('clear - 2*free');
  });
  test('of hull sections the length and the longest girth', () => {
    const section = (at: number, bulge: number) => ({
      name: `S${at}`,
      at,
      line: [
        { x: 0, y: 0 },
        { x: bulge, y: 300 },
        { x: 0, y: 600 },
      ],
      bevels: [],
      sigma: 1,
    });
    const shape = {
      ...openingShape(curlewOpening),
      kind: 'sections' as const,
      sections: [section(0, 80), section(900, 120)],
    };
    const built = build({ run: undefined, span: undefined }, { shape, shapeName: 'Hull' });
    expect(worked(built, 'run')).toBe(900);
    expect(worked(built, 'O')).toBeCloseTo(2 * Math.hypot(300, 120), 9);
    expect(codesOf(built)).toContain('lining-on-curve');
  });
});

const sensible: fc.Arbitrary<Partial<SlatLiningParameters>> = fc.record({
  run: fc.integer({ min: 300, max: 3000 }),
  span: fc.integer({ min: 200, max: 2000 }),
  direction: fc.constantFrom('across' as const, 'upright' as const),
  slatWidth: fc.integer({ min: 25, max: 65 }),
  gap: fc.integer({ min: 4, max: 12 }),
  adjust: fc.constantFrom('gap' as const, 'slat' as const),
  endGaps: fc.boolean(),
  slatThickness: fc.integer({ min: 8, max: 15 }),
});

describe('always:', () => {
  testAlways<SlatLiningParameters>({
    build,
    sensible,
    numbers: [
      'run',
      'span',
      'slatWidth',
      'gap',
      'slatThickness',
      'cleatWidth',
      'cleatThickness',
      'cleatSpacing',
    ],
    choices: { direction: ['across', 'upright'], adjust: ['gap', 'slat'], endGaps: [true, false] },
  });
  test('slats and gaps add up to the span, and every slat lies on every cleat', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const v = (name: string) => worked(built, name);
        expect(v('n') * v('s') + v('gaps') * v('g')).toBeCloseTo(v('O'), 9);
        const upright = parameters.direction === 'upright';
        const [slats, cleats] = built.parts;
        const along = (point: { x: number; y: number }) => (upright ? point.x : point.y);
        const starts = slats?.placements.map((at) => along(at.origin) - (upright ? 0 : v('s'))) ?? [];
        expect(Math.min(...starts)).toBeCloseTo(v('first'), 9);
        expect(Math.max(...starts) + v('s') + v('first')).toBeCloseTo(v('O'), 6);
        for (const hole of cleats?.machining ?? [])
          if (hole.kind === 'hole')
            expect(starts.some((from) => Math.abs(from + v('s') / 2 - hole.x) < 1e-6)).toBe(true);
        // in the middle of the lining: slat in front, cleat behind
        const { min, max } = built.envelope;
        for (const { x, y } of spreadPoints(min, max, 60)) {
          const there = countAt(built, { x, y, z: -v('t') / 2 });
          expect(there).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 60 },
    );
  });
  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        expect(Math.abs(massRatio(built, { oak: 680 }) - 1)).toBeLessThan(0.06);
      }),
      { numRuns: 20 },
    );
  });
});

test('a new one of a usual size can be made', () => {
  const piece = newPiece('slat-lining', { id: 'n', letter: 'N', name: 'New', materials: framedMaterials });
  expect(buildPiece(piece, framedContext()).findings.filter(({ severity }) => severity !== 'note')).toEqual(
    [],
  );
});
