import { describe, expect, test } from 'vitest';
import { boxOfOutline, outlineArea } from '#core/geometry';
import { buildPiece, newPiece, parametersOf, requiredPieces, shapeNeeds } from '#core/joinery';
import type { BuiltPiece, FlatDoorParameters, Part } from '#core/joinery';
import { codesOf, worked } from '../../support/joinery-boxes.ts';
import { doorContext, doorMaterials, flatDoor, lockerDoor } from '../../support/flat-doors.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { contextFor, curlewOpening, doorFrame, openingShape } from '../../support/joinery-samples.ts';

const build = (parameters: Partial<FlatDoorParameters> = {}): BuiltPiece =>
  buildPiece(flatDoor(parameters), doorContext());

function part(built: BuiltPiece, id: string): Part {
  const found = built.parts.find((one) => one.id === id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
}

// Door 578.5 × 1704 × 18, lippings 8, two bands of six slots 10 × 120 in 190, pivot in the hinge edge and 4 proud, film 0.15.
// Every value as printed in the trade rulebook's calculated example (joinery B2), whose arithmetic was evaluated there.
describe('the worked door', () => {
  const square = build({ bevelDegrees: 0 });
  const rounded = build({ bevelDegrees: 0, cornerRadius: 60 });

  test.each([
    ['core_W', 562.5],
    ['core_H', 1688.0],
    ['lip_v_rough_L', 1724.0],
    ['lip_h_L', 562.5],
    ['lip_rough_T', 8.5],
    ['lip_rough_W', 20.0],
    ['zone', 190],
    ['pitch', 36.0],
    ['web', 26.0],
    ['mass', 9.76],
    ['g_flush', 0.28],
    ['g_proud', 0.42],
    ['need', 1.52],
  ])('%s is %d', (name, value) => {
    expect(worked(square, name)).toBeCloseTo(value, 2);
  });
  test('free area of both bands is 14142 mm²', () => {
    expect(worked(square, 'free_area_2_bands')).toBeCloseTo(14142, -0.5);
  });
  test('a radius of 60 takes blocks of 70 with 74.14 of wood at the corner', () => {
    expect(worked(rounded, 'block')).toBe(70);
    expect(worked(rounded, 'solid_at_corner')).toBeCloseTo(74.14, 2);
  });
  test('between blocks the lippings are the door less two blocks, and the core is notched by the block less the lipping', () => {
    expect(worked(rounded, 'lip_v_L')).toBe(1704 - 2 * 70);
    expect(worked(rounded, 'lip_h_L')).toBe(578.5 - 2 * 70);
    expect(outlineArea(part(rounded, 'G1').outline)).toBeCloseTo(562.5 * 1688 - 4 * 62 ** 2, 6);
  });
  test('its parts are those of the rulebook', () => {
    expect(rounded.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`)).toEqual([
      'G1 Core 1',
      'G2 Lipping, hinge edge 1',
      'G3 Lipping, lock edge 1',
      'G4 Lipping, top 1',
      'G5 Lipping, bottom 1',
      'G6 Corner block, hinge edge 2',
      'G7 Corner block, lock edge, top 1',
      'G8 Corner block, lock edge, foot 1',
      'G9 Batten 2',
    ]);
  });
  test('a lipping is asked for 20 longer, 0.5 wider and 2 thicker', () => {
    expect(part(square, 'G2').finished).toEqual({ length: 1704, width: 8, thickness: 18 });
    expect(part(square, 'G2').rough).toEqual({ length: 1724, width: 8.5, thickness: 20 });
  });
  test('hinges sit 150 from the top, 200 from the bottom, the third midway', () => {
    expect(worked(square, 'hinges')).toBe(3);
    expect(worked(square, 'hinge_top')).toBe(1554);
    expect(worked(square, 'hinge_low')).toBe(200);
    expect(worked(square, 'hinge_mid')).toBe(877);
    const beds = part(square, 'G2').machining.filter((one) => one.kind === 'recess');
    expect(beds.map((one) => (one.box.min.x + one.box.max.x) / 2)).toEqual([1554, 877, 200]);
  });
  test('steps come in the order of the rulebook', () => {
    expect(build({ cornerRadius: 60 }).steps.map((step) => step.id)).toEqual([
      'measure',
      'core',
      'strips',
      'blocks',
      'level-lippings',
      'upright-lippings',
      'corners',
      'slots',
      'arris',
      'bevel',
      'hinges',
      'battens',
      'finish',
      'hang',
      'latch',
    ]);
  });
  test('a locker door within all limits has nothing against it', () => {
    const built = build({ ...lockerDoor, slots: 3, slotZone: 100 });
    expect(built.findings.filter((found) => found.severity !== 'note')).toEqual([]);
    expect(worked(built, 'hinges')).toBe(2);
    expectSound(built);
    expectWorking(built);
  });
});

describe('slots', () => {
  test('two bands, each as far from its edge as asked, the outer slots a zone apart', () => {
    const core = part(build(), 'G1');
    expect(core.holes).toHaveLength(12);
    const boxes = core.holes.map(boxOfOutline);
    expect(Math.min(...boxes.map((box) => box.minX))).toBeCloseTo(100 - 8, 9);
    expect(Math.max(...boxes.map((box) => box.maxX))).toBeCloseTo(1704 - 100 - 8, 9);
    expect(Math.min(...boxes.map((box) => box.minY))).toBeCloseTo((578.5 - 190) / 2 - 8, 9);
    expect(Math.max(...boxes.map((box) => box.maxY))).toBeCloseTo((578.5 + 190) / 2 - 8, 9);
  });
  test('their area is the free area of the working, by their outlines', () => {
    for (const slotsRun of ['upright', 'across'] as const) {
      const built = build({ slotsRun });
      const area = part(built, 'G1').holes.reduce((sum, hole) => sum + outlineArea(hole), 0);
      expect(area).toBeCloseTo(worked(built, 'free_area_2_bands'), 6);
    }
  });
  test('none asked for, none cut and none worked out', () => {
    const built = build({ slots: 0 });
    expect(part(built, 'G1').holes).toEqual([]);
    expect(built.steps.map((step) => step.id)).not.toContain('slots');
    expect(built.working.some((step) => step.name === 'pitch')).toBe(false);
  });
});

describe('findings', () => {
  test.each<[string, string, Partial<FlatDoorParameters>]>([
    ['B2.1', 'slot-crosses-lipping', { slotEdge: 5 }],
    ['B2.1', 'slot-crosses-lipping', { slotZone: 570 }],
    ['B2.1', 'slot-crosses-lipping', { cornerRadius: 140, slotZone: 400 }],
    ['B2', 'slot-bands-meet', { height: 430, slots: 3, slotZone: 100 }],
    ['B2.2', 'slots-run-together', { slots: 20 }],
    ['B2', 'slot-too-short', { slotLength: 20, slotWidth: 25, slots: 2 }],
    ['0.7', 'no-room-once-finished', { gapSide: 1.4 }],
    ['B1', 'door-size-missing', { width: undefined }],
    ['B2', 'count-not-whole', { slots: 2.5 }],
    ['B2', 'door-impossible', { width: 10 }],
  ])('%s: %s stops', (_, code, parameters) => {
    const built = build(parameters);
    expect(built.findings.find((found) => found.code === code)?.severity).toBe('stop');
    expectSound(built);
  });
  test.each<[string, string, Partial<FlatDoorParameters>]>([
    ['B2.2', 'slot-web-thin', { slots: 8 }],
    ['B2', 'slots-near-edge', { slotEdge: 50 }],
    ['B2.4', 'batten-covers-slots', { height: 700, battens: 'always', slots: 2 }],
    ['B2.3', 'door-strikes-jamb', { pivotProud: 15, gapSide: 2, bevelDegrees: 0, width: 300 }],
    ['B2.4', 'door-may-warp', { battens: 'none' }],
    ['B2.5', 'lock-deeper-than-lipping', { lockDepth: 40 }],
    ['B2', 'lock-lipping-thin', { lockDepth: 10, lockLipping: 12 }],
    ['B2', 'door-too-thin', { materials: { core: 'ply12', lipping: 'oak' } }],
    ['C17', 'lipping-thin', { lipping: 5 }],
    ['B2', 'hinge-lipping-thin', { lipping: 7 }],
    ['B2', 'corner-radius-small', { cornerRadius: 18 }],
    ['B2', 'hinge-off-lipping', { cornerRadius: 150 }],
    ['G8', 'sheet-thickness-differs', { thickness: 18.5 }],
  ])('%s: %s warns', (_, code, parameters) => {
    const built = build(parameters);
    expect(built.findings.find((found) => found.code === code)?.severity).toBe('warn');
    expectSound(built);
  });
  test('every one says what to do and where the rule is', () => {
    const built = build({ slots: 8, slotEdge: 50, battens: 'none', lockDepth: 40, lipping: 5, gapSide: 1.4 });
    for (const found of built.findings) {
      expect(found.remedy, found.code).toBeTruthy();
      expect(found.source, found.code).toMatch(/^(joinery|common practice)/);
      expect(found.message, found.code).toMatch(/\d/);
    }
  });
  test('B2.3: the bevel advised is enough and a tenth less is not', () => {
    const tight = { pivotProud: 15, gapSide: 2, bevelDegrees: 0, width: 300 };
    const said = build(tight).findings.find((found) => found.code === 'door-strikes-jamb')?.remedy ?? '';
    const advised = Number(/([\d.]+)°/.exec(said)?.[1]);
    expect(codesOf(build({ ...tight, bevelDegrees: advised }))).not.toContain('door-strikes-jamb');
    expect(codesOf(build({ ...tight, bevelDegrees: advised - 0.11 }))).toContain('door-strikes-jamb');
  });
  test('B2.4: a door over 0.9 m² gets two battens on its back, and a note', () => {
    const built = build();
    expect(built.findings.find((found) => found.code === 'door-may-warp')?.severity).toBe('note');
    expect(part(built, 'G9').quantity).toBe(2);
    expect(build(lockerDoor).parts.map((one) => one.id)).not.toContain('G9');
    expect(build({ ...lockerDoor, battens: 'always' }).parts.map((one) => one.id)).toContain('G9');
  });
  test('B2.6: three hinges for more than 8 kg or more than 1200 high', () => {
    const low = { height: 1000, width: 600 };
    expect(worked(build(low), 'hinges')).toBe(2); // 5.9 kg
    const heavy = [...doorMaterials, { ...doorMaterials[0], id: 'dense', density: 900 } as never];
    const built = buildPiece(
      flatDoor({ ...low, materials: { core: 'dense', lipping: 'oak' } }),
      doorContext({ materials: heavy }),
    );
    expect(worked(built, 'hinges')).toBe(3); // 9.7 kg
    expect(codesOf(built)).toContain('three-hinges');
    expect(worked(build({ height: 1200, width: 400 }), 'hinges')).toBe(2);
    expect(worked(build({ height: 1201, width: 400 }), 'hinges')).toBe(3);
  });
});

describe('a door for a frame of the project', () => {
  const frame = buildPiece(doorFrame({ stop: 'cover' }), contextFor(openingShape(curlewOpening)));
  const hang = (parameters: Partial<FlatDoorParameters> = {}, built: readonly BuiltPiece[] = [frame]) =>
    buildPiece(
      flatDoor({ frame: 'frame', width: undefined, height: undefined, ...parameters }),
      doorContext({ built }),
    );

  // the frame of the rulebook's worked opening takes a door 578.5 × 1704 (joinery B1, B2)
  test('takes its size, gaps and side of view from it, with the frame as their source', () => {
    const built = hang();
    expect(worked(built, 'Wd')).toBe(578.5);
    expect(worked(built, 'Hd')).toBe(worked(frame, 'Hd'));
    expect(built.seenFrom).toBe(frame.seenFrom);
    expect(built.working.find((step) => step.name === 'Wd')?.source).toBe('frame A, Galley door frame');
    expectSound(built);
    expectWorking(built);
  });
  test('lists no hinge, latch or hook-back that the frame lists for it', () => {
    const items = hang().fixings.map((fixing) => fixing.item);
    expect(items).not.toContain('Hinge, 75 to 100, with screws');
    expect(items).not.toContain('Latch with strike');
    expect(build().fixings.find((fixing) => fixing.item.startsWith('Hinge'))?.quantity).toBe(3);
  });
  test('is hung on the first jamb and before the second is fixed', () => {
    const step = hang().steps.find((one) => one.id === 'hang');
    expect(step?.elsewhere).toEqual({
      after: [{ piece: 'frame', step: 'fix-hinge-jamb' }],
      before: [{ piece: 'frame', step: 'fix-latch-jamb' }],
    });
  });
  test('needs the frame to be there, to be one, and to be buildable', () => {
    expect(codesOf(hang({}, []))).toContain('frame-missing');
    const drawer = { ...frame, kind: 'drawer' as const };
    expect(codesOf(hang({}, [drawer]))).toContain('frame-unfit');
    const bare = buildPiece(doorFrame(), contextFor(null));
    expect(codesOf(hang({}, [bare]))).toContain('frame-unbuilt');
    for (const built of [hang({}, []), hang({}, [drawer]), hang({}, [bare])]) expectSound(built);
  });
  test('says that a size of its own is not used', () => {
    const built = hang({ width: 500 });
    expect(worked(built, 'Wd')).toBe(578.5);
    expect(codesOf(built)).toContain('size-from-frame');
  });
  test('warns when it is not as thick as the frame reckons', () => {
    expect(codesOf(hang({ materials: { core: 'ply12', lipping: 'oak' } }))).toContain(
      'door-thickness-differs',
    );
    expect(codesOf(hang())).not.toContain('door-thickness-differs');
  });
  test('warns when the frame follows a crooked opening', () => {
    const crooked = buildPiece(
      doorFrame({ stop: 'cover', mode: 'fitted' }),
      contextFor(openingShape(curlewOpening)),
    );
    expect(codesOf(hang({}, [crooked]))).toContain('frame-not-square');
    expect(codesOf(hang())).not.toContain('frame-not-square');
  });
  test('is required by name', () => {
    expect(requiredPieces(flatDoor({ frame: 'frame' }))).toEqual(['frame']);
    expect(requiredPieces(flatDoor())).toEqual([]);
    expect(shapeNeeds('flat-door').kinds).toEqual([]);
  });
});

describe('the parameters of a flat door', () => {
  const infos = parametersOf('flat-door');
  test('have defaults within their limits and among their choices, and are named once each', () => {
    for (const info of infos) {
      if (typeof info.default === 'number') {
        expect(info.default, info.key).toBeGreaterThanOrEqual(info.min ?? -Infinity);
        expect(info.default, info.key).toBeLessThanOrEqual(info.max ?? Infinity);
      }
      if (info.choices) expect(info.choices.map((choice) => choice.value)).toContain(info.default);
    }
    expect(new Set(infos.map((info) => info.key)).size).toBe(infos.length);
  });
  test.each(infos.filter((info) => info.choices))('$key can be anything it offers', (info) => {
    for (const { value } of info.choices ?? []) {
      const built = build({ [info.key]: value });
      expect(built.findings.filter((found) => found.severity === 'stop')).toEqual([]);
      expectSound(built);
      expectWorking(built);
    }
  });
  test('a new door takes the sheet nearest to 18 and solid timber, and can be built', () => {
    const piece = newPiece('flat-door', { id: 'x', letter: 'B', name: 'Door', materials: doorMaterials });
    expect(piece.parameters.materials).toEqual({ core: 'ply18', lipping: 'oak' });
    expect(buildPiece(piece, doorContext()).findings.filter((found) => found.severity !== 'note')).toEqual(
      [],
    );
  });
  test('a new door hangs in the first frame that has none', () => {
    const start = { id: 'x', letter: 'B', name: 'Door', materials: doorMaterials };
    const frame = doorFrame();
    const first = newPiece('flat-door', { ...start, pieces: [flatDoor(), frame] });
    expect(first.parameters).toEqual({ frame: 'frame', materials: { core: 'ply18', lipping: 'oak' } });
    const second = newPiece('flat-door', { ...start, pieces: [frame, first] });
    expect(second.parameters).toMatchObject({ width: 580, height: 1700 });
  });
});
