import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, newPiece, pieceKinds } from '#core/joinery';
import type { BuildContext, Part } from '#core/joinery';
import { buildKind, expectWords, partOf, usualMaterials } from '../../support/flat-pieces.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const oakBoards = (width: number, more: { length?: number; thickness?: number } = {}) => [
  { material: 'oak', length: more.length ?? 2400, width, thickness: more.thickness ?? 32 },
];

const shelf = (depth: number, more: Partial<BuildContext> = {}) =>
  buildKind(
    'free-panel',
    {
      corners: [0, 0, 900, 0, 900, depth, 0, depth],
      grain: 'across',
      gap: 0,
      thickness: 20,
      materials: { panel: 'oak' },
    },
    more,
  );

test('always: the steps of a piece have names of their own, whatever is glued up', () => {
  for (const kind of pieceKinds) {
    const built = buildPiece(
      newPiece(kind, { id: 'p', letter: 'P', name: 'New', materials: usualMaterials }),
      {
        shape: null,
        materials: usualMaterials,
        settings: { ...defaultSettings, widestFlat: 30 },
        boards: oakBoards(30),
      },
    );
    const ids = built.steps.map(({ id }) => id);
    expect(new Set(ids).size, `${kind}: ${ids.join(', ')}`).toBe(ids.length);
  }
});

/** Width of the staves of a panel taken together, mm. */
const sumOf = (part: Part) => (part.staves?.count ?? 0) * part.rough.width;

describe('a panel of solid timber that must lie flat', () => {
  const built = shelf(290, { boards: oakBoards(154) });
  const panel = partOf(built, 1);

  test('wider than 120 is glued up of staves no wider than that (joinery D3, C16)', () => {
    expect(panel.staves?.count).toBe(3);
    expect(panel.staves?.width).toBeCloseTo(290 / 3, 9);
  });
  test('its staves are 25 longer, together 6 and 2 a joint wider, 5 thicker than the panel (joinery D4)', () => {
    expect(panel.rough).toEqual({ length: 925, width: 100, thickness: 25 });
    expect(sumOf(panel)).toBe(290 + 6 + 2 * 2);
  });
  test('the piece has the whole panel still', () => {
    expect(panel.finished).toEqual({ length: 900, width: 290, thickness: 20 });
    expect(panel.quantity).toBe(1);
    expectSound(built);
    expectWorking(built);
    expectWords(built);
  });
  test('the working leads from the panel to the stave', () => {
    expect(worked(built, 'glue_1_n')).toBe(3);
    expect(worked(built, 'glue_1_stave_W')).toBe(100);
    const { working } = panel.staves ?? {};
    expect(
      [working?.length, working?.width, working?.thickness].map((name) => worked(built, name ?? '')),
    ).toEqual([925, 100, 25]);
    expect(built.working.find(({ name }) => name === 'glue_1_n')?.inputs.map(({ value }) => value)).toEqual([
      290, 154, 120,
    ]);
  });
  test('is glued before anything else is done to it, with rings turned in turn and clamps by their spread (joinery F7)', () => {
    const at = built.steps.findIndex(({ id }) => id === 'glue-up');
    const first = built.steps.findIndex(({ id, parts }) => id !== 'glue-up' && parts.includes('P1'));
    expect(at).toBeGreaterThanOrEqual(0);
    expect(at).toBeLessThan(first);
    expect(built.steps[first]?.after).toContain('glue-up');
    // ceil(925 / (2 · (96.7 + 20))) = 4
    expect(built.steps[at]?.text).toMatch(/rings up and down.*triangle/);
    expect(built.steps[at]?.text).toContain('of 3 staves 925 × 100 × 25, 4 clamps; planed to 20');
  });
  test('is called too wide no longer', () => {
    expect(codesOf(built)).not.toContain('solid-too-wide');
  });
  test('of 120 stays one board, and of 290 too where the project allows it', () => {
    expect(partOf(shelf(120), 1).staves).toBeUndefined();
    const wide = shelf(290, { settings: { ...defaultSettings, widestFlat: 300 } });
    expect(partOf(wide, 1).staves).toBeUndefined();
    expect(codesOf(wide)).not.toContain('solid-too-wide');
  });
});

test('boards narrower than flat staves may be make more of them', () => {
  // (290 + 4)/(80 - 2) = 3.77
  const panel = partOf(shelf(290, { boards: oakBoards(80) }), 1);
  expect(panel.staves?.count).toBe(4);
  expect(panel.rough.width).toBeLessThanOrEqual(80);
});

