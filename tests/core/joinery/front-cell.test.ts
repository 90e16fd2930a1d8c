import { describe, expect, test } from 'vitest';
import { placePoint } from '#core/geometry';
import { buildPiece, requiredPieces } from '#core/joinery';
import type { CabinetFrontParameters, DrawerParameters, Piece } from '#core/joinery';
import { boxContext, cabinetFront, codesOf, drawer, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const frontOf = (parameters: Partial<CabinetFrontParameters> = {}) =>
  buildPiece(cabinetFront(parameters), boxContext());

function inFront(parameters: Partial<DrawerParameters>, front = frontOf()) {
  const materials = { box: 'ply12', bottom: 'ply6', front: 'ply18', runners: 'ash' };
  const built: Piece = {
    ...drawer(),
    parameters: { clearDepth: 455, cabinetFront: 'front', materials, ...parameters },
  };
  return buildPiece(built, boxContext({ built: [front] }));
}

// The front of joinery B6: openings 380 wide and 95, 110, 125, 140 high, rails of 30 between
describe('a drawer in an opening of a front', () => {
  test('takes width, height, rail and lift from it and leaves its false front to it', () => {
    const built = inFront({ row: 3 });
    expect(worked(built, 'Wo')).toBe(380);
    expect(worked(built, 'Ho')).toBe(125);
    expect(worked(built, 'tr')).toBe(20);
    expect(worked(built, 'n')).toBe(10);
    expect(built.parts.map(({ name }) => name)).not.toContain('False front');
    expect(built.working.find(({ name }) => name === 'Wo')).toMatchObject({
      source: 'front F, Galley front',
      parameter: 'cabinetFront',
    });
    expectSound(built);
    expectWorking(built);
  });
  test('a size measured in the finished frame goes before', () => {
    expect(worked(inFront({ row: 1, openingWidth: 379 }), 'Wo')).toBe(379);
  });
  test('the front is made first', () => {
    const piece = drawer({ cabinetFront: 'front' });
    expect(requiredPieces(piece)).toEqual(['front']);
  });
});

describe('several drawers alike', () => {
  const front = frontOf({ columns: 2, width: 900, rows: 3, grading: 'equal' });
  const built = inFront({ count: 5, row: 2 }, front);
  test('lie each in its own opening, down the column and then the next', () => {
    const sides = built.parts.find(({ name }) => name === 'Side, left');
    expect(sides?.quantity).toBe(5);
    const at = sides?.placements.map((placed) => placePoint(placed, { x: 0, y: 0, z: 0 })) ?? [];
    const [wo, h] = [worked(front, 'wo'), worked(front, 'h1')];
    const step = h + 30;
    const moved = at.map(({ x, y }) => [x - (at[0]?.x ?? 0), y - (at[0]?.y ?? 0)]);
    const expected = [
      [0, 0],
      [0, -step],
      [wo + 40, step],
      [wo + 40, 0],
      [wo + 40, -step],
    ];
    // heights are rounded down to 0.5, the lowest takes what is left: within 0.5
    moved.forEach(([x = 0, y = 0], i) => {
      expect(x).toBeCloseTo(expected[i]?.[0] ?? NaN, 6);
      expect(Math.abs(y - (expected[i]?.[1] ?? NaN))).toBeLessThanOrEqual(0.51);
    });
    expectSound(built);
    expectWorking(built);
  });
  test('are carried one by one', () => {
    const load = built.loads?.[0]?.box;
    expect((load?.max.y ?? 0) - (load?.min.y ?? 0)).toBeLessThan(built.envelope.max.y - built.envelope.min.y);
  });
  test('that find too few openings are not made', () => {
    expect(codesOf(inFront({ count: 3, row: 1 }))).toContain('cells-too-few');
  });
});

test.each([
  ['cell-missing', { row: 9 }, frontOf()],
  ['front-missing', { cabinetFront: 'other' }, frontOf()],
  ['front-unbuilt', {}, frontOf({ width: 20 })],
] as const)('%s is said, and nothing built', (code, parameters, front) => {
  const built = inFront(parameters, front);
  expect(codesOf(built)).toContain(code);
  expect(built.parts).toEqual([]);
});

describe('a door for an opening of a front', () => {
  const build = (front: ReturnType<typeof frontOf>, more: object = {}) => {
    const piece: Piece = {
      ...{ kind: 'flat-door', id: 'door', letter: 'E', name: 'Locker door' },
      parameters: {
        cabinetFront: 'front',
        row: 1,
        slots: 0,
        ...more,
        materials: { core: 'ply18', lipping: 'oak' },
      },
    };
    return buildPiece(piece, boxContext({ built: [front] }));
  };
  test('let in, it is the opening less a gap at each side', () => {
    const built = build(frontOf({ fronts: 'inset', gap: 3, rows: 1, cells: [['open']] }));
    expect(worked(built, 'Wd')).toBe(380 - 6);
    expect(worked(built, 'gs')).toBe(3);
    expect(worked(built, 'gb')).toBe(3);
    expect(built.parts.length).toBeGreaterThan(0);
    expectWorking(built);
  });
  test('over the frame it covers the opening and the overlay', () => {
    expect(worked(build(frontOf({ rows: 1, overlay: 8 })), 'Wd')).toBe(396);
  });
  test('a width entered goes before', () => {
    expect(worked(build(frontOf({ rows: 1 }), { width: 390 }), 'Wd')).toBe(390);
  });
  test('a framed door takes it too', () => {
    const front = frontOf({ rows: 1, fronts: 'inset', gap: 2.5, cells: [['open']] });
    const piece: Piece = {
      ...{ kind: 'framed-door', id: 'door', letter: 'E', name: 'Locker door' },
      parameters: { cabinetFront: 'front', materials: { frame: 'oak', panel: 'ply6' } },
    };
    const built = buildPiece(piece, boxContext({ built: [front] }));
    expect(worked(built, 'Wd')).toBe(375);
    expect(worked(built, 'gs')).toBe(2.5);
    expect(built.parts.length).toBeGreaterThan(0);
  });
});
