import { describe, expect, test } from 'vitest';
import { rectangleOutline, type Point3 } from '#core/geometry';
import { sayLengths } from '#core/units';
import {
  bevelFence,
  dogBone,
  figureOf,
  findOverlap,
  gluedGap,
  grooveFences,
  hasShortGrain,
  kerfBend,
  mirrorMachining,
  notchPasses,
  rebateSettings,
  ripFences,
  workOutBoxJoint,
  workOutBridle,
  workOutButt,
  workOutCopeStick,
  workOutDovetailJoint,
  workOutDowels,
  workOutEdgeJoint,
  workOutEndOnFace,
  workOutGroove,
  workOutHalfLap,
  workOutHousing,
  workOutLipping,
  workOutLockRebate,
  workOutLooseTenon,
  workOutMitreSpline,
  workOutRebate,
  workOutScarf,
  workOutTenon,
  workOutTongueGroove,
} from '#core/joinery';
import type { EndOnFace, Machining, Part, PartSize, WorkedJoint } from '#core/joinery';
import { spreadPoints } from '../../support/joinery-boxes.ts';
import { occupies } from '../../support/joinery-solid.ts';

const here = { origin: { x: 0, y: 0, z: 0 }, xAxis: { x: 1, y: 0, z: 0 }, yAxis: { x: 0, y: 1, z: 0 } };

function asPart(finished: PartSize, machining: readonly Machining[]): Part {
  return {
    ...{ id: 'A1', piece: 'a', name: 'member', quantity: 1, hand: 'none', material: 'oak', kind: 'solid' },
    ...{
      finished,
      cut: finished,
      rough: finished,
      holes: [],
      grain: 'along-length',
      turn: false,
      faceSide: '',
    },
    outline: rectangleOutline(finished.length, finished.width),
    ...{ edges: [], machining, placements: [here], notes: [] },
    working: { length: 'L', width: 'W', thickness: 'T' },
  };
}

/** Two members and how a point of the male's frame is named in the other's; `loose` is what lies in slots of both. */
interface Fit {
  readonly joint: WorkedJoint;
  readonly male: PartSize;
  readonly other: PartSize;
  readonly seen: (point: Point3) => Point3;
  /** Where to look, in the male's frame. */
  readonly region: readonly [Point3, Point3];
  /** The widest gap meant, mm. */
  readonly gap: number;
  readonly loose?: { readonly min: Point3; readonly max: Point3 };
}

const inside = ({ length, width, thickness }: PartSize, p: Point3) =>
  p.x > 0 && p.x < length && p.y > 0 && p.y < width && p.z > 0 && p.z < thickness;
const axes = ['x', 'y', 'z'] as const;

/** Tries thousands of points: no wood in two bodies, and none of the space of both further from wood than the gap meant. */
function tryFit({ joint, male, other, seen, region, gap, loose }: Fit): {
  readonly shared: number;
  readonly void: number;
} {
  const [one, two] = [asPart(male, joint.cuts.male), asPart(other, joint.cuts.other)];
  const inLoose = (p: Point3) =>
    loose !== undefined && axes.every((axis) => p[axis] > loose.min[axis] && p[axis] < loose.max[axis]);
  const bodies = (p: Point3) =>
    Number(occupies(one, p)) + Number(occupies(two, seen(p))) + Number(inLoose(p));
  const found = { shared: 0, void: 0 };
  for (const p of spreadPoints(...region, 6000)) {
    if (!inside(male, p) && !inside(other, seen(p))) continue;
    const near = (d: number) => axes.flatMap((axis) => [-d, d].map((by) => ({ ...p, [axis]: p[axis] + by })));
    if (bodies(p) > 1 && near(0.01).every((q) => bodies(q) > 1)) found.shared++;
    if (bodies(p) === 0 && near(gap).every((q) => bodies(q) === 0)) found.void++;
  }
  return found;
}

const rail: PartSize = { length: 300, width: 60, thickness: 22 };
const stile: PartSize = { length: 500, width: 70, thickness: 22 };
const point = (x: number, y: number, z: number): Point3 => ({ x, y, z });

