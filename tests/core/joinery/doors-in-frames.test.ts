import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint, unplacePoint } from '#core/geometry';
import {
  askedParameters,
  buildPiece,
  newPiece,
  parametersOf,
  pieceKinds,
  withFrontFittings,
  withHingeBeds,
  withStrike,
} from '#core/joinery';
import type { BuiltPiece, CabinetFrontParameters, FrameCorner, MadePiece, Part, Piece } from '#core/joinery';
import { framedContext } from '../../support/framed-doors.ts';
import { flatDoor } from '../../support/flat-doors.ts';
import { boxContext, cabinetFront, worked } from '../../support/joinery-boxes.ts';
import { occupiesDeep } from '../../support/joinery-solid.ts';
import { expectSound } from '../../support/joinery-sound.ts';
import { curlewOpening, openingShape } from '../../support/joinery-samples.ts';

const context = framedContext();

const free = (parameters: object = {}): Piece => ({
  kind: 'free-frame',
  id: 'frame',
  letter: 'F',
  name: 'Locker frame',
  parameters: { width: 700, height: 900, joint: 'half-lap', materials: { frame: 'oak' }, ...parameters },
});

const door = (id: string, parameters: object = {}): Piece => ({
  kind: 'framed-door',
  id,
  letter: id.toUpperCase(),
  name: `Door ${id}`,
  parameters: {
    frame: 'frame',
    stile: 70,
    materials: { frame: 'mahogany', panel: 'ply6' },
    ...parameters,
  },
});

/** A frame and its doors, each built, fitted to each other. */
function hang(frame: Piece, doors: readonly Piece[], shape?: Parameters<typeof buildPiece>[1]['shape']) {
  const ground = { ...context, shape: shape ?? null };
  const built = buildPiece(frame, ground);
  const made: readonly MadePiece[] = [
    { piece: frame, built },
    ...doors.map((piece) => ({ piece, built: buildPiece(piece, { ...context, built: [built] }) })),
  ];
  return {
    frame: withHingeBeds({ piece: frame, built }, made),
    doors: made.slice(1).map((one) => withStrike(one, made)),
    again: (fitted: BuiltPiece) => withHingeBeds({ piece: frame, built: fitted }, made),
  };
}

const noted = (part: Part, start: string) => part.machining.filter(({ note = '' }) => note.startsWith(start));
const partsWith = (built: BuiltPiece, start: string) =>
  built.parts.filter((part) => noted(part, start).length > 0);

/** Where the foot and the lock or hinge edges of a door come in its frame, both with their lower left corner known. */
function placeDoor(frame: BuiltPiece, built: BuiltPiece, hinged: 'left' | 'right') {
  const top = frame.parts[2]?.placements[0]; // the top member of a free frame, inner edge at its y = 0
  const left = frame.parts[3]?.placements[0];
  const right = frame.parts[1]?.placements[0];
  if (!top || !left || !right) throw new Error('no frame of four');
  const y = top.origin.y - worked(built, 'gt') - worked(built, 'Hd');
  const x =
    hinged === 'left'
      ? left.origin.x + worked(built, 'gs')
      : right.origin.x - worked(built, 'gs') - worked(built, 'Wd');
  return { x, y };
}

describe('a door in a free frame', () => {
  test('fills its opening less its own gaps, and has its hinge beds in the upright member', () => {
    const { frame, doors } = hang(free(), [door('d', { hinged: 'left', gapSide: 3 })]);
    const [built] = doors;
    if (!built) throw new Error('no door');
    expect(worked(built, 'Wd')).toBe(700 - 10 - 90 - 6);
    expect(worked(built, 'Hd')).toBe(900 - 10 - 90 - 5);
    const [member, ...others] = partsWith(frame, 'hinge leaf of');
    expect([member?.name, others.length]).toEqual(['Left member', 0]);
    expectSound(frame);
  });

  test('of five members gives no size', () => {
    const corners = [0, 0, 800, 0, 900, 500, 400, 900, -100, 500];
    const { doors } = hang(free({ corners, width: undefined, height: undefined }), [door('d')]);
    expect(doors[0]?.findings.map(({ code }) => code)).toContain('frame-unfit');
  });
});

