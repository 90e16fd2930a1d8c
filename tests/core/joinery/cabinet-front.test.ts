import { describe, expect, test } from 'vitest';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, CabinetFrontParameters } from '#core/joinery';
import { boxContext, cabinetFront, codesOf, worked } from '../../support/joinery-boxes.ts';
import { openingShape } from '../../support/joinery-samples.ts';
import type { Corners } from '../../support/joinery-samples.ts';

const build = (parameters: Partial<CabinetFrontParameters> = {}): BuiltPiece =>
  buildPiece(cabinetFront(parameters), boxContext());
const fit = (at: Corners, parameters: Partial<CabinetFrontParameters> = {}, tilt = 0): BuiltPiece =>
  buildPiece(
    cabinetFront(parameters),
    boxContext({ shape: openingShape(at, { tilt }), shapeName: 'Galley niche' }),
  );

// One bank 460 × 640, stiles 40, rails 35/30/30/30/45, four drawers, step 15, overlay 8, kerf 3.
// Every value as printed in the trade rulebook's calculated example (joinery B6), whose arithmetic was evaluated there.
describe('the worked front', () => {
  const built = build({ continuous: 'true' });

  test.each([
    ['wo', 380],
    ['total', 470],
    ['h1', 95],
    ['h4', 140],
    ['front_w', 396],
    ['f1', 111],
    ['f4', 156],
    ['gap', 14],
    ['sum_fronts', 534],
    ['strip_true', 586],
    ['strip_tight', 553],
    ['slip_per_joint', 11],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 9);
  });

  test('a geometric row of ratio 1.12 begins at 98.34 and ends at 138.16 before rounding', () => {
    const graded = build({ grading: 'geometric', ratio: 1.12 });
    expect(worked(graded, 'g1')).toBeCloseTo(98.34, 2);
    expect(worked(graded, 'g4')).toBeCloseTo(138.16, 2);
    // rounded down to 0.5, the bottom one takes the rest (joinery B6)
    expect(worked(graded, 'h1')).toBe(98);
    const heights = [1, 2, 3, 4].map((i) => worked(graded, `h${i}`));
    expect(heights.reduce((sum, h) => sum + h, 0)).toBeCloseTo(470, 9);
  });

  test('stub tenons of 10 make the rails 400 long', () => {
    expect(worked(build({ joint: 'stub-tenon', jointLength: 10 }), 'rail_L')).toBeCloseTo(400, 9);
  });

  test('it is two stiles, three kinds of rail and four fronts', () => {
    expect(built.parts.map((part) => `${part.id} ${part.name} ${part.quantity}`)).toEqual([
      'F1 Stile, left 1',
      'F2 Stile, right 1',
      'F3 Top rail 1',
      'F4 Bottom rail 1',
      'F5 Rail 3',
      'F6 Drawer front, row 1 1',
      'F7 Drawer front, row 2 1',
      'F8 Drawer front, row 3 1',
      'F9 Drawer front, row 4 1',
    ]);
  });

  test('nothing forbids cutting it', () => {
    expect(built.findings.filter((found) => found.severity !== 'note')).toEqual([]);
  });
});

describe('figure that runs through', () => {
  test('a stack with grain along the width comes out of a strip cut across the grain, from the top', () => {
    const [set] = build({ continuous: 'true' }).matchedSets;
    expect(set).toEqual({
      id: 'F set 1',
      parts: ['F6', 'F7', 'F8', 'F9'],
      direction: 'across',
      between: [14, 14, 14],
      trim: 5,
    });
  });
  test('cut close, only the kerf is lost between fronts and the slip is told', () => {
    const built = build({ continuous: 'tight' });
    expect(built.matchedSets[0]?.between).toEqual([3, 3, 3]);
    expect(built.findings.find((one) => one.code === 'figure-slips')?.message).toContain('11');
  });
  test('upright grain makes a strip along the grain', () => {
    expect(build({ continuous: 'true', grain: 'vertical' }).matchedSets[0]?.direction).toBe('along');
  });
  test('rows of fronts with grain along the width make one strip for each row', () => {
    const built = build({ continuous: 'true', columns: 2, width: 900 });
    expect(built.matchedSets.map((set) => [set.parts.length, set.direction, set.between])).toEqual(
      Array.from({ length: 4 }, () => [2, 'along', [24]]),
    );
  });
  test('an open cell ends a strip', () => {
    const cells = [['drawer'], ['open'], ['drawer'], ['drawer']] as const;
    expect(build({ continuous: 'true', cells }).matchedSets.map((set) => set.parts)).toEqual([['F8', 'F9']]);
  });
  test('fronts nearer than the kerf cannot be cut truly', () => {
    const built = build({ continuous: 'true', overlay: 14 });
    expect(codesOf(built)).toContain('gap-below-kerf');
  });
});

