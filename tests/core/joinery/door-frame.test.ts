import { describe, expect, test } from 'vitest';
import { buildPiece, newPiece } from '#core/joinery';
import type { BuiltPiece, DoorFrameParameters } from '#core/joinery';
import {
  contextFor,
  curlewOpening,
  doorFrame,
  materials,
  openingShape,
} from '../../support/joinery-samples.ts';

const build = (parameters: Partial<DoorFrameParameters> = {}): BuiltPiece =>
  buildPiece(doorFrame(parameters), contextFor(openingShape(curlewOpening)));
const valueOf = (built: BuiltPiece, name: string): number => {
  const step = built.working.find((one) => one.name === name);
  if (!step) throw new Error(`no working for ${name}`);
  return step.value;
};
const partOf = (built: BuiltPiece, id: string) => {
  const part = built.parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
};

// Rulebook B1, worked door frame: bulkhead 18.4, opening 641 wide, leaning 14 and 8.
const worked: Readonly<Record<string, readonly [value: number, decimals: number]>> = {
  capacity: [18, 1],
  phi: [0.3605, 4],
  xTL: [3.01, 2],
  xTR: [637.96, 2],
  xBR: [640.99, 2],
  yBR: [4.03, 2],
  yTL: [1746.05, 2],
  yTR: [1756.05, 2],
  Fw: [624.5, 1],
  Fh: [1737, 1],
  leanmm_per_m: [6.3, 1],
  gap_left_foot: [8.01, 2],
  Ld: [20.4, 1],
  Wc: [584.5, 1],
  Hc: [1717, 1],
  head_L: [624.5, 1],
  jamb_right_L: [1727, 1],
  jamb_left_L: [1731, 1],
  sight_height_left: [1721, 1],
  head_rough_L: [650, 0],
  jamb_rough_L: [1756, 0],
  lining_rough_W: [27, 0],
  lining_rough_T: [25, 0],
  stop_side_L_right: [1717, 1],
  stop_side_L_left: [1721, 1],
  stop_head_L: [560.5, 1],
  Wd: [578.5, 1],
  Hd: [1704, 1],
  cover_vert_long_right: [1767, 1],
  cover_vert_long_left: [1771, 1],
  cover_head_long: [684.5, 1],
  gap_head: [15.02, 2],
  overlap_min: [12.38, 2],
};

describe('the worked door frame of the rulebook', () => {
  const built = build();
  test.each(Object.entries(worked))('%s comes out as printed', (name, [value, decimals]) => {
    expect(valueOf(built, name)).toBeCloseTo(value, decimals);
  });
  test('against the vertical of the boat is narrower and leaves 19 at the left foot', () => {
    const boat = build({ datum: 'boat', mode: 'square' });
    expect(valueOf(boat, 'Fw')).toBe(617);
    expect(valueOf(boat, 'gap_left_foot')).toBe(19);
    expect(valueOf(boat, 'gap_right_head')).toBe(13);
    expect(boat.findings.map((found) => found.code)).toContain('gap-too-wide');
  });
  test('is fitted to the opening when the covers cannot hide the gap', () => {
    expect(build({ datum: 'boat' }).working.some((step) => step.name === 'alpha_TL')).toBe(true);
    expect(built.working.some((step) => step.name === 'alpha_TL')).toBe(false);
  });
  test('takes a panel above the head between jambs that run on', () => {
    const tall = build({ infill: true, infillOrdinates: [212, 221, 204] });
    expect(valueOf(tall, 'S_infill')).toBe(19);
    expect(valueOf(tall, 'infill_W')).toBeCloseTo(594.5, 1);
    expect(valueOf(tall, 'infill_cut_H')).toBe(247);
    expect(valueOf(tall, 'head_L')).toBeCloseTo(598.5, 1); // head_L_between: housed 7 deep
    expect(partOf(tall, 'A14').finished.length).toBe(228);
    expect(partOf(tall, 'A14').edges).toContainEqual({ edge: 'end', treatment: 'scribed', amount: 19 });
    expect(partOf(tall, 'A1').finished.length).toBeCloseTo(1737 + 3.98 + 212 - 5, 1);
  });
  test('mitres members of unequal width as printed', () => {
    const mitred = build({ mode: 'fitted', corner: 'mitre', jambThickness: 45, headThickness: 60 });
    expect(valueOf(mitred, 'alpha_TL')).toBeCloseTo(91.0008, 4);
    expect(valueOf(mitred, 'phi_jamb_TL')).toBeCloseTo(37.23, 2);
    expect(valueOf(mitred, 'phi_head_TL')).toBeCloseTo(53.77, 2);
  });
});

// Test vectors of the rulebook, mitre_unequal: corner angle, widths of the two members, angle on the first.
test.each([
  [90, 45, 45, 45],
  [90, 45, 60, 36.8699],
  [91.0008, 45, 60, 37.229],
  [74, 30, 30, 37],
  [120, 20, 80, 13.8979],
])('a corner of %s degrees with members %s and %s is mitred at %s', (angle, jamb, head, expected) => {
  const turn = (angle * Math.PI) / 180;
  const [x, y] = [600 * Math.sin(turn), 1700 - 600 * Math.cos(turn)];
  const shape = openingShape({ BL: [0, 0], BR: [x, 0], TR: [x, y], TL: [0, 1700] });
  const built = buildPiece(
    doorFrame({ mode: 'fitted', corner: 'mitre', jambThickness: jamb, headThickness: head }),
    contextFor(shape),
  );
  expect(valueOf(built, 'phi_jamb_TL')).toBeCloseTo(expected, 3);
  // The true outline of the jamb runs at that angle from its outer corner.
  const left = partOf(built, 'A1');
  const outer = left.outline.filter((p) => p.y > jamb - 0.001).sort((a, b) => a.x - b.x)[0];
  const inner = left.outline.filter((p) => p.y < 0.001).sort((a, b) => a.x - b.x)[0];
  if (!outer || !inner) throw new Error('no end');
  expect((Math.atan2(jamb, inner.x - outer.x) * 180) / Math.PI).toBeCloseTo(expected, 3);
});