describe('a door in the opening of a cabinet front', () => {
  const front = cabinetFront({ rows: 1, columns: 2, fronts: 'inset', cells: [['open', 'open']], width: 900 });
  const made = (asked: readonly object[], fronts: Partial<CabinetFrontParameters> = {}) => {
    const piece = { ...front, parameters: { ...front.parameters, ...fronts } };
    const built = buildPiece(piece, boxContext());
    const doors = asked.map((one, i) => {
      const each = door(i === 0 ? 'd' : 'e', { frame: undefined, cabinetFront: 'front', ...one });
      return { piece: each, built: buildPiece(each, { ...context, built: [built] }) };
    });
    const all = [{ piece, built }, ...doors];
    const fitted = withFrontFittings({ piece, built }, all);
    return { fitted, doors, again: () => withFrontFittings({ piece, built: fitted }, all) };
  };

  test('has its hinge beds and its strike in the uprights beside it', () => {
    const { fitted, again } = made([{ column: 2, hinged: 'right', lock: 'mortise-lock' }]);
    expect(partsWith(fitted, 'hinge leaf of').map(({ name }) => name)).toEqual(['Stile, right']);
    expect(partsWith(fitted, 'strike of').map(({ name }) => name)).toEqual(['Inner stile, row 1']);
    expectSound(fitted);
    expect(again()).toBe(fitted);
  });

  test('that overlays the frame cuts nothing into it', () => {
    const { fitted } = made([{ column: 1, lock: 'mortise-lock' }], { fronts: 'overlay', overlay: 8 });
    expect(partsWith(fitted, 'hinge leaf of')).toEqual([]);
  });

  test('two in one opening meet in it, bolted into its rails; two whole ones are found', () => {
    const pair = [
      { leaf: 'first', hinged: 'left', stile: 45 },
      { leaf: 'second', hinged: 'right', stile: 45 },
    ];
    const wide = { columns: 1, cells: [['open']] as const };
    const { fitted, doors } = made(pair, wide);
    const total = doors.reduce((sum, { built }) => sum + worked(built, 'Wd'), 0);
    expect(total + worked(doors[0]?.built ?? fitted, 'gm') + 2 * worked(fitted, 'g')).toBeCloseTo(
      worked(fitted, 'wo'),
      6,
    );
    expect(partsWith(fitted, 'bolt of').map(({ name }) => name)).toEqual(['Top rail', 'Bottom rail']);
    const clash = made([{}, { hinged: 'right' }], wide);
    expect(clash.fitted.findings.map(({ code }) => code)).toContain('doors-in-frame');
    expect(clash.again()).toBe(clash.fitted);
  });
});

test('a new door goes beside the first of two, hinged on the other side', () => {
  const pieces = [free(), door('d', { leaf: 'first', hinged: 'left', meetingGap: 4 })];
  const added = newPiece('framed-door', {
    id: 'e',
    letter: 'E',
    name: 'New',
    materials: context.materials,
    pieces,
  });
  expect(added.parameters).toMatchObject({ frame: 'frame', leaf: 'second', hinged: 'right', meetingGap: 4 });
});