test('staves below 40 are told of', () => {
  const built = shelf(290, { boards: oakBoards(40) });
  expect(built.findings.find(({ code }) => code === 'staves-narrow')?.message).toMatch(
    /8 staves only 36\.3 wide/,
  );
});

test('a rack without a board long and thick enough leaves the panel of one board, and a note says so', () => {
  const built = shelf(290, { boards: oakBoards(300, { thickness: 24 }) });
  expect(partOf(built, 1).staves).toBeUndefined();
  expect(built.findings.find(({ code }) => code === 'wide-board-unjointed')).toMatchObject({ about: 'P1' });
});

test('planed boards keep their thickness', () => {
  const materials = usualMaterials.map((one) =>
    one.id === 'oak' ? { ...one, state: 'planed' as const } : one,
  );
  const panel = partOf(shelf(290, { materials, boards: oakBoards(200, { thickness: 20 }) }), 1);
  expect(panel.rough.thickness).toBe(20);
  expect(panel.staves?.count).toBe(3);
});

test('what need not lie flat is glued up only where every board is too narrow', () => {
  const frame = (boards: BuildContext['boards']) =>
    buildKind(
      'step',
      { totalRise: 400, materials: { sides: 'oak', treads: 'oak' } },
      boards ? { boards } : {},
    ).parts.find(({ name }) => name === 'Side, left');
  expect(frame(oakBoards(300))?.staves).toBeUndefined();
  expect(frame(undefined)?.staves).toBeUndefined();
  const narrow = frame(oakBoards(160));
  expect(narrow?.staves?.count).toBe(2);
  expect(narrow?.staves && narrow.rough.width <= 160).toBe(true);
});

test('always: staves cover the panel with the allowances of D4, fit the boards, stay flat, and no size of the piece moves', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 60, max: 700, noNaN: true }),
      fc.integer({ min: 60, max: 400 }),
      fc.integer({ min: 60, max: 300 }),
      (depth, board, widestFlat) => {
        const built = shelf(depth, {
          boards: oakBoards(board),
          settings: { ...defaultSettings, widestFlat },
        });
        const plain = shelf(depth, { settings: { ...defaultSettings, widestFlat: 1e6 } });
        expectWorking(built);
        const [panel, one] = [partOf(built, 1), partOf(plain, 1)];
        expect({ ...panel, staves: 0, rough: 0, notes: 0 }).toEqual({
          ...one,
          staves: 0,
          rough: 0,
          notes: 0,
        });
        if (!panel.staves) {
          expect(one.rough.width).toBeLessThanOrEqual(board);
          expect(depth).toBeLessThanOrEqual(widestFlat + 1e-6);
          return;
        }
        const { count, width } = panel.staves;
        expect(count).toBeGreaterThan(1);
        expect(count * width).toBeCloseTo(panel.cut.width, 9);
        expect(width).toBeLessThanOrEqual(widestFlat + 1e-9);
        expect(panel.rough.width).toBeLessThanOrEqual(board);
        expect(sumOf(panel)).toBeGreaterThanOrEqual(panel.cut.width + 6 + 2 * (count - 1) - 1e-9);
        // not one stave more than it takes
        const fewer = (panel.cut.width + 6 + 2 * (count - 2)) / (count - 1);
        expect(count === 2 || fewer > board - 1e-6 || panel.cut.width / (count - 1) > widestFlat - 1e-6).toBe(
          true,
        );
      },
    ),
  );
});

