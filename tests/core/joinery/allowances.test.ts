import { describe, expect, test } from 'vitest';
import { cutOutline } from '#core/drawing';
import { boxOfOutline } from '#core/geometry';
import { buildPiece, defaultSettings, newPiece, pieceKinds } from '#core/joinery';
import type { BuiltPiece, Part, Piece, PieceKind } from '#core/joinery';
import { usualMaterials } from '../../support/flat-pieces.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';

/** A piece as it is first offered, with some parameters changed. */
function fresh(kind: PieceKind, parameters: object = {}, film = defaultSettings.film): BuiltPiece {
  const piece = newPiece(kind, { id: 'p', letter: 'P', name: 'New', materials: usualMaterials });
  const changed = { ...piece, parameters: { ...piece.parameters, ...parameters } } as Piece;
  return buildPiece(changed, {
    shape: null,
    materials: usualMaterials,
    settings: { ...defaultSettings, film },
  });
}

const variants: readonly (readonly [PieceKind, string, object])[] = [
  ...pieceKinds.map((kind) => [kind, 'as first offered', {}] as const),
  ['cabinet-front', 'scribed', { scribe: 12 }],
  ['free-panel', 'scribed on every side', { scribedSides: [1, 2, 3, 4], scribe: 9, gap: 0 }],
  [
    'free-panel',
    'scribed on two sides and lipped on two',
    { scribedSides: [1, 2], lippedSides: [3, 4], scribe: 9, lipping: 10, gap: 0 },
  ],
  ['infill', 'scribed', { gaps: [18, 21, 27, 24, 22] }],
  ['step', 'on a sloping sole', { soleSlopeDegrees: 1.5 }],
  ['step', 'as a flight', { form: 'flight' }],
  ['flat-door', 'with lippings of 10', { lipping: 10 }],
  ['countertop', 'with an edge of 15', { lipping: 15 }],
  ['drawer', 'with fingers', { corner: 'box' }],
  ['dividers', 'in a tray with fingers', { walls: 'box' }],
];

/** Wood left on in the way of a size by the edges that are scribed. */
function scribedOn({ edges }: Part, way: 'length' | 'width'): number {
  const own = way === 'length' ? ['start', 'end'] : ['face-edge', 'far-edge'];
  return edges
    .filter(({ edge, treatment }) => treatment === 'scribed' && own.includes(edge))
    .reduce((sum, { amount = 0 }) => sum + amount, 0);
}

/**
 * What else a part leaves the saw larger by: lippings 20 long, 0.5 wide, 2 thick (joinery D4), boards with fingers 0.3 at each
 * end (C11), strings, whose foot runs aslant so that scribing it takes more of the length; bent plies are sawn flat.
 */
function trimmedOff(part: Part, built: BuiltPiece): { length: number; width: number; thickness: number } {
  const inJoint = (kind: string) =>
    built.joints.some((joint) => joint.kind === kind && joint.between.includes(part.id));
  const isLip = inJoint('lipping') && !part.edges.some(({ treatment }) => treatment === 'lipped');
  if (isLip) return { length: 20, width: 0.5, thickness: 2 };
  if (part.name.startsWith('String')) return { length: 5, width: 0, thickness: 0 };
  const hasFingers = inJoint('box') && !part.name.endsWith('ottom');
  return { length: hasFingers ? 0.6 : 0, width: 0, thickness: 0 };
}

// joinery 0.3: cut = fin + scribe + trim after lipping; rough = cut + allowance
describe('what leaves the saw is the finished size, what is scribed and what is trimmed', () => {
  test.each(variants)('%s, %s', (kind, _, parameters) => {
    const built = fresh(kind, parameters);
    for (const part of built.parts) {
      if (part.name.includes('Ply')) continue;
      const extra = trimmedOff(part, built);
      const say = `${part.id} ${part.name}`;
      const by = (way: 'length' | 'width' | 'thickness') => part.cut[way] - part.finished[way];
      expect(by('length'), say).toBeCloseTo(scribedOn(part, 'length') + extra.length, 6);
      expect(by('width'), say).toBeCloseTo(scribedOn(part, 'width') + extra.width, 6);
      expect(by('thickness'), say).toBeCloseTo(extra.thickness, 6);
      for (const { treatment, amount } of part.edges)
        if (treatment === 'scribed' || treatment === 'lipped') expect(amount, say).toBeGreaterThan(0);
      expect(part.rough.length, say).toBeGreaterThanOrEqual(part.cut.length - 1e-6);
    }
  });
  test('and kinds that can be scribed have something left on', () => {
    const scribed = (kind: PieceKind, parameters: object) =>
      fresh(kind, parameters).parts.filter(
        (part) => scribedOn(part, 'length') + scribedOn(part, 'width') > 0,
      );
    expect(scribed('cabinet-front', { scribe: 12 }).map(({ name }) => name)).toEqual([
      'Stile, left',
      'Stile, right',
    ]);
    expect(scribed('free-panel', { scribedSides: [1, 2, 3, 4], scribe: 9, gap: 0 })).toHaveLength(1);
    expect(scribed('infill', {})).toHaveLength(1);
    expect(scribed('step', {}).length).toBeGreaterThan(0);
  });
});