describe('parts', () => {
  test('jambs are a mirrored pair, each with its own foot', () => {
    const built = build();
    const [left, right] = [partOf(built, 'A1'), partOf(built, 'A2')];
    expect([left.hand, right.hand]).toEqual(['left', 'right']);
    // The sill rises to the right: the left foot is longest at its back, the right one at its face.
    const foot = (part: typeof left) => part.machining.find((one) => one.kind === 'bevel');
    expect(foot(left)).toMatchObject({ edge: 'start' });
    expect(foot(right)).toMatchObject({ edge: 'end' });
    expect(foot(left)?.kind === 'bevel' && foot(left)).toHaveProperty('degrees', expect.closeTo(0.3605, 3));
    expect(foot(right)?.kind === 'bevel' && foot(right)).toHaveProperty(
      'degrees',
      expect.closeTo(-0.3605, 3),
    );
  });
  test('the head of a rebated corner is stepped a jamb wide and half deep at both ends', () => {
    const steps = partOf(build(), 'A3').machining.flatMap((one) => (one.kind === 'recess' ? [one.box] : []));
    const near = (low: number) => steps.find((box) => Math.abs(box.min.x - low) < 1e-9);
    expect(steps).toHaveLength(2);
    expect(near(0)?.max).toEqual({
      x: expect.closeTo(20, 9),
      y: expect.closeTo(20.4, 9),
      z: expect.closeTo(10, 9),
    });
    expect(steps.map((box) => box.max.x).sort((a, b) => a - b)[1]).toBeCloseTo(624.5, 9);
  });
  test('every size names the working it came from', () => {
    const built = build({ sill: true, stop: 'cover', mode: 'fitted', corner: 'tongue' });
    for (const part of built.parts) {
      for (const size of ['length', 'width', 'thickness'] as const) {
        expect(valueOf(built, part.working[size]), `${part.name} ${size}`).toBeCloseTo(
          part.finished[size],
          6,
        );
      }
    }
  });
  test('planted stops leave room for the door, flush less 1 on the near side, and end 1 short of the far edge', () => {
    const built = build({ bulkheadMax: 40, bulkheadMin: 40 });
    const stop = partOf(built, 'A5');
    const near = stop.placements[0]?.origin.z ?? NaN;
    expect(1 - near).toBe(1 + 18); // lining begins 1 before the bulkhead
    expect(near - stop.finished.width).toBe(1 - 42 + 1);
  });
  test('a sill with its nosing is housed only where the jambs stand', () => {
    const sill = partOf(build({ sill: true, stop: 'cover' }), 'A4');
    expect(sill.finished).toMatchObject({ length: expect.closeTo(624.5, 6), width: expect.closeTo(40.4, 6) });
    for (const one of sill.machining) if (one.kind === 'recess') expect(one.box.min.y).toBe(20);
  });
  test('a rebated lining is thicker by the rebate and the door larger', () => {
    const built = build({ stop: 'rebated', bulkheadMax: 40, bulkheadMin: 40 });
    expect(partOf(built, 'A1').finished.thickness).toBe(32);
    expect(valueOf(built, 'Wd')).toBeCloseTo(624.5 - 64 + 24 - 6, 6);
    expect(built.findings.map((found) => found.code)).not.toContain('stop-too-narrow');
  });
  test('a far cover that is the stop laps over the opening and ends on the same line', () => {
    const built = build({ stop: 'cover' });
    expect(partOf(built, 'A11').finished.width).toBe(62);
    expect(partOf(built, 'A13').finished.length).toBeCloseTo(684.5, 6);
    expect(built.findings.filter((found) => found.severity === 'stop')).toEqual([]);
  });
});

describe('a new door frame', () => {
  test('builds without a stop in a measured opening', () => {
    const piece = newPiece('door-frame', {
      id: 'p',
      letter: 'B',
      name: 'Frame',
      shape: 'opening',
      materials,
    });
    const built = buildPiece(piece, contextFor(openingShape(curlewOpening)));
    expect(built.findings.filter((found) => found.severity === 'stop')).toEqual([]);
    expect(built.findings.map((found) => found.code)).toContain('bulkhead-not-measured');
    expect(built.parts.map((part) => part.id)).toEqual([
      'B1',
      'B2',
      'B3',
      'B8',
      'B9',
      'B10',
      'B11',
      'B12',
      'B13',
    ]);
  });
  test('steps are in an order that exists, from the check aboard to the last coat', () => {
    const { steps, parts } = build({ infill: true, infillOrdinates: [212, 221, 204], stop: 'cover' });
    const done = new Set<string>();
    for (const step of steps) {
      expect(
        step.after.every((id) => done.has(id)),
        step.id,
      ).toBe(true);
      expect(step.parts.every((id) => parts.some((part) => part.id === id))).toBe(true);
      done.add(step.id);
    }
    expect(done.size).toBe(steps.length);
    expect(steps.map((step) => step.place).filter((place, i, all) => place !== all[i - 1])).toEqual([
      'boat',
      'workshop',
      'boat',
      'workshop',
      'boat',
    ]);
  });
});