/** An end in an edge (the frame of section C): the male reaches `reach` into the other. */
const intoEdge =
  (reach: number, centre: number, [male, other]: readonly [PartSize, PartSize] = [rail, stile]) =>
  (p: Point3): Point3 =>
    point(centre + p.y - male.width / 2, other.width + male.length - reach - p.x, p.z);
const endOf = (male: PartSize, reach: number): Fit['region'] => [
  point(male.length - reach, 0, 0),
  point(male.length, male.width, male.thickness),
];
/** Two boards of a case at a corner: outer faces at Z = 0. */
const corner =
  (male: PartSize, other: PartSize) =>
  (p: Point3): Point3 =>
    point(other.length - p.z, p.y, male.length - p.x);

const side: PartSize = { length: 400, width: 92, thickness: 15 };
const drawerFront: PartSize = { length: 350, width: 92, thickness: 15 };
const thickFront: PartSize = { ...drawerFront, thickness: 19 };
const upright: PartSize = { length: 600, width: 250, thickness: 18 };
const board: PartSize = { length: 400, width: 250, thickness: 12 };

const middle = { male: rail, other: stile, centre: 200 };
const atEnd = { male: rail, other: stile, centre: stile.length - rail.width / 2 };
const reachOf = (joint: WorkedJoint) => {
  const [first] = joint.cuts.male;
  return first?.kind === 'recess' ? rail.length - first.box.min.x : NaN;
};
const tenonFit = (joint: WorkedJoint, meeting: typeof middle, gap: number): Fit => {
  const reach = reachOf(joint);
  const [from, to] = endOf(rail, reach);
  return {
    ...{ joint, male: rail, other: stile, seen: intoEdge(reach, meeting.centre), gap },
    region: [from, { ...to, x: Math.min(to.x + 3, rail.length - reach + stile.width) }],
  };
};
const lapped = (degrees: number, work: (turn: number) => WorkedJoint): Fit => {
  const { along } = findOverlap(middle, degrees);
  const turn = (degrees * Math.PI) / 180;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  const start = rail.length - along.male - Math.max(0, (rail.width * cos) / sin);
  const seen = (p: Point3) =>
    point(
      middle.centre - rail.width / 2 + (p.x - start) * cos + p.y * sin,
      stile.width - (p.x - start) * sin + p.y * cos,
      p.z,
    );
  return {
    ...{ joint: work(degrees), male: rail, other: stile, seen, gap: 0.35 },
    region: [point(start - Math.abs((rail.width * cos) / sin), 0, 0), point(rail.length, rail.width, 22)],
  };
};
const loose = workOutLooseTenon(middle);
const housed = workOutHousing({ male: board, other: upright }, { at: 200 });
const stopped = workOutHousing({ male: board, other: upright }, { at: 200, stopped: 10 });
const ontoFace =
  (depth: number, at: number) =>
  (p: Point3): Point3 =>
    point(at + p.z - board.thickness / 2, p.y, p.x - (board.length - depth));
const post: PartSize = { length: 400, width: 60, thickness: 18 };
const onFace = (kind: EndOnFace, glue?: string) =>
  workOutEndOnFace({ male: post, other: upright, ...(glue && { glue }) }, { kind, housing: 6, sheet: true });
const faceTenon = (glue?: string): Fit => {
  const joint = onFace('loose-tenon', glue);
  const [deep, far] = [figureOf(joint, 'slot in the end, depth'), figureOf(joint, 'slot in the face, depth')];
  const slot = figureOf(joint, 'slot length');
  return {
    ...{ joint, male: post, other: upright, gap: 1.1 },
    seen: (p) => point(300 + p.z - 9, p.y, p.x - 400),
    region: [point(400 - deep - 3, 0, 0), point(400 + far + 3, 60, 18)],
    loose: {
      min: point(400 - deep + 1, 30 - slot / 2 + 0.5, 9 - 3),
      max: point(400 + far - 1, 30 + slot / 2 - 0.5, 9 + 3),
    },
  };
};
const lock = workOutLockRebate({ male: drawerFront, other: side });
const lip = workOutRebate({ male: side, other: thickFront }, { lip: 6 });
const plank: PartSize = { length: 500, width: 90, thickness: 15 };
const tongued = workOutTongueGroove({ male: plank, other: plank });
const scarfed: PartSize = { length: 500, width: 90, thickness: 9 };