// joinery C11: cut L = finished L + 0.6, flushed to the finished size; sockets are as deep as the mate is thick
test.each<[PieceKind, object, number]>([
  ['drawer', { corner: 'box' }, 4],
  ['dividers', { walls: 'box' }, 4],
])(
  'the outline to be cut leaves 0.3 on at both ends of a board with fingers, %s',
  (kind, parameters, count) => {
    const parts = fresh(kind, parameters).parts.filter(({ edges }) =>
      edges.some(({ treatment }) => treatment === 'flushed'),
    );
    expect(parts).toHaveLength(count);
    for (const part of parts) {
      const box = boxOfOutline(cutOutline(part));
      expect(box.minX).toBeCloseTo(-0.3, 9);
      expect(box.maxX).toBeCloseTo(part.finished.length + 0.3, 9);
      expect(box.maxX - box.minX).toBeCloseTo(part.cut.length, 9);
      expect(box.maxY - box.minY).toBeCloseTo(part.cut.width, 9);
    }
  },
);

// joinery C17: core = size less the lippings
describe('lippings are taken off the core', () => {
  const lipOf = ({ edges }: Part, edge: string) =>
    edges.find((one) => one.edge === edge && one.treatment === 'lipped')?.amount ?? 0;
  const whole = (part: Part) => ({
    length: part.finished.length + lipOf(part, 'start') + lipOf(part, 'end'),
    width: part.finished.width + lipOf(part, 'face-edge') + lipOf(part, 'far-edge'),
  });
  const core = (built: BuiltPiece) => {
    const found = built.parts.find(({ name }) => name.toLowerCase().endsWith('core'));
    if (!found) throw new Error('no core');
    return found;
  };
  test.each([6, 8, 12])('of a flat door, %d thick', (lipping) => {
    const built = fresh('flat-door', { lipping });
    const sizes = whole(core(built));
    expect(sizes.length).toBeCloseTo(worked(built, 'Hd'), 9);
    expect(sizes.width).toBeCloseTo(worked(built, 'Wd'), 9);
  });
  test.each([10, 20])('of a countertop, %d thick', (lipping) => {
    const [lipped, plain] = [fresh('countertop', { lipping }), fresh('countertop', { lipping: 0 })];
    expect(whole(core(lipped)).width).toBeCloseTo(plain.parts[0]?.finished.width ?? NaN, 6);
  });
  test.each([6, 12])('of a free panel, %d thick', (lipping) => {
    const [lipped, plain] = [
      fresh('free-panel', { lippedSides: [1, 2, 3, 4], lipping }),
      fresh('free-panel', {}),
    ];
    const sizes = whole(core(lipped));
    expect(sizes.length).toBeCloseTo(plain.parts[0]?.finished.length ?? NaN, 6);
    expect(sizes.width).toBeCloseTo(plain.parts[0]?.finished.width ?? NaN, 6);
  });
});

// joinery 0.7, G6: what the films leave of a gap is 1.2 or more, for anything that opens or is taken out
describe('films of finish are taken off the gaps', () => {
  const gaps: readonly (readonly [PieceKind, (gap: number) => object])[] = [
    ['flat-door', (gap) => ({ gapSide: gap })],
    ['framed-door', (gap) => ({ gapSide: gap })],
    ['louvred-door', (gap) => ({ gapSide: gap })],
    ['drawer', (gap) => ({ front: 'inset', insetGap: gap, runner: 'bottom' })],
    ['cabinet-front', (gap) => ({ fronts: 'inset', gap, notch: 0 })],
    ['access-panel', (gap) => ({ mount: 'inset', gap })],
    ['lids', (gap) => ({ gap })],
    ['free-panel', (gap) => ({ fixed: 'loose', gap })],
    ['run', (gap) => ({ fronts: 'inset', gap, doors: 'plain' })],
  ];
  test.each(gaps)('of a %s', (kind, parameters) => {
    const code = 'no-room-once-finished';
    const least = 1.2;
    for (const film of [0.1, 0.2]) {
      expect(codesOf(fresh(kind, parameters(least + 2 * film - 0.05), film)), `${film}`).toContain(code);
      expect(codesOf(fresh(kind, parameters(least + 2 * film + 0.05), film)), `${film}`).not.toContain(code);
    }
  });
});
