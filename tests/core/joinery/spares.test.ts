import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, newPiece, pieceKinds } from '#core/joinery';
import type { BuiltPiece, JoinerySettings, PieceKind } from '#core/joinery';
import { buildKind, usualMaterials } from '../../support/flat-pieces.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const settings = (spares: JoinerySettings['spares']): JoinerySettings => ({
  ...defaultSettings,
  ...(spares && { spares }),
});

const sparesOf = (built: BuiltPiece) => built.parts.filter(({ spare }) => spare !== undefined);

function fresh(kind: PieceKind, spares: JoinerySettings['spares']): BuiltPiece {
  const piece = newPiece(kind, { id: 'p', letter: 'P', name: 'New', materials: usualMaterials });
  return buildPiece(piece, { shape: null, materials: usualMaterials, settings: settings(spares) });
}

// joinery D3, "Spare": one extra per setting for every joint set-up (length >= 300), lipping 10 %, trim run +1 longest
// piece, dovetail or box test corner 2
describe('spares', () => {
  test('for joints are lengths of 300 of the section, one for each kind of joint', () => {
    const built = fresh('framed-door', 'boards');
    const [spare] = sparesOf(built);
    expect(spare?.finished.length).toBe(300);
    const stile = built.parts.find(({ name }) => name.startsWith('Stile'));
    expect(spare?.finished.thickness).toBe(stile?.finished.thickness);
    expect(spare?.spare).toMatch(/^to set up on: /);
  });

  test('for a corner of fingers or dovetails are two', () => {
    const drawer = (corner: 'box' | 'through-dovetail' | 'rebate') =>
      sparesOf(
        buildKind(
          'drawer',
          {
            ...{ openingWidth: 380, openingHeight: 142, clearDepth: 455, corner, front: 'none' },
            materials: { box: 'oak', bottom: 'ply6' },
          },
          { settings: settings('boards') },
        ),
      );
    const [box] = drawer('box');
    const [rebate] = drawer('rebate');
    expect((box?.quantity ?? 0) - (rebate?.quantity ?? 0)).toBe(1);
    expect(box?.spare).toContain('box');
  });

  test('of lippings are a tenth of their length, in pieces as long as the longest', () => {
    const built = buildKind(
      'free-panel',
      {
        corners: [0, 0, 600, 0, 600, 400, 0, 400],
        lippedSides: [1, 2, 3, 4],
        materials: { panel: 'ply18', lipping: 'oak' },
      },
      { settings: settings('boards') },
    );
    const [spare, ...more] = sparesOf(built);
    expect(more).toEqual([]);
    // a tenth of about 2 m is less than one of 600
    expect(spare).toMatchObject({ name: 'Lipping, spare', quantity: 1 });
    const lips = built.parts.filter(({ name }) => name.startsWith('Solid edge'));
    expect(spare?.cut.length).toBe(Math.max(...lips.map(({ cut }) => cut.length)));
  });

  test('of a trim run is one more of its longest stick', () => {
    const built = fresh('trim-run', 'boards');
    const longest = Math.max(
      ...built.parts.filter((part) => !part.spare).map(({ finished }) => finished.length),
    );
    expect(sparesOf(built).map(({ quantity, finished }) => [quantity, finished.length])).toContainEqual([
      1,
      longest,
    ]);
  });

  test.each(pieceKinds)(
    'of a %s change nothing else of it, lie nowhere in it, and are sound and worked out',
    (kind) => {
      const [without, boards, all] = (['none', 'boards', 'all'] as const).map((spares) =>
        fresh(kind, spares),
      );
      if (!without || !boards || !all) throw new Error('not built');
      expect(fresh(kind, undefined)).toEqual(without);
      expect(sparesOf(without).length).toBe(0);
      expect(sparesOf(boards).every((part) => part.kind === 'solid')).toBe(true);
      for (const built of [boards, all]) {
        expectSound(built);
        expectWorking(built);
        const spares = sparesOf(built);
        expect(built.parts.filter(({ spare }) => spare === undefined)).toEqual(without.parts);
        expect(built.envelope).toEqual(without.envelope);
        for (const spare of spares) {
          expect(spare.placements).toEqual([]);
          expect(spare.quantity).toBeGreaterThan(0);
          expect(Number.isInteger(spare.quantity)).toBe(true);
          expect(spare.notes.join(' ')).toContain('it is not fitted');
        }
      }
    },
  );
});
