import { describe, expect, test } from 'vitest';
import { buildPiece, newPiece, requiredPieces } from '#core/joinery';
import type { BuiltPiece, FramedDoorParameters } from '#core/joinery';
import { framedContext, framedDoor, framedMaterials } from '../../support/framed-doors.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';
import { contextFor, curlewOpening, doorFrame, openingShape } from '../../support/joinery-samples.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const build = (parameters: Partial<FramedDoorParameters> = {}, settings = {}): BuiltPiece => {
  const context = framedContext();
  return buildPiece(framedDoor(parameters), { ...context, settings: { ...context.settings, ...settings } });
};

const messageOf = (built: BuiltPiece, code: string) =>
  built.findings.find((found) => found.code === code)?.message;

// Locker opening 404 × 684, inset gap 2.5, mahogany flat-sawn C = 0.00238, tenon 30, moisture 10 now, 9 to 16 aboard. Every
// value as printed in the trade rulebook's calculated example (joinery B3), whose arithmetic was evaluated there.
describe('the worked door', () => {
  const built = build();
  test.each([
    ['Wd', 404 - 2 * 2.5],
    ['Hd', 684 - 2 * 2.5],
    ['Ls', 289.0],
    ['rail_L', 349.0],
    ['rail_rough', 374],
    ['stile_rough', 719],
    ['hs', 549.0],
    ['Wp0', 309.0],
    ['swell', 4.41],
    ['gp', 3.0],
    ['shrink', 0.74],
    ['engage_dry', 6.63],
    ['Wp', 303.0],
    ['Hp', 567.0],
    ['hh', 18.33],
    ['tenon_b_top', 26.67],
    ['tenon_t', 6],
  ])('%s is %d', (name, value) => {
    expect(worked(built, name)).toBeCloseTo(value, 2);
  });
  test('with a 6 mm sheet for the panel it is 307 wide', () => {
    expect(worked(build({ materials: { frame: 'mahogany', panel: 'ply6' } }), 'Wp')).toBe(307);
  });
  test('the blanks are those lengths', () => {
    expect(built.parts.find(({ id }) => id === 'L3')?.rough.length).toBe(374);
    expect(built.parts.find(({ id }) => id === 'L1')?.rough.length).toBe(719);
  });
  test('its parts are those of the rulebook', () => {
    expect(built.parts.map((one) => `${one.id} ${one.name} ${one.quantity}`)).toEqual([
      'L1 Stile, hinge edge 1',
      'L2 Stile, lock edge 1',
      'L3 Top rail 1',
      'L4 Bottom rail 1',
      'L7 Panel 1',
    ]);
  });
  test('stiles are a left and a right one, from one board', () => {
    const [left, right] = built.parts;
    expect([left?.hand, right?.hand]).toEqual(['left', 'right']);
    expect(right?.besideOf).toBe('L1');
  });
  test('a door within all limits has nothing against it, and the working holds', () => {
    expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expectSound(built);
    expectWorking(built);
  });
  test('the panel is finished before the frame is glued', () => {
    const ids = built.steps.map(({ id }) => id);
    expect(ids.indexOf('finish-panel')).toBeLessThan(ids.indexOf('glue'));
    expect(ids.indexOf('dry-fit')).toBeLessThan(ids.indexOf('finish-panel'));
  });
});

describe('joints', () => {
  test('left out: mortise and tenon over 0.25 m², else a tongue in the groove', () => {
    const kinds = (width: number, height: number) =>
      build({ width, height, joint: undefined, tenon: undefined }).joints[0]?.kind;
    expect(kinds(399, 679)).toBe('haunched mortise and tenon');
    expect(kinds(300, 400)).toBe('tongue in the groove');
  });
  test.each([
    ['groove-tongue', 289 + 2 * 10],
    ['scribed-moulding', 289 + 2 * 10],
    ['bridle', 399],
    ['through-tenon', 399],
    ['loose-tenon', 289],
    ['stub-tenon', 349],
  ] as const)('%s makes the rails %d long', (joint, length) => {
    expect(worked(build({ joint }), 'rail_L')).toBe(length);
  });
  test('a through tenon is sawn 2 proud at each end', () => {
    expect(build({ joint: 'through-tenon' }).parts.find(({ name }) => name === 'Top rail')?.cut.length).toBe(
      403,
    );
  });
  test('the tenon left out reaches 0.6 of the stile, down to 5', () => {
    expect(worked(build({ tenon: undefined }), 'reach')).toBe(30);
  });
});

