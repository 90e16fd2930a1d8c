import { describe, expect, test } from 'vitest';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, DrawerParameters } from '#core/joinery';
import { boxContext, codesOf, drawer, worked } from '../../support/joinery-boxes.ts';

const build = (parameters: Partial<DrawerParameters> = {}): BuiltPiece =>
  buildPiece(drawer(parameters), boxContext());
const part = (built: BuiltPiece, id: string) => {
  const found = built.parts.find((one) => one.id === id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
};

// Opening 380 × 142, clear depth 455, runners and a notch of 10, rail 20 front to back, overlay 8.
// Every value as printed in the trade rulebook's calculated example (joinery B5), whose arithmetic was evaluated there.
describe('the worked drawer', () => {
  const built = build();

  test.each([
    ['Wb', 377.0],
    ['h', 139.0],
    ['Lb', 445.0],
    ['Wi', 353.0],
    ['Li', 421.0],
    ['yg', 19.0],
    ['notch_len', 23.0],
    ['notch_depth', 11.0],
    ['boxfront_h', 128.0],
    ['side_L', 445.0],
    ['side_L_cut', 445.6],
    ['front_L', 377.0],
    ['front_L_cut', 377.6],
    ['bottom_W', 364.0],
    ['bottom_D', 432.0],
    ['false_W', 396.0],
    ['false_H', 158.0],
    ['front_rise', 10.55],
    ['clear_above_needed', 12.0],
    ['stop_d', 100],
    ['tilt', 5.74],
    ['room_needed', 141.71],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 2);
  });

  test('a box on metal runners is 353.9 wide', () => {
    expect(worked(build({ runner: 'metal' }), 'Wb')).toBeCloseTo(353.9, 6);
  });

  test('a lapped front of 19 leaves a lap of 5 and sides of 440', () => {
    const lapped = build({
      corner: 'lapped-dovetail',
      frontThickness: 19,
      materials: { box: 'ash', bottom: 'ply6', runners: 'ash' },
    });
    expect(worked(lapped, 'side_L')).toBeCloseTo(440, 6);
  });

  test('it comes to nine kinds of part, strips in pairs', () => {
    expect(built.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`)).toEqual([
      'D1 Side, left 1',
      'D2 Side, right 1',
      'D3 Box front 1',
      'D4 Back 1',
      'D5 Bottom 1',
      'D6 False front 1',
      'D7 Runner 2',
      'D8 Kicker 2',
      'D9 Guide 2',
    ]);
  });

  test('three drawers alike want three of each part and six of each strip', () => {
    const three = build({ count: 3 });
    expect(three.parts.map((one) => one.quantity)).toEqual([3, 3, 3, 3, 3, 3, 6, 6, 6]);
  });

  test('the box joint leaves 0.6 on the cut length and nothing on the width', () => {
    expect(part(built, 'D1').finished).toEqual({ length: 445, width: 139, thickness: 12 });
    expect(part(built, 'D1').cut).toEqual({ length: 445.6, width: 139, thickness: 12 });
  });

  test('nothing forbids cutting it', () => {
    expect(built.findings.filter((found) => found.severity !== 'note')).toEqual([]);
  });

  test('steps follow one another and are done at the boat or in the workshop', () => {
    const ids = built.steps.map((step) => step.id);
    expect(ids).toEqual([
      'measure',
      'rip',
      'grooves',
      'corners',
      'notch',
      'dry-fit',
      'glue',
      'runners',
      'fit-box',
      'false-front',
      'stop',
    ]);
    built.steps.forEach((step, i) => expect(step.after).toEqual(i === 0 ? [] : [ids[i - 1]]));
  });
});

describe('lengths by corner joint (joinery B5)', () => {
  const solid = { box: 'ash', bottom: 'ply6', runners: 'ash' };
  test.each([
    ['through-dovetail', 445, 377, 377],
    ['rebate', 445 - 5 - 5, 377, 377], // lip 5 of 12 left on front and back
    ['housed-back', 440, 377, 377 - 24 + 10], // housing 5
    ['lock-rebate', 445, 377 - 24 + 12, 377 - 24 + 12], // trench 6
    ['butt', 445, 353, 353],
  ] as const)('%s: side %d, front %d, back %d', (corner, side, front, back) => {
    // in ash the box is 1 narrower: 2 of clearance each side
    const built = build({ corner, materials: solid });
    expect(worked(built, 'side_L')).toBeCloseTo(side, 6);
    expect(worked(built, 'front_L')).toBeCloseTo(front - 1, 6);
    expect(worked(built, 'back_L')).toBeCloseTo(back - 1, 6);
  });

  test('a bottom that slides in passes under a back that stands on it', () => {
    const built = build({ bottomStyle: 'slides-under-back' });
    expect(worked(built, 'back_h')).toBe(139 - 19 - 6);
    expect(worked(built, 'bottom_D')).toBe(421 + 6 + 12 - 1);
  });
});

describe('findings', () => {
  const has = (code: string, parameters: Partial<DrawerParameters>) =>
    expect(codesOf(build(parameters))).toContain(code);
  const ash = { box: 'ash', bottom: 'ply6', runners: 'ash' };

  test('dovetails in plywood are refused for a box joint (B5.8)', () => {
    const built = build({ corner: 'through-dovetail' });
    const found = built.findings.find((one) => one.code === 'dovetail-in-sheet');
    expect(found?.severity).toBe('stop');
    expect(found?.remedy).toContain('box joint');
    expect(codesOf(build({ corner: 'through-dovetail', materials: ash }))).not.toContain('dovetail-in-sheet');
  });
  test('a groove that opens into the notch is refused (B5.2)', () => {
    has('groove-in-notch', { grooveUp: 18.9 });
    expect(codesOf(build({ grooveUp: 19 }))).not.toContain('groove-in-notch');
  });
  test('a low side with a notch is weak (B5.3)', () => has('side-weak-at-notch', { openingHeight: 30 }));
  test('a box wider than one and a half times its length wants a middle guide (B5.4)', () =>
    has('drawer-too-wide', { openingWidth: 700 }));
  test('room to pull it out and clear of the hull is asked for (B5.5, B5.7)', () =>
    has('room-to-pull-out', {}));
  test('metal runners with an overlay front open at heel (B5.6)', () =>
    has('opens-at-heel', { runner: 'metal' }));
  test('seats of metal runners that vary by more than 0.6 are refused', () =>
    has('runner-seats-vary', { runner: 'metal', openingVariation: 0.7 }));
  test('an inset front with a gap of 2 cannot be lifted 10 (G16)', () =>
    has('lift-blocked', { front: 'inset' }));
  test('an inset gap of 1.4 is no room once varnished (G6)', () =>
    has('no-room-once-finished', { front: 'inset', insetGap: 1.4, runner: 'bottom' }));
  test('a groove that leaves less than 5 is refused (C0.2)', () =>
    has('wall-too-thin', { grooveDepth: 7.5 }));
  test('a nominal thickness that is not the measured one is pointed out (G8)', () =>
    has('sheet-thickness-differs', { sideThickness: 12.7 }));
  test('solid sides wider than 120 will not stay flat (D3)', () => has('solid-too-wide', { materials: ash }));
  test('a solid bottom swells (G13)', () =>
    has('solid-bottom', { materials: { box: 'ply12', bottom: 'ash', runners: 'ash' } }));
  test('runners longer than the space are refused', () => has('runner-too-long', { runnerLength: 500 }));
  test('screws into the edge of 12 ply are weak (C0.1, G21)', () =>
    has('screw-into-end', { corner: 'butt' }));
  test('an opening of nothing is asked for, not built', () => {
    const built = build({ openingWidth: 0 });
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ severity: 'stop' });
  });
  test('an opening too low for any drawer says which size came out at nothing', () => {
    const built = build({ openingHeight: 12 });
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ severity: 'stop', code: 'drawer-impossible' });
  });
  test('an opening of a kilometre is asked for again, not built', () => {
    expect(build({ openingHeight: 1_000_000 }).findings[0]).toMatchObject({
      severity: 'stop',
      code: 'parameter-unusable',
    });
  });
});
