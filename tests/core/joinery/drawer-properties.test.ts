import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint } from '#core/geometry';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, DrawerCorner, DrawerParameters, Part } from '#core/joinery';
import { boxContext, drawer, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const corners: readonly DrawerCorner[] = [
  'box',
  'through-dovetail',
  'lapped-dovetail',
  'rebate',
  'housed-back',
  'lock-rebate',
  'butt',
];

const sensible: fc.Arbitrary<Partial<DrawerParameters>> = fc
  .record({
    openingWidth: fc.integer({ min: 200, max: 700 }),
    openingHeight: fc.integer({ min: 80, max: 260 }),
    clearDepth: fc.integer({ min: 250, max: 650 }),
    corner: fc.constantFrom(...corners),
    runner: fc.constantFrom(
      'metal' as const,
      'side-rail' as const,
      'bottom-notch' as const,
      'bottom' as const,
    ),
    bottomStyle: fc.constantFrom('captured' as const, 'slides-under-back' as const),
    front: fc.constantFrom('overlay' as const, 'inset' as const, 'none' as const),
    solid: fc.boolean(),
    frontThickness: fc.integer({ min: 12, max: 20 }),
    notch: fc.integer({ min: 6, max: 12 }),
    count: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ solid, ...rest }) => ({
    ...rest,
    materials: { box: solid ? 'ash' : 'ply12', bottom: 'ply6', front: 'ply18', runners: 'ash' },
  }));

const build = (parameters: Partial<DrawerParameters>): BuiltPiece =>
  buildPiece(drawer(parameters), boxContext());