describe('fitted to a measured opening', () => {
  test('an upright opening of 464 × 644 gives a frame of 460 × 640 with a gap of 2 all round', () => {
    const built = fit({ BL: [0, 0], BR: [464, 0], TR: [464, 644], TL: [0, 644] }, { width: 1, height: 1 });
    expect(worked(built, 'W')).toBe(460);
    expect(worked(built, 'H')).toBe(640);
    expect(built.opening).toEqual({
      BL: { x: -2, y: -2 },
      BR: { x: 462, y: -2 },
      TR: { x: 462, y: 642 },
      TL: { x: -2, y: 642 },
    });
  });
  test('a leaning opening gives the upright rectangle clear of its corners, and says it is out of square', () => {
    // left side leans 6 in at the top, right side 4 out, head falls 3 to the left
    const built = fit({ BL: [0, 0], BR: [480, 0], TR: [484, 660], TL: [6, 657] });
    expect(worked(built, 'W')).toBe(480 - 6 - 4);
    expect(worked(built, 'H')).toBe(657 - 4);
    expect(codesOf(built)).toContain('opening-out-of-square');
    expect(codesOf(built)).toContain('gap-tapers');
  });
  test('a square opening measured in a boat that lists loses nothing', () => {
    const t = 0.02;
    const turn = (x: number, y: number): [number, number] => [
      x * Math.cos(t) - y * Math.sin(t),
      x * Math.sin(t) + y * Math.cos(t),
    ];
    const at: Corners = { BL: turn(0, 0), BR: turn(464, 0), TR: turn(464, 644), TL: turn(0, 644) };
    const built = fit(at, {}, t);
    expect(worked(built, 'W')).toBe(460);
    expect(worked(built, 'H')).toBe(640);
    expect(built.turn).toBeCloseTo(-t, 12);
  });
  test('wood left for scribing is on the outer edges of the outer stiles only, and too little is told', () => {
    const built = fit({ BL: [0, 0], BR: [480, 0], TR: [484, 660], TL: [6, 660] }, { scribe: 7 });
    const [left, right] = built.parts;
    expect(left?.cut.width).toBe(47);
    expect(left?.edges).toEqual([{ edge: 'face-edge', treatment: 'scribed', amount: 7 }]);
    expect(right?.edges).toEqual(left?.edges);
    expect(worked(built, 'W')).toBe(474);
    expect(codesOf(built)).toContain('scribe-too-small');
  });
  test('without an opening and without sizes it asks for them', () => {
    const parameters = { materials: { frame: 'oak', fronts: 'ply18' } };
    const built = buildPiece({ ...cabinetFront(), parameters }, boxContext());
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ severity: 'stop', code: 'size-missing' });
  });
});

