import { describe, expect, test } from 'vitest';
import { outlineArea, placePoint, type Placement, type Point3 } from '#core/geometry';
import { groupSameParts } from '#core/drawing';
import { buildPiece, defaultSettings, mirrorMachining, newPiece, pieceKinds } from '#core/joinery';
import type { BuiltPiece, Part, Piece, PieceKind } from '#core/joinery';
import { usualMaterials } from '../../support/flat-pieces.ts';
import { occupies } from '../../support/joinery-solid.ts';

function fresh(kind: PieceKind, parameters: object = {}): BuiltPiece {
  const piece = newPiece(kind, { id: 'p', letter: 'P', name: 'New', materials: usualMaterials });
  const changed = { ...piece, parameters: { ...piece.parameters, ...parameters } } as Piece;
  return buildPiece(changed, { shape: null, materials: usualMaterials, settings: defaultSettings });
}

/** Left and right parts of the same name but for the side, and of one size. */
function pairsOf(built: BuiltPiece): readonly (readonly [Part, Part])[] {
  const same = (one: Part, other: Part) =>
    (['length', 'width', 'thickness'] as const).every(
      (size) => Math.abs(one.finished[size] - other.finished[size]) < 1e-6,
    );
  const stem = ({ name }: Part) => name.replace(/left|right/, '');
  return built.parts
    .filter(({ hand }) => hand === 'left')
    .flatMap((left) => {
      const right = built.parts.find(
        (part) => part.hand === 'right' && stem(part) === stem(left) && same(part, left),
      );
      return right ? [[left, right] as const] : [];
    });
}

const own: Placement = {
  origin: { x: 0, y: 0, z: 0 },
  xAxis: { x: 1, y: 0, z: 0 },
  yAxis: { x: 0, y: 1, z: 0 },
};

/** Share of points, spread through the block, where one part has wood just where the other has it mirrored. */
function alike(one: Part, other: Part, mirror: 'x' | 'y' | 'z'): number {
  const { length, width, thickness } = one.finished;
  const count = 1500;
  let hits = 0;
  for (let k = 1; k <= count; k++) {
    const p: Point3 = {
      x: length * ((k * 0.8191725134) % 1),
      y: width * ((k * 0.6710436067) % 1),
      z: thickness * ((k * 0.5497004779) % 1),
    };
    const size = { x: length, y: width, z: thickness };
    const q = { ...p, [mirror]: size[mirror] - p[mirror] };
    if (occupies(one, placePoint(own, p), own) === occupies(other, placePoint(own, q), own)) hits += 1;
  }
  return hits / count;
}

const kinds: readonly (readonly [PieceKind, object])[] = [
  ...pieceKinds.map((kind) => [kind, {}] as const),
  ['step', { form: 'flight' }],
  ['cabinet-front', { columns: 3, joint: 'half-lap' }],
  ['drawer', { corner: 'through-dovetail', materials: { box: 'oak', bottom: 'ply6' } }],
  ['drawer', { corner: 'rebate', runner: 'side-rail' }],
];

// joinery D3, G11: what is left and right is made once each, and never both by one drawing
describe('left and right', () => {
  test.each(kinds)('of a %s %o are parts of their own, drawn each by itself', (kind, parameters) => {
    const built = fresh(kind, parameters);
    for (const group of groupSameParts(built.parts))
      expect(new Set(group.map(({ hand }) => hand)).size).toBe(1);
    for (const part of built.parts.filter(({ hand }) => hand === 'left'))
      expect(
        built.parts.some(({ hand }) => hand === 'right'),
        part.name,
      ).toBe(true);
  });
  test.each(kinds)('of a %s %o, where they have one size, are mirror images', (kind, parameters) => {
    for (const [left, right] of pairsOf(fresh(kind, parameters))) {
      const best = Math.max(...(['x', 'y', 'z'] as const).map((axis) => alike(left, right, axis)));
      expect(best, `${left.id} ${left.name} and ${right.id} ${right.name}`).toBeGreaterThan(0.998);
    }
  });
  test('are found where there are such', () => {
    expect(pairsOf(fresh('drawer'))).toHaveLength(1);
    expect(pairsOf(fresh('cabinet-front'))).toHaveLength(1);
    expect(pairsOf(fresh('carcase')).length).toBeGreaterThan(0);
    expect(pairsOf(fresh('step')).length).toBeGreaterThan(0);
  });
});

test('a cut with an arc keeps its arc when it is mirrored', () => {
  const outline = [
    { x: 10, y: 0 },
    { x: 40, y: 0, bulge: 0.2 },
    { x: 40, y: 30 },
    { x: 10, y: 30 },
  ];
  const cut = { kind: 'prism', name: 'lap', from: 'face', outline, depth: 5 } as const;
  const size = { length: 100, width: 60, thickness: 20 };
  for (const axis of ['x', 'y'] as const) {
    const once = mirrorMachining(cut, axis, size);
    if (once.kind !== 'prism') throw new Error('no prism');
    // the segment of a circle beyond a chord of 30 whose height is 0.2 of half of it
    expect(outlineArea(once.outline)).toBeCloseTo(outlineArea(outline), 9);
    expect(outlineArea(once.outline)).toBeGreaterThan(900);
    expect(once.outline).toContainEqual(
      axis === 'x' ? { x: 60, y: 30, bulge: 0.2 } : { x: 40, y: 30, bulge: 0.2 },
    );
    expect(mirrorMachining(once, axis, size)).toEqual(cut);
  }
});