describe('a parameter that hangs on another', () => {
  const keys = (piece: Piece) => askedParameters(piece).map(({ key }) => key);
  const alone = flatDoor();
  test('is asked only when that is given: row and column of a front, the size of a door without a frame', () => {
    expect(keys(alone)).not.toContain('row');
    expect(keys(alone)).toContain('width');
    const inFront = { ...alone, parameters: { ...alone.parameters, cabinetFront: 'front' } };
    expect(keys(inFront)).toContain('row');
    const inFrame = { ...alone, parameters: { ...alone.parameters, frame: 'frame' } };
    expect(keys(inFrame)).not.toContain('width');
  });
  test('or when that stands at a value, its default included', () => {
    expect(keys(alone)).not.toContain('forendWidth');
    expect(keys({ ...alone, parameters: { ...alone.parameters, lock: 'mortise-lock' } })).toContain(
      'forendWidth',
    );
  });
  test.each(['cabinet-front', 'countertop', 'free-frame', 'free-panel', 'hatch-surround', 'infill'] as const)(
    'of a %s its own size is asked only when it is fitted to no shape',
    (kind) => {
      const piece = newPiece(kind, {
        id: 'x',
        letter: 'X',
        name: 'X',
        materials: context.materials,
        pieces: [],
      });
      const bare = { ...piece, shape: undefined } as unknown as Piece;
      expect(keys(bare)).toContain('height' in piece.parameters ? 'height' : 'width');
      for (const key of ['width', 'height', 'depth', 'corners'])
        expect(keys({ ...piece, shape: 'measured' })).not.toContain(key);
    },
  );
  test.each(pieceKinds)('always: of a %s hangs on a parameter of the same table', (kind) => {
    const table = parametersOf(kind);
    for (const { when } of table)
      if (when && 'key' in when) expect(table.map(({ key }) => key)).toContain(when.key);
  });
});

describe('a frame and its doors', () => {
  test.each(['left', 'right'] as const)(
    'hinged on the %s, have the strike over against the lock and the beds against the hinges',
    (hinged) => {
      const { frame, doors, again } = hang(free(), [door('d', { hinged, lock: 'mortise-lock' })]);
      const [built] = doors;
      if (!built) throw new Error('no door');
      const at = placeDoor(frame, built, hinged);
      const inFrame = (part: Part, one: Part['machining'][number]) => {
        const placed = part.placements[0];
        if (one.kind !== 'recess' || !placed) throw new Error('no box');
        const [a, b] = [placePoint(placed, one.box.min), placePoint(placed, one.box.max)];
        return { y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 };
      };
      const middles = (piece: BuiltPiece, start: string) =>
        piece.parts.flatMap((part) => noted(part, start).map((one) => inFrame(part, one)));
      const [strike] = middles(frame, 'strike of');
      const [forend] = middles(built, 'forend of');
      expect(strike?.y).toBeCloseTo((forend?.y ?? NaN) + at.y, 6);
      expect(strike?.z).toBeCloseTo(forend?.z ?? NaN, 6);
      const beds = middles(frame, 'hinge leaf of').map(({ y }) => y);
      const leaves = middles(built, 'hinge leaf;').map(({ y }) => y + at.y);
      expect(beds.map((y) => y.toFixed(6)).sort()).toEqual(leaves.map((y) => y.toFixed(6)).sort());
      expect(partsWith(frame, 'strike of').map(({ name }) => name)).toEqual([
        hinged === 'left' ? 'Right member' : 'Left member',
      ]);
      expect(again(frame)).toBe(frame);
    },
  );

  test('two that meet have beds on both sides, bolts in head and sill, and the strike of one in the other', () => {
    const both = { lock: 'mortise-lock' };
    const { frame, doors, again } = hang(free({ width: 900 }), [
      door('d', { ...both, leaf: 'first', hinged: 'left' }),
      door('e', { ...both, leaf: 'second', hinged: 'right' }),
    ]);
    const [first, second] = doors;
    if (!first || !second) throw new Error('no doors');
    expect(frame.findings.map(({ code }) => code)).not.toContain('doors-in-frame');
    expect(partsWith(frame, 'hinge leaf of').map(({ name }) => name)).toEqual([
      'Right member',
      'Left member',
    ]);
    expect(partsWith(frame, 'bolt of').map(({ name }) => name)).toEqual(['Bottom member', 'Top member']);
    expect(partsWith(frame, 'strike of')).toEqual([]);
    expect(partsWith(first, 'strike of')).toEqual([]);
    expect(partsWith(second, 'strike of').map(({ name }) => name)).toEqual(['Stile, lock edge']);
    expect(again(frame)).toBe(frame);
    const [a, b] = [placeDoor(frame, first, 'left'), placeDoor(frame, second, 'right')];
    expect(b.x - a.x - worked(first, 'Wd')).toBeCloseTo(worked(first, 'gm'), 6);
    const [, , top] = frame.parts;
    const hole = top && noted(top, 'bolt of')[0];
    const placed = top?.placements[0];
    if (hole?.kind !== 'hole' || !placed) throw new Error('no bolt hole');
    expect(placePoint(placed, { x: hole.x, y: 0, z: hole.y }).x).toBeCloseTo(b.x + 6, 6);
  });

  test.each([
    ['doors-in-frame', [{ hinged: 'left' }, { hinged: 'right' }]],
    ['doors-in-frame', [{ leaf: 'first' }, { leaf: 'second' }]],
    ['doors-in-frame', [{ leaf: 'first' }]],
    [
      'doors-differ',
      [
        { leaf: 'first', meetingGap: 4 },
        { leaf: 'second', hinged: 'right' },
      ],
    ],
  ])('%s is found', (code, asked) => {
    const { frame, again } = hang(
      free({ width: 900 }),
      asked.map((one, i) => door(i === 0 ? 'd' : 'e', one)),
    );
    expect(frame.findings.find((one) => one.code === code)?.message).toMatch(/\d/);
    expect(again(frame)).toBe(frame);
  });
});