describe('findings', () => {
  test('a tenon thinner than a quarter or thicker than half of the frame (B3.1)', () => {
    expect(codesOf(build({ thickness: 26, panelEdge: 6 }))).toContain('tenon-thickness');
    expect(codesOf(build({ thickness: 20 }))).not.toContain('tenon-thickness');
  });
  test('a panel that leaves its groove in the dry (B3.2) names the depth to take', () => {
    const found = build(
      { width: 600, midStile: 'none', stile: 60, panelGap: 3 },
      { moistureNow: 16 },
    ).findings;
    const slips = found.find(({ code }) => code === 'panel-slips-out');
    expect(slips?.message).toMatch(/In the dry the panel is [\d.]+ in its groove; 4 is the least/);
    const deeper = Number(/(\d+) deep/.exec(slips?.remedy ?? '')?.[1]);
    const again = build(
      { width: 600, midStile: 'none', stile: 60, panelGap: 3, grooveDepth: deeper },
      { moistureNow: 16 },
    );
    expect(codesOf(again)).not.toContain('panel-slips-out');
  });
  test('a rail under 40 with a haunched tenon (B3.3)', () => {
    expect(codesOf(build({ topRail: 36 }))).toContain('rail-narrow-for-haunch');
  });
  test('a solid panel wider than 350 (B3.4), a door over 600 without a mid stile (B3.5)', () => {
    expect(codesOf(build({ width: 500 }))).toContain('panel-too-wide');
    expect(codesOf(build({ width: 640, midStile: 'none' }))).toContain('mid-stile-wanted');
    expect(codesOf(build({ width: 640 }))).not.toContain('mid-stile-wanted');
    expect(build({ width: 640 }).parts.find(({ name }) => name === 'Panel')?.quantity).toBe(2);
  });
  test('a glued solid panel must not be made (B3.6); a glued sheet may', () => {
    expect(build({ panelGlued: true }).findings[0]?.code).toBe('panel-glued');
    const sheet = build({ panelGlued: true, materials: { frame: 'mahogany', panel: 'ply6' } });
    expect(codesOf(sheet)).not.toContain('panel-glued');
  });
  test('a panel without room to swell says by how much (G13)', () => {
    expect(messageOf(build({ panelGap: 1 }), 'panel-swells')).toBe(
      'The panel will swell 4.4; the groove leaves 2.',
    );
  });
  test('a door without frame and size is not built', () => {
    const built = build({ width: undefined, height: undefined });
    expect(built.findings[0]?.code).toBe('door-size-missing');
    expect(built.parts).toEqual([]);
  });
  test('a stile narrower than its joint names the size that came out at nothing', () => {
    const built = build({ width: 160, stile: 80 });
    expect(built.findings[0]?.message).toBe(
      'No door comes of it: rails, between their shoulders comes out at 0 (Wd 160, ws 80).',
    );
  });
});

describe('in a frame', () => {
  const shape = openingShape(curlewOpening);
  const frame = buildPiece(doorFrame(), contextFor(shape));
  const hung = framedDoor({ frame: frame.piece, width: undefined, height: undefined });
  const built = buildPiece(hung, framedContext({ built: [frame] }));
  test('size and gaps are those of the frame, which is made first', () => {
    expect(requiredPieces(hung)).toEqual([frame.piece]);
    const of = (name: string) => frame.working.find((step) => step.name === name)?.value;
    for (const name of ['Wd', 'Hd', 'gs']) expect(worked(built, name)).toBe(of(name));
  });
  test('hanging follows the hinge jamb', () => {
    expect(built.steps.find(({ id }) => id === 'hang')?.elsewhere?.after.map(({ step }) => step)).toEqual([
      'fix-hinge-jamb',
    ]);
  });
});

test('a new one takes the first solid timber, the thin sheet and a usual size, and can be made', () => {
  const piece = newPiece('framed-door', { id: 'n', letter: 'N', name: 'New', materials: framedMaterials });
  const built = buildPiece(piece, framedContext());
  expect(built.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  expect(piece.parameters.materials).toEqual({ frame: 'mahogany', panel: 'ply6' });
});