describe('findings', () => {
  const has = (code: string, parameters: Partial<CabinetFrontParameters>) =>
    expect(codesOf(build(parameters))).toContain(code);

  test('a lift of 10 under a gap of 10 is blocked (G16)', () => has('lift-blocked', { overlay: 10 }));
  test('a lift of 10 under a gap of 12 is not', () =>
    expect(codesOf(build({ overlay: 9 }))).not.toContain('lift-blocked'));
  test('an inset drawer with a lift is blocked by the frame (G16)', () =>
    has('lift-blocked', { fronts: 'inset', notch: 10 }));
  test('overlays that meet are refused (B6)', () => has('overlay-too-wide', { overlay: 14.5 }));
  test('an inset gap of 1.4 is no room once varnished (G6)', () =>
    has('no-room-once-finished', { fronts: 'inset', gap: 1.4 }));
  test('heights that do not add up are told (G10)', () =>
    has('heights-do-not-add', { grading: 'given', heights: [100, 110, 120, 150] }));
  test('heights that do add up are taken', () => {
    const built = build({ grading: 'given', heights: [100, 110, 120, 140] });
    expect([1, 2, 3, 4].map((i) => worked(built, `h${i}`))).toEqual([100, 110, 120, 140]);
    expect(codesOf(built)).not.toContain('heights-do-not-add');
  });
  test('too few heights are refused', () => has('heights-missing', { grading: 'given', heights: [100] }));
  test('a step above its limit is pointed out', () => has('parameter-above-limit', { step: 41 }));
  test('a short stub tenon is weak (C4)', () => has('tenon-short', { joint: 'stub-tenon', jointLength: 10 }));
  test('a tenon that leaves 3.5 of a stile is refused with the number (C0.2)', () => {
    // 40 wide, tenon 35, glue well 1.5
    const built = build({ joint: 'stub-tenon', jointLength: 35 });
    const found = built.findings.find((one) => one.code === 'wall-too-thin');
    expect(found?.message).toContain('3.5 of wood is left; it needs 5');
  });
  test('two dowels in a rail of 30 are crowded (C2)', () => has('dowels-crowded', { joint: 'dowel' }));
  test('pocket screws in end grain are weak (C0.1)', () => has('screw-into-end', { joint: 'butt' }));
  test('solid fronts wider than 120 would not stay flat and are glued up (D3)', () => {
    const built = build({ materials: { frame: 'oak', fronts: 'oak' } });
    const wide = built.parts.filter(
      ({ name, finished }) => name.startsWith('Drawer front') && finished.width > 120,
    );
    expect(wide.length).toBeGreaterThan(0);
    expect(wide.map(({ staves }) => staves?.count)).toEqual(wide.map(() => 2));
  });
  test('upright grain in a low solid drawer front will warp (G12)', () =>
    has('grain-across', { grain: 'vertical', materials: { frame: 'oak', fronts: 'oak' } }));
  test('a frame of sheet is pointed out', () =>
    has('material-kind', { materials: { frame: 'ply18', fronts: 'ply18' } }));
  // common practice, no source: 80 × 40 for a hand
  test('an opening 20 wide, which no hand goes through, is pointed out', () =>
    has('opening-too-small', { width: 100 }));
  test('an opening of a usual size is not', () =>
    expect(codesOf(build({}))).not.toContain('opening-too-small'));
  test('members wider than the front are refused with the size that came out at nothing', () => {
    const built = build({ columns: 8, stileWidth: 60 });
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ severity: 'stop', code: 'front-impossible' });
  });
  test('half a column is refused', () => has('grid-not-whole', { columns: 1.5 }));
  test('cells for another grid are told', () => has('cells-do-not-fit', { cells: [['door']] }));
});

test('doors get hinges and latches, drawers pulls and screws', () => {
  const built = build({
    columns: 2,
    width: 900,
    rows: 2,
    cells: [
      ['drawer', 'drawer'],
      ['door', 'open'],
    ],
  });
  const bought = Object.fromEntries(built.fixings.map((one) => [`${one.item}/${one.use}`, one.quantity]));
  expect(bought['Cabinet hinge with screws/doors']).toBe(2);
  expect(bought['Push-button latch with pull/doors']).toBe(1);
  expect(bought['Drawer pull or finger hole/drawers']).toBe(2);
  expect(built.parts.filter((part) => part.name.startsWith('Door')).map((part) => part.id)).toEqual(['F10']);
});
