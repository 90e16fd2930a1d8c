import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, newPiece } from '#core/joinery';
import type { BuiltPiece, LouvredDoorParameters, Piece } from '#core/joinery';
import { framedContext, framedMaterials } from '../../support/framed-doors.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { countAt, isStopped, massRatio, testAlways } from '../../support/joinery-properties.ts';
import { occupies } from '../../support/joinery-solid.ts';

const door = (parameters: Partial<LouvredDoorParameters> = {}): Extract<Piece, { kind: 'louvred-door' }> => ({
  kind: 'louvred-door',
  id: 'louvres',
  letter: 'V',
  name: 'Engine locker',
  // clear between the stiles 300, between the rails 430
  parameters: { width: 410, height: 560, materials: { frame: 'oak', slats: 'oak' }, ...parameters },
});

const build = (parameters: Partial<LouvredDoorParameters> = {}): BuiltPiece =>
  buildPiece(door(parameters), framedContext());

// Slats of 7 × 27 at 40° in a door of 22, clear height 430, target overlap 3. Every value as printed in the trade
// rulebook's calculated example (joinery B4), whose arithmetic was evaluated there.
describe('the worked louvres', () => {
  const built = build({ slatWidth: 27 });
  test.each([
    ['clear', 430],
    ['depth', 22.72],
    ['vert', 25.18],
    ['p0', 22.18],
    ['nl', 20],
    ['p', 21.306],
    ['overlap', 3.877],
    ['air', 6.695],
    ['slat_L', 311.5],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 2);
  });
  test('a depth of 22.72 in a door of 22 is reported, with the width that goes in', () => {
    const found = built.findings.find(({ code }) => code === 'slat-too-deep');
    expect(found?.message).toMatch(/22\.72 from face to back; the door leaves 22/);
    expect(found?.remedy).toMatch(/^Make it 25\.5 wide/);
    expect(codesOf(build())).not.toContain('slat-too-deep');
  });
  test('left out, the slats are 25.5 wide; flush they are ripped 42.57 wide', () => {
    expect(worked(build(), 'b')).toBe(25.5);
    expect(worked(build({ section: 'flush' }), 'b')).toBeCloseTo(42.57, 2);
  });
  test('its parts, with two spare slats', () => {
    expect(built.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`)).toEqual([
      'V1 Stile, hinge edge 1',
      'V2 Stile, lock edge 1',
      'V3 Top rail 1',
      'V4 Bottom rail 1',
      'V5 Slat 22',
    ]);
    expect(built.parts[4]?.placements).toHaveLength(20);
  });
});

test('the housings of one stile are the mirror image of those of the other (B4.3)', () => {
  const built = build({ slatWidth: 27 });
  const housings = (id: string) =>
    built.parts
      .find((part) => part.id === id)
      ?.machining.flatMap((one) => (one.kind === 'prism' ? [one.outline] : [])) ?? [];
  const mirrored = housings('V2').map((outline) => outline.map(({ x, y }) => ({ x: 560 - x, y })));
  expect(housings('V1')).toHaveLength(20);
  housings('V1').forEach((outline, i) => {
    expect(mirrored[i]).toHaveLength(outline.length);
    for (const { x, y } of outline)
      expect(mirrored[i]?.some((other) => Math.hypot(other.x - x, other.y - y) < 1e-9)).toBe(true);
  });
});

describe('findings', () => {
  test('fewer slats than the overlap asks for can be seen through, a note (B4.1)', () => {
    const found = build({ slats: 14 }).findings.find(({ code }) => code === 'see-through');
    expect(found?.severity).toBe('note');
    expect(found?.message).toMatch(/^The slats overlap by −?-?[\d.]+: one can see through/);
    expect(codesOf(build({ overlap: 0 }))).not.toContain('see-through');
  });
  test('a housing that leaves less than 6 of the stile (B4.2)', () => {
    expect(codesOf(build({ stile: 11, tenon: 2, hingeLength: 45 }))).toContain('housing-near-edge');
  });
  test('slats longer than 60 thicknesses (B4.4) name the thickness that does', () => {
    const found = build({ width: 610 }).findings.find(({ code }) => code === 'slat-span');
    expect(found?.message).toBe('The slats span 500, more than 60 times their 7: 420.');
    expect(found?.remedy).toMatch(/slats 9 thick/);
    expect(codesOf(build({ width: 610, slatThickness: 9 }))).not.toContain('slat-span');
  });
  test('little air between thick slats', () => {
    expect(codesOf(build({ slatThickness: 9 }))).toContain('little-air');
  });
  test('flush edges at 40° want more tilt than a saw has', () => {
    expect(codesOf(build({ section: 'flush' }))).toContain('slat-edge-steep');
    expect(codesOf(build({ section: 'flush', angleDegrees: 45 }))).not.toContain('slat-edge-steep');
  });
});

const sensible: fc.Arbitrary<Partial<LouvredDoorParameters>> = fc.record({
  width: fc.integer({ min: 300, max: 560 }),
  height: fc.integer({ min: 350, max: 1200 }),
  hinged: fc.constantFrom('left' as const, 'right' as const),
  thickness: fc.integer({ min: 20, max: 32 }),
  stile: fc.integer({ min: 45, max: 90 }),
  joint: fc.constantFrom('stub-tenon' as const, 'loose-tenon' as const),
  section: fc.constantFrom('square' as const, 'flush' as const),
  angleDegrees: fc.integer({ min: 30, max: 55 }),
  slatThickness: fc.integer({ min: 6, max: 9 }),
  setback: fc.integer({ min: 0, max: 3 }),
  overlap: fc.integer({ min: 0, max: 6 }),
  bevelDegrees: fc.constantFrom(0, 2.5),
  midRails: fc.constantFrom(0, 0, 1, 2),
});

describe('always:', () => {
  testAlways<LouvredDoorParameters>({
    build,
    sensible,
    numbers: [
      'width',
      'height',
      'thickness',
      'stile',
      'topRail',
      'tenon',
      'angleDegrees',
      'slatThickness',
      'slatWidth',
      'setback',
      'overlap',
      'slats',
      'housing',
      'midRails',
      'midRail',
      'lockHeight',
      'lockBackset',
      'meetingGap',
    ],
    choices: {
      section: ['square', 'flush'],
      joint: ['stub-tenon', 'loose-tenon'],
      lock: ['mortise-lock', 'rim-lock', 'turn-button'],
      leaf: ['whole', 'first', 'second'],
    },
    runs: 100,
  });

  test('the slats reach into both stiles and fill the height from rail to rail', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0 });
        if (isStopped(built)) return;
        const slats = built.parts.find(({ name }) => name === 'Slat');
        if (!slats) throw new Error('no slats');
        const v = (name: string) => worked(built, name);
        const low = { x: v('Wd') / 2, y: v('wb'), z: -v('T') };
        const high = { x: v('Wd') / 2, y: v('Hd') - v('wt'), z: 0 };
        const there = spreadPoints(low, high, 4000).filter((point) =>
          slats.placements.some((at) => occupies(slats, point, at)),
        );
        // nothing beyond the faces and the rails, and air and wood in the shares of pitch and slat
        const heights = there.map(({ y }) => y);
        expect(Math.min(...heights) - low.y).toBeLessThan(6);
        expect(high.y - Math.max(...heights)).toBeLessThan(6);
        const area = (there.length / 4000) * (high.y - low.y) * v('T');
        expect(area / (v('nl_all') * v('section'))).toBeCloseTo(1, 0);
        const wide = { x: 0.3, y: 0, z: 0 };
        for (const at of slats.placements) {
          const mid = { x: v('hd') + v('ws'), y: v('b') / 2, z: v('ts') / 2 };
          expect(
            occupies(
              slats,
              {
                ...wide,
                x: v('ws') - 3,
                y: at.origin.y + mid.y * at.yAxis.y,
                z: at.origin.z + mid.y * at.yAxis.z - mid.z * at.yAxis.y * 1,
              },
              at,
            ),
          ).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('a slat and its housing leave only the room to slide it in', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0, hinged: 'right' });
        if (isStopped(built)) return;
        const v = (name: string) => worked(built, name);
        const low = { x: v('ws') - v('hd') + 0.5, y: v('wb') + 30, z: -v('T') };
        const high = { x: v('ws') - 0.1, y: v('wb') + 30 + 3 * v('p'), z: 0 };
        const points = spreadPoints(low, high, 1500);
        const empty = points.filter((point) => countAt(built, point) === 0).length;
        expect(empty / points.length).toBeLessThan(0.03);
      }),
      { numRuns: 40 },
    );
  });

  test('mass is volume times density, counted point by point', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, bevelDegrees: 0, joint: 'stub-tenon' });
        if (isStopped(built)) return;
        expect(Math.abs(massRatio(built, { oak: 680 }) - 1)).toBeLessThan(0.05);
      }),
      { numRuns: 15 },
    );
  });
});

test('a new one of a usual size can be made', () => {
  const piece = newPiece('louvred-door', { id: 'n', letter: 'N', name: 'New', materials: framedMaterials });
  expect(buildPiece(piece, framedContext()).findings.filter(({ severity }) => severity !== 'note')).toEqual(
    [],
  );
});