const corners: readonly FrameCorner[] = ['rebate', 'half-lap', 'bridle', 'mitre', 'butt'];

describe('always:', () => {
  const sensible = fc.record({
    corner: fc.constantFrom(...corners),
    stop: fc.constantFrom('planted' as const, 'rebated' as const, 'cover' as const, 'none' as const),
    hinged: fc.constantFrom('left' as const, 'right' as const),
    jamb: fc.integer({ min: 20, max: 40 }),
    sill: fc.boolean(),
    two: fc.boolean(),
  });

  test('in a door frame, lined or flat, cuts stay inside, and twice fitted is the very same', () => {
    fc.assert(
      fc.property(sensible, ({ corner, stop, hinged, jamb, sill, two }) => {
        const frame: Piece = {
          kind: 'door-frame',
          id: 'frame',
          letter: 'A',
          name: 'Saloon frame',
          parameters: {
            ...{ corner, stop, sill, jambThickness: jamb, headThickness: jamb, doorThickness: 20 },
            materials: { frame: 'oak' },
          },
        };
        const other = hinged === 'left' ? 'right' : 'left';
        const lock = { lock: 'mortise-lock', thickness: 20 };
        const asked = two
          ? [
              door('d', { ...lock, leaf: 'first', hinged }),
              door('e', { ...lock, leaf: 'second', hinged: other }),
            ]
          : [door('d', { ...lock, hinged })];
        const { frame: built, doors, again } = hang(frame, asked, openingShape(curlewOpening));
        if (built.parts.length === 0) return;
        expectSound(built);
        doors.forEach(expectSound);
        expect(again(built)).toBe(built);
        const jambs = built.parts.filter(({ name }) => name.startsWith('Jamb'));
        const [bedded, plain] = ['left', 'right'].map((side) => jambs.find(({ hand }) => hand === side));
        const beds = (part: Part | undefined) => (part ? noted(part, 'hinge leaf of').length : NaN);
        const on = { left: beds(bedded), right: beds(plain) };
        expect(on[hinged]).toBeGreaterThan(1);
        expect(on[other] > 0).toBe(two);
      }),
      { numRuns: 60 },
    );
  });

  test('a bolt hole is in the wood of the frame before it is bored', () => {
    const { frame } = hang(free({ width: 900 }), [
      door('d', { leaf: 'first', hinged: 'left' }),
      door('e', { leaf: 'second', hinged: 'right' }),
    ]);
    const [part] = partsWith(frame, 'bolt of');
    const placed = part?.placements[0];
    const hole = part && noted(part, 'bolt of')[0];
    if (!placed || hole?.kind !== 'hole') throw new Error('no hole');
    const y = hole.from === 'far-edge' ? part.finished.width - 5 : 5;
    const at = placePoint(placed, { x: hole.x, y, z: hole.y });
    expect(occupiesDeep(part, at)).toBe(true);
    expect(unplacePoint(placed, at).x).toBeCloseTo(hole.x, 9);
  });
});
