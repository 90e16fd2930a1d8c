import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineArea, placePoint } from '#core/geometry';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, FlatDoorParameters } from '#core/joinery';
import { spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { doorContext, flatDoor } from '../../support/flat-doors.ts';
import { expectPlainWords, expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const sensible: fc.Arbitrary<Partial<FlatDoorParameters>> = fc.record({
  width: fc.integer({ min: 320, max: 750 }),
  height: fc.integer({ min: 500, max: 1900 }),
  hinged: fc.constantFrom('left' as const, 'right' as const),
  lipJoint: fc.constantFrom('butt' as const, 'mitre' as const, 'corner-block' as const),
  lipping: fc.integer({ min: 5, max: 15 }),
  hingeLipping: fc.integer({ min: 8, max: 30 }),
  lockLipping: fc.integer({ min: 5, max: 30 }),
  cornerRadius: fc.oneof(fc.constant(0), fc.double({ min: 1, max: 80, noNaN: true })),
  bevelDegrees: fc.constantFrom(0, 1, 2.5, 4),
  slots: fc.integer({ min: 0, max: 5 }),
  slotsRun: fc.constantFrom('upright' as const, 'across' as const),
  slotWidth: fc.integer({ min: 6, max: 14 }),
  slotLength: fc.integer({ min: 20, max: 110 }),
  slotZone: fc.integer({ min: 60, max: 130 }),
  battens: fc.constantFrom('auto' as const, 'always' as const, 'none' as const),
});

const build = (parameters: Partial<FlatDoorParameters>): BuiltPiece =>
  buildPiece(flatDoor(parameters), doorContext());

/** Sum over the leaf, without battens, of the areas of the parts' outlines times their number. */
function areaOfParts(built: BuiltPiece): number {
  return built.parts
    .filter((part) => part.name !== 'Batten')
    .reduce((sum, part) => sum + part.quantity * outlineArea(part.outline), 0);
}

/** Area of a rectangle with its four corners rounded. */
const roundedArea = (width: number, height: number, r: number) => width * height - (4 - Math.PI) * r ** 2;

describe('always:', () => {
  test('every part is a positive size, square and its machining inside it', () => {
    fc.assert(
      fc.property(sensible, (parameters) => expectSound(build(parameters))),
      { numRuns: 200 },
    );
  });

  test('sizes outside all sense give findings, never a size below nothing or no number', () => {
    const wild = fc.oneof(
      fc.integer({ min: -50, max: 2000 }),
      fc.constantFrom(0, NaN, Infinity, -Infinity, 1e-9, 1e12),
    );
    const keys = ['width', 'height', 'thickness', 'lipping', 'hingeLipping', 'cornerRadius', 'bevelDegrees'];
    const more = ['slots', 'slotWidth', 'slotLength', 'slotZone', 'slotEdge', 'pivotBeyond', 'gapSide'];
    const any = fc.record(Object.fromEntries([...keys, ...more].map((key) => [key, wild])), {
      requiredKeys: [],
    });
    fc.assert(
      fc.property(any, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        expectPlainWords(built);
      }),
      { numRuns: 400 },
    );
  });

  test('every size is the working it names, and every step can be worked out again from its numbers', () => {
    fc.assert(
      fc.property(sensible, (parameters) => expectWorking(build(parameters))),
      { numRuns: 100 },
    );
  });

  test('core, lippings and blocks fill the door: their outlines add up to it, corners rounded', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const { width = 0, height = 0, cornerRadius = 0 } = parameters;
        expect(areaOfParts(built)).toBeCloseTo(roundedArea(width, height, cornerRadius), 4);
      }),
      { numRuns: 200 },
    );
  });

  test('a point inside the rounded rectangle lies in one part, outside it in none', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0, battens: 'none' });
        const { width = 0, height = 0, cornerRadius: r = 0 } = parameters;
        const corners = [
          [0, 0],
          [width, 0],
          [0, height],
          [width, height],
        ].flatMap(([x = 0, y = 0]) =>
          spreadPoints({ x: x - 60, y: y - 60, z: -17 }, { x: x + 60, y: y + 60, z: -15 }, 120),
        );
        for (const point of corners) {
          // how far out of the rectangle shrunk by r, less r: negative inside the rounded one
          const dx = Math.max(r - point.x, point.x - (width - r), 0);
          const dy = Math.max(r - point.y, point.y - (height - r), 0);
          const rectangle = Math.max(-point.x, point.x - width, -point.y, point.y - height);
          const off = r > 0 && dx > 0 && dy > 0 ? Math.hypot(dx, dy) - r : rectangle;
          if (Math.abs(off) < 0.1) continue; // outlines are flattened to 0.05
          const there = built.parts.filter((part) => part.placements.some((at) => occupies(part, point, at)));
          if (off > 0) expect(there).toHaveLength(0);
          else expect(there.length).toBe(1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('no two parts are in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 500))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('the leading edge, and only it, is narrower at the back by T tan β', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, cornerRadius: 0, lipJoint: 'mitre', battens: 'none' });
        const { width = 0, height = 0, bevelDegrees = 0, hinged } = parameters;
        const lost = 18 * Math.tan((bevelDegrees * Math.PI) / 180);
        const inAny = (x: number, y: number, z: number) =>
          built.parts.some((part) => part.placements.some((at) => occupies(part, { x, y, z }, at)));
        const fromLock = (distance: number) => (hinged === 'left' ? width - distance : distance);
        for (const y of [0.7, height / 2 + 1, height - 0.7]) {
          expect(inAny(fromLock(0.05), y, -0.2)).toBe(lost / 90 < 0.05);
          expect(inAny(fromLock(lost * 0.9 + 0.05), y, -17.999)).toBe(lost < 0.5);
          expect(inAny(fromLock(lost + 0.05), y, -17.9)).toBe(true);
          expect(inAny(width - fromLock(0.05), y, -17.9)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('mass is volume times density of the door before slots, rounding and bevel', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, cornerRadius: 0, slots: 0, battens: 'none' });
        const volume = areaOfParts(built) * 18; // mm³
        expect(worked(built, 'mass')).toBeCloseTo((volume / 1e9) * 550, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('slots lie within the core, apart from each other', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const core = built.parts.find((part) => part.name === 'Core');
        const at = core?.placements[0];
        if (!core || !at) throw new Error('no core');
        const { width = 0, height = 0 } = parameters;
        for (const hole of core.holes)
          for (const point of hole) {
            const door = placePoint(at, { ...point, z: 0 });
            expect(Math.min(door.x, width - door.x, door.y, height - door.y)).toBeGreaterThan(5);
          }
        if (core.holes.length > 2) expect(worked(built, 'web')).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });

  test('the swing formula is the distance of the two edge corners from the pivot', () => {
    const pivots = fc.record({
      pivotBeyond: fc.double({ min: 0, max: 20, noNaN: true }),
      pivotProud: fc.double({ min: 0, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(sensible, pivots, (parameters, pivot) => {
        const built = build({ ...parameters, ...pivot });
        // swung step by step about the pin, the furthest reach of the leading edge beyond the closed face (joinery B2)
        const { width = 0, bevelDegrees = 0 } = parameters;
        const back = width - 18 * Math.tan((bevelDegrees * Math.PI) / 180);
        const pin = { x: -pivot.pivotBeyond, z: pivot.pivotProud };
        const reach = (x: number, z: number) =>
          Math.max(
            ...Array.from({ length: 4001 }, (_, i) => {
              const turn = (i / 4000) * 0.5;
              return pin.x + (x - pin.x) * Math.cos(turn) - (z - pin.z) * Math.sin(turn);
            }),
          );
        const swept = Math.max(reach(width, 0), reach(back, -18)) - width;
        expect(worked(built, 'g_min')).toBeCloseTo(swept, 2);
      }),
      { numRuns: 40 },
    );
  });
});