// joinery D3: book-matching consumes two consecutive slices; resaw loss is a kerf of 1.5 and 2 of planing a leaf, so that a
// board is 2·t + 5.5 thick; its calculated example: leaves of 6 want 17.5
describe('a panel opened like a book', () => {
  const book = (width: number, thick: number, boards = oakBoards(200, { thickness: 27 })) =>
    buildKind(
      'free-panel',
      {
        corners: [0, 0, 600, 0, 600, width, 0, width],
        ...{ grain: 'across', gap: 0, thickness: thick, match: 'book' },
        materials: { panel: 'oak' },
      },
      { boards },
    );
  test('is of two leaves out of one blank as thick as two, the saw and planing (joinery D3)', () => {
    const panel = partOf(book(110, 6), 1);
    expect(panel.staves).toMatchObject({ count: 2, width: 55, leaves: 2 });
    expect(panel.rough.thickness).toBe(17.5);
    expect(panel.rough.width).toBe(Math.ceil((110 + 6 + 2) / 2));
    expect(panel.notes.join(' ')).toContain('mirror image');
  });
  test('always has leaves in pairs, though three staves would do', () => {
    const built = book(290, 9);
    expect(partOf(built, 1).staves?.count).toBe(4);
    expect(built.steps.find(({ id }) => id === 'glue-up')?.text).toMatch(
      /4 leaves out of 2 blanks .*saw it through its thickness/,
    );
    expectWorking(built);
    expectWords(built);
  });
  test('is glued up plainly where no board is thick enough for two leaves, and that is said with the figure', () => {
    const built = book(290, 12);
    expect(partOf(built, 1).staves).toMatchObject({ count: 3, width: 290 / 3 });
    expect(partOf(built, 1).staves?.leaves).toBeUndefined();
    expect(built.findings.find(({ code }) => code === 'not-book-matched')?.message).toContain(
      'a board of 29.5',
    );
  });
  test('cannot be of a sheet', () => {
    const built = buildKind('free-panel', {
      corners: [0, 0, 600, 0, 600, 300, 0, 300],
      match: 'book',
      materials: { panel: 'ply18' },
    });
    expect(codesOf(built)).toContain('not-book-matched');
    expect(partOf(built, 1).staves).toBeUndefined();
  });
  test('is offered for the panel of a framed door', () => {
    const piece = newPiece('framed-door', { id: 'p', letter: 'P', name: 'Door', materials: usualMaterials });
    if (piece.kind !== 'framed-door') throw new Error('another kind');
    const materials = { frame: 'oak', panel: 'oak' };
    const built = buildPiece(
      { ...piece, parameters: { ...piece.parameters, materials, panelThickness: 10, panelMatch: 'book' } },
      { shape: null, materials: usualMaterials, settings: defaultSettings },
    );
    const panel = built.parts.find(({ name }) => name === 'Panel');
    expect(panel?.staves?.leaves).toBe(2);
    expect(panel?.rough.thickness).toBe(25.5);
    expectWorking(built);
  });
});

test('no kind as it is first offered loses its soundness by narrow boards', () => {
  for (const kind of pieceKinds) {
    const piece = newPiece(kind, { id: 'p', letter: 'P', name: 'New', materials: usualMaterials });
    const built = buildPiece(piece, {
      shape: null,
      materials: usualMaterials,
      settings: defaultSettings,
      boards: oakBoards(50, { length: 4000, thickness: 80 }),
    });
    expectSound(built);
    expectWorking(built);
    for (const step of built.steps)
      for (const id of step.after) expect(built.steps.map((one) => one.id)).toContain(id);
  }
});

describe('the glue of a panel', () => {
  const filler = (more: Partial<BuildContext> = {}, parameters: object = {}) =>
    buildKind(
      'infill',
      {
        height: 800,
        gaps: [190, 192, 195, 191, 190],
        ...parameters,
        materials: { filler: 'oak' },
      },
      { boards: oakBoards(154), ...more },
    );
  const items = (built: ReturnType<typeof filler>) => built.fixings.map(({ item }) => item);
  const step = (built: ReturnType<typeof filler>) =>
    built.steps.find(({ id }) => id === 'glue-up')?.text ?? '';
  test('is bought and named where nothing else of the piece is glued', () => {
    expect(items(filler())).toContain('White glue (D3, water-resistant), small bottle');
    // the shorter of its open times (joinery F7)
    expect(step(filler())).toContain('Glue: PVA wood glue, D3, closed within 8 minutes.');
  });
  test('is that of the project, or of the piece', () => {
    const settings = { ...defaultSettings, glue: 'epoxy' } as const;
    expect(items(filler({ settings }))).toContain('Epoxy glue, small pack');
    expect(step(filler({ settings }))).toContain('Glue: Epoxy, slow hardener');
    expect(items(filler({ settings }, { glue: 'polyurethane' }))).toContain(
      'Polyurethane glue, small bottle',
    );
  });
  test('is not bought twice, nor where nothing is glued up', () => {
    const glue = (built: ReturnType<typeof filler>) => items(built).filter((item) => /glue/i.test(item));
    expect(glue(shelf(290, { boards: oakBoards(154) }))).toHaveLength(1);
    expect(glue(filler())).toHaveLength(1);
    expect(glue(filler({}, { gaps: [40, 42, 45, 41, 40] }))).toEqual([]);
  });
  test('that takes splashes only is warned of in the wet', () => {
    expect(codesOf(filler({ settings: { ...defaultSettings, wet: true } }))).toContain('glue-not-for-wet');
  });
});