const fits: Readonly<Record<string, Fit>> = {
  'stub tenon': tenonFit(workOutTenon(middle, { form: 'stub' }), middle, 1.6),
  'stub tenon beside a groove': tenonFit(workOutTenon(middle, { form: 'stub', groove: 10 }), middle, 1.6),
  'through tenon with room for wedges': tenonFit(workOutTenon(middle, { form: 'through' }), middle, 3.3),
  'haunched tenon at the end': tenonFit(workOutTenon(atEnd, { form: 'haunched' }), atEnd, 1.6),
  'tenon with epoxy': tenonFit(
    workOutTenon(middle, { form: 'stub', glue: 'Epoxy, slow hardener' }),
    middle,
    1.6,
  ),
  'loose tenon': {
    ...{ joint: loose, male: rail, other: stile, seen: intoEdge(0, 200), gap: 1.1 },
    region: [point(270, 0, 0), point(330, 60, 22)],
    loose: {
      min: point(300 - figureOf(loose, 'slot depth') + 1, 10.5, 11 - figureOf(loose, 'tenon thickness') / 2),
      max: point(300 + figureOf(loose, 'slot depth') - 1, 49.5, 11 + figureOf(loose, 'tenon thickness') / 2),
    },
  },
  'half-lap': lapped(90, (degrees) => workOutHalfLap(middle, { degrees })),
  'half-lap at 60': lapped(60, (degrees) => workOutHalfLap(middle, { degrees })),
  'half-lap at 115': lapped(115, (degrees) => workOutHalfLap(middle, { degrees })),
  bridle: lapped(90, (degrees) => workOutBridle(middle, { degrees })),
  'bridle at 70': lapped(70, (degrees) => workOutBridle(middle, { degrees })),
  'bridle at 130': lapped(130, (degrees) => workOutBridle(middle, { degrees })),
  housing: {
    ...{
      joint: housed,
      male: board,
      other: upright,
      seen: ontoFace(figureOf(housed, 'depth'), 200),
      gap: 0.2,
    },
    region: endOf(board, figureOf(housed, 'depth')),
  },
  'housing with epoxy': {
    ...{ joint: onFace('housing', 'epoxy'), male: post, other: upright, gap: 0.25 },
    seen: (p) => point(300 + p.z - 9, p.y, p.x - 394),
    region: endOf(post, 6),
  },
  'loose tenon in a face': faceTenon(),
  'loose tenon in a face with epoxy': faceTenon('epoxy'),
  'stopped housing': {
    ...{
      joint: stopped,
      male: board,
      other: upright,
      seen: ontoFace(figureOf(stopped, 'depth'), 200),
      gap: 0.2,
    },
    region: endOf(board, figureOf(stopped, 'depth')),
  },
  'corner rebate': {
    ...{ joint: lip, male: side, other: thickFront, gap: 0.1 },
    seen: (p) => point(thickFront.length - side.thickness + p.z, p.y, 6 + side.length - p.x),
    region: endOf(side, 13),
  },
  'lock rebate': {
    ...{ joint: lock, male: drawerFront, other: side, gap: 0.1 },
    seen: (p) => point(side.length - p.z, p.y, p.x - (drawerFront.length - figureOf(lock, 'depth'))),
    region: endOf(drawerFront, figureOf(lock, 'depth')),
  },
  'box joint': {
    ...{
      joint: workOutBoxJoint({ male: side, other: drawerFront }),
      male: side,
      other: drawerFront,
      gap: 0.15,
    },
    ...{ seen: corner(side, drawerFront), region: endOf(side, 15) },
  },
  'through dovetail': {
    joint: workOutDovetailJoint(
      { male: side, other: drawerFront },
      { slope: 7, halfPin: 5, pin: 5, tails: 3 },
    ),
    ...{
      male: side,
      other: drawerFront,
      gap: 0.05,
      seen: corner(side, drawerFront),
      region: endOf(side, 15),
    },
  },
  'lapped dovetail': {
    joint: workOutDovetailJoint(
      { male: side, other: thickFront },
      { slope: 7, halfPin: 5, pin: 5, tails: 3, lap: 5 },
    ),
    ...{ male: side, other: thickFront, gap: 0.05, region: endOf(side, 14) },
    seen: (p) => point(thickFront.length - p.z, p.y, 5 + side.length - p.x),
  },
  'tongue and groove': {
    ...{ joint: tongued, male: plank, other: plank, gap: 0.55 },
    seen: (p) => point(p.x, plank.width + p.y - 7, p.z),
    region: [point(100, 0, 0), point(400, 7, 15)],
  },
  scarf: {
    ...{
      joint: workOutScarf({ male: scarfed, other: scarfed }, 8),
      male: scarfed,
      other: scarfed,
      gap: 0.05,
    },
    seen: (p) => point(p.x - (500 - 72), p.y, p.z),
    region: endOf(scarfed, 72),
  },
  'cope and stick': {
    joint: workOutCopeStick(middle, { stick: 10, step: 6, tongue: [8, 14] }),
    ...{ male: rail, other: stile, gap: 0.1, seen: intoEdge(10, 200), region: endOf(rail, 10) },
  },
};