function named(built: BuiltPiece, name: string): Part {
  const found = built.parts.find((part) => part.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

function blockOf(part: Part) {
  const { length, width, thickness } = part.finished;
  const placement = part.placements[0];
  if (!placement) throw new Error('not placed');
  const ends = [
    placePoint(placement, { x: 0, y: 0, z: 0 }),
    placePoint(placement, { x: length, y: width, z: thickness }),
  ];
  const of = (pick: (...values: number[]) => number, axis: 'x' | 'y' | 'z') =>
    pick(...ends.map((p) => p[axis]));
  return {
    min: { x: of(Math.min, 'x'), y: of(Math.min, 'y'), z: of(Math.min, 'z') },
    max: { x: of(Math.max, 'x'), y: of(Math.max, 'y'), z: of(Math.max, 'z') },
  };
}

/** The block of wood of one corner of the box, where side and front or back meet: it should be full. */
function cornerBlock(built: BuiltPiece, side: 'left' | 'right', end: 'front' | 'back') {
  const board = blockOf(named(built, end === 'front' ? 'Box front' : 'Back'));
  const wall = blockOf(named(built, `Side, ${side}`));
  return {
    min: { x: wall.min.x, y: board.min.y, z: board.min.z },
    max: { x: wall.max.x, y: board.max.y, z: board.max.z },
  };
}

describe('always:', () => {
  test('every part is a positive size, square and its machining inside it, and every answer of nothing has its stop', () => {
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
    const any = fc.record({
      openingWidth: wild,
      openingHeight: wild,
      clearDepth: wild,
      sideThickness: wild,
      frontThickness: wild,
      grooveDepth: wild,
      notch: wild,
      railDepth: wild,
      count: wild,
      runnerLength: fc.option(wild, { nil: undefined }),
      corner: fc.constantFrom(...corners),
    });
    fc.assert(
      fc.property(any, ({ runnerLength, ...rest }) =>
        expectSound(build({ ...rest, ...(runnerLength !== undefined && { runnerLength }) })),
      ),
      { numRuns: 300 },
    );
  });

  test('every size is the working it names, and every step can be worked out again from its numbers', () => {
    fc.assert(
      fc.property(sensible, (parameters) => expectWorking(build(parameters))),
      { numRuns: 100 },
    );
  });

  test('the box is the opening less its clearance, and stands between front and back of the space', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const [left, right] = [blockOf(named(built, 'Side, left')), blockOf(named(built, 'Side, right'))];
        const solid = parameters.materials?.box === 'ash';
        // joinery B5: 13.05 for metal, 1.5 for side rails and ply, 2 for solid
        const clear =
          parameters.runner === 'metal' ? 13.05 : parameters.runner === 'side-rail' || !solid ? 1.5 : 2;
        expect(left.min.x).toBeCloseTo(clear, 9);
        expect(right.max.x).toBeCloseTo((parameters.openingWidth ?? 0) - clear, 9);
        expect(-left.min.z).toBeLessThanOrEqual((parameters.clearDepth ?? 0) - 10 + 1e-9);
        expect(left.max.y).toBeLessThanOrEqual((parameters.openingHeight ?? 0) - 3 + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  test('no two parts are in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const points = [
          ...(['left', 'right'] as const).flatMap((side) =>
            (['front', 'back'] as const).flatMap((end) => {
              const { min, max } = cornerBlock(built, side, end);
              const wide = { x: min.x - 20, y: min.y - 25, z: min.z - 25 };
              return spreadPoints(wide, { x: max.x + 20, y: max.y + 5, z: max.z + 25 }, 120);
            }),
          ),
          ...spreadPoints(built.envelope.min, built.envelope.max, 400),
        ];
        expect(overlaps(built, points)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('a corner is full of wood but for the glue gaps and the groove', () => {
    fc.assert(
      fc.property(
        sensible,
        fc.constantFrom('left' as const, 'right' as const),
        fc.constantFrom('front' as const, 'back' as const),
        (parameters, side, end) => {
          const built = build(parameters);
          const block = cornerBlock(built, side, end);
          const level = blockOf(named(built, 'Side, left')).min.y;
          const groove = [
            level + worked(built, 'yg'),
            level + worked(built, 'yg') + worked(built, 'groove_W'),
          ] as const;
          const rail = parameters.runner === 'side-rail' ? level + worked(built, 'rail_up') : Infinity;
          const points = spreadPoints(block.min, block.max, 600).filter(
            ({ y }) =>
              (y < groove[0] || y > groove[1]) && (y < rail || y > rail + worked(built, 'rail_groove_H')),
          );
          const parts = [named(built, `Side, ${side}`), named(built, end === 'front' ? 'Box front' : 'Back')];
          const empty = points.filter((point) => !parts.some((part) => occupies(part, point)));
          // glue gaps of 0.1 between the fingers of a box joint; no gap in the others
          const gaps =
            parameters.corner === 'box'
              ? (0.1 * (worked(built, `finger_n_${end}`) - 1)) / (block.max.y - block.min.y)
              : 0;
          expect(empty.length / points.length).toBeLessThanOrEqual(gaps === 0 ? 0 : gaps + 0.015);
        },
      ),
      { numRuns: 150 },
    );
  });

  test('the right side is the left one in a mirror', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const [left, right] = [named(built, 'Side, left'), named(built, 'Side, right')];
        const { min, max } = blockOf(left);
        for (const point of spreadPoints(min, max, 200)) {
          const mirrored = { ...point, x: (parameters.openingWidth ?? 0) - point.x };
          expect(occupies(right, mirrored)).toBe(occupies(left, point));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('dovetails add up to the width at both ends of the tails', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, corner: 'through-dovetail' });
        for (const end of ['front', 'back']) {
          const width = worked(built, end === 'front' ? 'boxfront_h' : 'back_h');
          expect(worked(built, `sum_end_${end}`)).toBeCloseTo(width, 9);
          expect(worked(built, `sum_base_${end}`)).toBeCloseTo(width, 9);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('lifted by the notch, the side clears the rail; dropped, it straddles it', () => {
    fc.assert(
      fc.property(sensible, fc.integer({ min: 10, max: 40 }), (parameters, railDepth) => {
        const built = build({ ...parameters, runner: 'bottom-notch', railDepth });
        const side = named(built, 'Side, left');
        const { min, max } = blockOf(side);
        const lift = worked(built, 'n');
        const inRail = spreadPoints({ x: min.x, y: -lift, z: -railDepth }, { x: max.x, y: 0, z: 0 }, 200);
        for (const point of inRail) expect(occupies(side, point)).toBe(false);
        // lifted, the lower edge is on the rail's top (level 0): the runner's level is the lift below it
        expect(min.y + lift).toBeCloseTo(0, 9);
      }),
      { numRuns: 60 },
    );
  });
});
