import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Shape, ShapeSection } from '#core/geometry';
import type { CarcaseParameters } from '#core/joinery';
import { excessBehind } from '../../../src/core/joinery/hull/gauge.ts';
import { buildKind, partOf } from '../../support/flat-pieces.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const materials = [
  { id: 'ply12', kind: 'sheet', name: 'Ply 12', thickness: 12, density: 550 },
  { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn', density: 680 },
] as const;

const section = (name: string, at: number, bevels: readonly (readonly [number, number])[]): ShapeSection => ({
  ...{ name, at, sigma: 1 },
  line: [0, 150, 300, 450, 600, 750].map((y) => ({ x: 300 + y / 4, y })),
  bevels: bevels.map(([height, degrees]) => ({ height, angle: radians(degrees) })),
});

function hullOf(...sections: readonly ShapeSection[]): Shape {
  return {
    ...{
      kind: 'sections',
      seenFrom: 'standing in the cabin',
      points: {},
      edges: [],
      order: [],
      covariance: [],
      tilt: 0,
    },
    sections,
  };
}

const build = (shape: Shape, parameters: Partial<CarcaseParameters> = {}) =>
  buildKind(
    'carcase',
    {
      width: 500,
      height: 700,
      plinth: 0,
      shelves: [],
      materials: { panel: 'ply12' },
      ...parameters,
    } as CarcaseParameters,
    { materials, shape, shapeName: 'Hull' },
  );

describe('the bevels that were read at the sections', () => {
  const hull = hullOf(
    section('Left', 0, [[350, 8]]),
    section('Right', 500, [
      [100, 4],
      [600, 14],
    ]),
  );

  test('are taken for the back edges of the ends: as read, in proportion to the height between two readings', () => {
    const built = build(hull, { endBack: 'bevelled', clearance: 10 });
    // falling away to the right: the left end is longer at its inner face, the right one at its outer
    expect(worked(built, 'bevel_l')).toBeCloseTo(-8, 9);
    const middle = (worked(built, 'y0') + worked(built, 'top')) / 2;
    expect(worked(built, 'bevel_r')).toBeCloseTo(4 + (10 * (middle - 100)) / 500, 9);
    expect(worked(built, 'fall_l')).toBeCloseTo(-12 * Math.tan(radians(8)), 9);
    const bevels = [1, 2].map((number) =>
      partOf(built, number).machining.find(({ kind }) => kind === 'bevel'),
    );
    expect(bevels[0]).toMatchObject({ edge: 'far-edge', degrees: -8 });
    expect(bevels[1]).toMatchObject({ edge: 'far-edge', degrees: worked(built, 'bevel_r') });
  });

  test('stand on the parts and lead to where they were read', () => {
    const built = build(hull, { endBack: 'bevelled', clearance: 10 });
    expect(partOf(built, 2).notes.join(' ')).toContain(
      'Bevel of the hull by the gauge: 4° at 100, 14° at 600; plane the back edge from one to the next.',
    );
    expect(built.working.find(({ name }) => name === 'gauge_l')?.source).toBe('read at Left, shape Hull');
  });

  test('that do not agree with the sections are told', () => {
    // the sections are alike: nothing falls away between them
    expect(codesOf(build(hull, { clearance: 10 }))).toContain('bevel-disagrees');
    expect(codesOf(build(hullOf(section('Left', 0, [[350, 1]]), section('Right', 500, []))))).not.toContain(
      'bevel-disagrees',
    );
  });

  test('read too far away say nothing: the sections count', () => {
    const far = build(
      hullOf(section('Left', 0, []), section('Middle', 250, [[350, 20]]), section('Right', 500, [])),
    );
    expect(worked(far, 'bevel_l')).toBeCloseTo(0, 9);
    expect(far.working.some(({ name }) => name === 'gauge_l')).toBe(false);
  });
});

describe('always: wood behind a bevelled hull', () => {
  const size = fc.double({ min: -20, max: 20, noNaN: true });

  test('a square edge is too big at the back by as much as the gauge tells more than the sections, halved at the middle', () => {
    fc.assert(
      fc.property(size, size, (drawn, gauge) => {
        // by the true faces: the hull half as much nearer and farther from its middle, the wood square at the nearer face drawn
        const wood = -Math.abs(drawn) / 2;
        const nearest = Math.min(-gauge / 2, gauge / 2);
        expect(excessBehind({ drawn, gauge, sawn: null })).toBeCloseTo(wood - nearest, 9);
      }),
    );
  });

  test('an edge bevelled as the gauge reads never stands behind it further than the drawn curve does', () => {
    fc.assert(
      fc.property(size, size, (drawn, gauge) => {
        expect(excessBehind({ drawn, gauge, sawn: gauge })).toBeLessThanOrEqual(
          (Math.abs(drawn) - Math.abs(gauge)) / 2 + 1e-9,
        );
      }),
    );
  });
});