describe('members of a joint', () => {
  test.each(Object.entries(fits))(
    '%s: nothing shares its place, nothing stays open beyond the gap meant',
    (_, fit) => {
      expect(tryFit(fit)).toEqual({ shared: 0, void: 0 });
    },
  );

  test.each(Object.entries(fits))('%s: the other hand fits as well', (_, fit) => {
    const turned = (size: PartSize, cuts: readonly Machining[]) =>
      cuts.map((one) => mirrorMachining(one, 'z', size));
    // through the plane of the faces: thickness runs the other way in both, so that left becomes right
    const flat = fit.male.thickness === fit.other.thickness && fit.seen(point(1, 1, 7)).z === 7;
    if (!flat) return;
    const flip = (p: Point3) => ({ ...p, z: fit.male.thickness - p.z });
    const { male, other } = fit.joint.cuts;
    const joint = { ...fit.joint, cuts: { male: turned(fit.male, male), other: turned(fit.other, other) } };
    expect(tryFit({ ...fit, joint, seen: (p) => flip(fit.seen(flip(p))) })).toEqual({ shared: 0, void: 0 });
  });

  test('the try notices a tenon that is too thick, and one that is too short', () => {
    const sound = fits['stub tenon'];
    if (!sound) throw new Error('no stub tenon');
    const [first, second, ...rest] = sound.joint.cuts.male;
    const only = (male: readonly (Machining | undefined)[]) => ({
      ...sound,
      joint: { ...sound.joint, cuts: { ...sound.joint.cuts, male: male.flatMap((one) => one ?? []) } },
    });
    expect(tryFit(only([first, ...rest])).shared).toBeGreaterThan(100);
    const off: Machining = {
      ...{ kind: 'recess', name: 'shoulder', from: 'end' },
      box: { min: point(rail.length - 10, 0, 0), max: point(rail.length, 60, 22) },
    };
    expect(tryFit(only([first, second, ...rest, off])).void).toBeGreaterThan(100);
  });

  test('dowel holes of both lie on one line, 1 deeper than the dowel reaches (C2)', () => {
    const { cuts, figures } = workOutDowels(middle);
    const holes = (list: readonly Machining[]) => list.flatMap((one) => (one.kind === 'hole' ? [one] : []));
    const [ours, theirs] = [holes(cuts.male), holes(cuts.other)];
    expect(ours.length).toBeGreaterThanOrEqual(2);
    ours.forEach((hole, i) => {
      const seen = intoEdge(0, 200)(point(rail.length, hole.x, hole.y));
      expect(theirs[i]).toMatchObject({ x: seen.x, y: seen.z, diameter: hole.diameter });
      expect(seen.y).toBe(stile.width);
    });
    expect(figures.find(({ name }) => name === 'diameter')?.value).toBe(8); // 22/3 = 7.3
    expect(2 * (Number(ours[0]?.depth) - 1)).toBe(
      figures.find(({ name }) => name === 'length of the dowel')?.value,
    );
  });

  test('mitre and spline: wood stays on its side of the mitre, the slot lies within it and keeps 3 (C14)', () => {
    const member: PartSize = { length: 200, width: 80, thickness: 18 };
    for (const degrees of [35, 45, 52]) {
      const joint = workOutMitreSpline(member, { degrees, spline: 4, at: 6 });
      const turn = (degrees * Math.PI) / 180;
      const part = asPart(member, joint.cuts.male);
      const slot = joint.cuts.male.find((one) => one.kind === 'prism');
      if (slot?.kind !== 'prism') throw new Error('no slot');
      for (const { y } of slot.outline) expect(y).toBeGreaterThanOrEqual(3 - 1e-9);
      for (const p of spreadPoints(point(170, 0, 0), point(200, 80, 18), 2000)) {
        const beyond = p.x - (member.length - p.z / Math.tan(turn));
        if (beyond > 0.01) expect(occupies(part, p)).toBe(false);
      }
    }
  });

  test('screws of a butt go through the middle of what they hold (C1)', () => {
    const joint = workOutButt(
      { male: board, other: upright },
      { at: 300, diameter: 4, grain: 'end', hard: true },
    );
    for (const hole of joint.cuts.other) {
      if (hole.kind !== 'hole') throw new Error('no hole');
      expect(hole).toMatchObject({ x: 300, diameter: 4.3, depth: 'through' });
      expect(hole.y).toBeGreaterThanOrEqual(20);
      expect(hole.y).toBeLessThanOrEqual(230);
    }
    expect(figureOf(joint, 'screws')).toBe(3); // 250 less 20 at both ends, 150 apart at the most
  });
});

// Every line of the rulebook's calculated examples of section C (its figures are invented, its arithmetic was checked).
describe('figures of the trade rulebook, section C', () => {
  const cleat = workOutButt(
    { male: { ...board, length: 20 }, other: { ...upright, thickness: 12 } },
    { at: 100, diameter: 4, grain: 'side', hard: true },
  );
  const dovetails = workOutDovetailJoint(
    { male: side, other: drawerFront },
    { slope: 7, halfPin: 5, pin: 5, tails: 3 },
  );
  const nine = { male: { ...scarfed, length: 2440 }, other: { ...scarfed, length: 900 } };
  const spline = (at: number) =>
    workOutMitreSpline({ length: 300, width: 60, thickness: 18 }, { spline: 4, at });
  test.each<readonly [string, number, string]>([
    ['C1 pilot_hard', figureOf(cleat, 'pilot'), '2.4'],
    ['C1 length_min', figureOf(cleat, 'least length'), '40'],
    ['C1 length_max', figureOf(cleat, 'longest'), '29'],
    ['C12 delta', figureOf(dovetails, 'delta'), '2.143'],
    ['C12 tail_end', figureOf(dovetails, 'tail_end'), '24'],
    ['C12 tail_base', figureOf(dovetails, 'tail_base'), '19.71'],
    ['C12 pin_base', figureOf(dovetails, 'pin_base'), '9.29'],
    ['C12 half_base', figureOf(dovetails, 'half_base'), '7.14'],
    ['C12 sum_end', figureOf(dovetails, 'sum_end'), '92'],
    ['C12 sum_base', figureOf(dovetails, 'sum_base'), '92'],
    ['C12 angle', figureOf(dovetails, 'angle'), '8.13'],
    ['C14 depth at 6', figureOf(spline(6), 'slot depth'), '13.2'],
    ['C14 depth at 9', figureOf(spline(9), 'slot depth'), '10.2'],
    ['C15 run8', figureOf(workOutScarf(nine, 8), 'run'), '72'],
    ['C15 total', figureOf(workOutScarf(nine, 8), 'length of both'), '3268'],
    ['C15 ang8', figureOf(workOutScarf(nine, 8), 'angle'), '7.13'],
    ['C15 ang12', figureOf(workOutScarf(nine, 12), 'angle'), '4.76'],
    ['C19 dog-bone 3', dogBone(3).overcut, '0.88'],
    ['C19 dog-bone 4', dogBone(4).overcut, '1.17'],
    ['C19 fillet 3', dogBone(3).fillet, '1.243'], // 3(√2 − 1)
  ])('%s', (_, value, printed) => {
    expect(value).toBeCloseTo(Number(printed), printed.split('.')[1]?.length ?? 0);
  });

  test('the screw of the example finds no room, and the check says so with both lengths', () => {
    const message = cleat.findings.find(({ code }) => code === 'screw-no-room')?.message ?? '';
    expect(sayLengths(message, 'mm')).toBe(
      'A 4 screw through 12 wants to be 40 long, and there is room for 29.',
    );
  });

  // saw settings of C6, C9, C20: by hand
  test('saw settings', () => {
    expect(ripFences(100, 40, 3)).toEqual({ inside: 40, outside: 57 });
    expect(grooveFences(8, 6, 3)).toEqual({ first: 8, last: 11, passes: 2 });
    expect(grooveFences(8, 10, 3)).toEqual({ first: 8, last: 15, passes: 4 });
    expect(notchPasses(30, 3)).toBe(11); // (30 − 3)/2.7 = 10, and the first
    expect(rebateSettings({ width: 18, height: 12 }, 18, 3)).toEqual({
      flat: { blade: 12, fence: 15 },
      onEdge: { blade: 18, fence: 6 },
    });
    expect(bevelFence(60, 20, 45)).toBeCloseTo(40, 9);
    // π/2 · 15.5 / 3 = 8.1: nine kerfs over 100·π/2
    expect(kerfBend(18, 3, { radius: 100, degrees: 90, skin: 2.5 })).toMatchObject({ depth: 15.5, count: 9 });
    expect(kerfBend(18, 3, { radius: 100, degrees: 90, skin: 2.5 }).spacing).toBeCloseTo(
      (50 * Math.PI) / 9,
      9,
    );
  });

  test('grooves, edge joints and lippings add up (C9, C16, C17)', () => {
    const groove = workOutGroove({ panel: 6.1, other: stile }, { film: 0.15 });
    expect(figureOf(groove, 'width')).toBeCloseTo(6.1 + 0.2 + 0.6, 9);
    expect(figureOf(workOutEdgeJoint(400, 4), 'widths together, rough')).toBe(412);
    expect(workOutEdgeJoint(400, 3).findings.map(({ code }) => code)).toEqual(['solid-too-wide']);
    const lipping = workOutLipping(560, { thickness: 18, lipping: 8, sides: 2, door: true });
    expect(figureOf(lipping, 'core')).toBe(544);
    expect(figureOf(lipping, 'strip, rough width')).toBe(20);
    expect(lipping.findings).toEqual([]);
  });

  test('the gap is that of the glue (C, clearances per glued face)', () => {
    expect(gluedGap('PVA wood glue, D3')).toBeCloseTo(0.075, 9);
    expect(gluedGap('Epoxy, slow hardener')).toBeCloseTo(0.2, 9);
    expect(gluedGap('a glue nobody knows')).toBe(0.1);
    const wide = workOutTenon(middle, { form: 'stub', glue: 'Epoxy, slow hardener' });
    expect(figureOf(wide, 'mortise width') - figureOf(wide, 'tenon thickness')).toBeCloseTo(0.4, 9);
  });
});

describe('warnings of joints', () => {
  const codes = (joint: WorkedJoint) => joint.findings.map(({ code }) => code);
  test.each<readonly [string, WorkedJoint, string]>([
    [
      'a thin member has no wall beside its tenon',
      workOutTenon(
        { male: { ...rail, thickness: 14 }, other: { ...stile, thickness: 14 }, centre: 200 },
        { form: 'stub' },
      ),
      'wall-too-thin',
    ],
    ['a mortise at the end shears out', workOutTenon(atEnd, { form: 'stub' }), 'mortise-near-end'],
    [
      'a wide tenon warps',
      workOutTenon({ male: { ...rail, width: 120 }, other: stile, centre: 200 }, { form: 'stub' }),
      'tenon-wide',
    ],
    [
      'a thin lap',
      workOutHalfLap({ male: { ...rail, thickness: 10 }, other: { ...stile, thickness: 10 }, centre: 200 }),
      'lap-thin',
    ],
    ['a lap in plywood', workOutHalfLap(middle, { sheet: true }), 'lap-in-sheet'],
    [
      'a housing too deep',
      workOutHousing({ male: board, other: upright }, { at: 200, depth: 10 }),
      'housing-too-deep',
    ],
    [
      'a housing near the end',
      workOutHousing({ male: board, other: upright }, { at: 15 }),
      'housing-near-end',
    ],
    ['a feather lip', workOutRebate({ male: side, other: thickFront }, { lip: 3 }), 'wall-too-thin'],
    [
      'dovetails in plywood',
      workOutDovetailJoint({ male: side, other: drawerFront }, { slope: 7, halfPin: 5, pin: 5, sheet: true }),
      'dovetail-in-sheet',
    ],
    [
      'dovetails too flat',
      workOutDovetailJoint({ male: side, other: drawerFront }, { slope: 10, halfPin: 5, pin: 5 }),
      'dovetail-slope',
    ],
    [
      'a screw into a plywood edge',
      workOutButt(
        { male: board, other: upright },
        { at: 100, diameter: 4, grain: 'side', hard: false, sheet: true },
      ),
      'screw-into-end',
    ],
    [
      'a spline that shows',
      workOutMitreSpline({ length: 200, width: 40, thickness: 12 }, { at: 9 }),
      'spline-no-room',
    ],
    ['a steep scarf', workOutScarf({ male: scarfed, other: scarfed }, 4), 'scarf-steep'],
    ['a wide lipping', workOutLipping(500, { thickness: 18, lipping: 20, sides: 1 }), 'lipping-unusual'],
    [
      'a groove too deep',
      workOutGroove({ panel: 6, other: { ...stile, width: 20 } }, { depth: 12 }),
      'groove-too-deep',
    ],
    [
      'two dowels in a narrow rail',
      workOutDowels({ male: { ...rail, width: 30 }, other: stile, centre: 200 }),
      'dowels-crowded',
    ],
  ])('%s', (_, joint, code) => {
    expect(codes(joint)).toContain(code);
  });

  test('short grain: less along the grain than twice across; none in plywood (C0.3)', () => {
    expect(hasShortGrain(9, 5)).toBe(true);
    expect(hasShortGrain(10, 5)).toBe(false);
    expect(hasShortGrain(1, 5, true)).toBe(false);
  });
});

describe('an end on a face', () => {
  test('dowels have their holes opposite each other, two thirds of the face deep at most, one deeper than the dowel', () => {
    const { cuts, figures, takes } = onFace('dowel');
    const [ours, theirs] = [cuts.male, cuts.other].map((list) =>
      list.flatMap((one) => (one.kind === 'hole' ? [one] : [])),
    );
    expect(ours?.map(({ x }) => x)).toEqual(theirs?.map(({ y }) => y)); // along the width of the end
    expect(ours?.every(({ y, from }) => y === 9 && from === 'end')).toBe(true);
    expect(theirs?.every(({ x, from }) => x === 300 && from === 'face')).toBe(true);
    const depths = [...(ours ?? []), ...(theirs ?? [])].reduce((sum, { depth }) => sum + Number(depth), 0);
    const length = figures.find(({ name }) => name === 'length of the dowel')?.value ?? 0;
    expect(depths).toBeCloseTo(2 * length + 2 * 2, 9); // two dowels, each hole 1 deeper (joinery C2)
    // upright 18: two thirds are 12, and the hole one deeper leaves 5 (joinery C0.2, C2)
    expect(theirs?.[0]?.depth).toBe(13);
    expect(takes).toMatchObject([{ item: 'Dowel 6 × 24, fluted', quantity: 2 }]);
  });
  test('one of 12 ply leaves no wall beside dowels or tenons, and holds screws poorly', () => {
    const thin = { male: { ...post, thickness: 12 }, other: { ...upright, thickness: 12 } };
    const codes = (kind: EndOnFace) =>
      workOutEndOnFace(thin, { kind, housing: 4, sheet: true }).findings.map(({ code }) => code);
    expect(codes('dowel')).toContain('wall-too-thin');
    expect(codes('loose-tenon')).toContain('wall-too-thin');
    expect(codes('butt')).toContain('screw-into-end');
    expect(codes('housing')).toEqual([]);
  });
  test('a wide one has a tenon for each 150 of its width', () => {
    const wide = workOutEndOnFace(
      { male: { ...post, width: 400 }, other: { ...upright, width: 400 } },
      { kind: 'loose-tenon', housing: 0, sheet: true },
    );
    expect(figureOf(wide, 'tenons')).toBe(4);
    const ends = wide.cuts.other.flatMap((one) =>
      one.kind === 'recess' ? [one.box.min.y, one.box.max.y] : [],
    );
    expect([Math.min(...ends), Math.max(...ends)]).toEqual([10, 390]);
  });
});
