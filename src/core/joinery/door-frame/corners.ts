import type { Point } from '#core/geometry';
import type { FrameLayout } from './layout.ts';
import { cornerFigure } from './members.ts';
import type { Corner, FrameNumbers, Member, Span } from './members.ts';
import { counterClockwise, moveIn } from './plane.ts';
import { splineSlot } from './spline.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { makeRecess } from '../parts.ts';
import { sawable, squareHousingDegrees } from '../rules.ts';
import type { Machining } from '../types.ts';

type RecessName = Extract<Machining, { kind: 'recess' }>['name'];

/** What is taken away from a member for its corner joints (joinery B1, C-COORD). */
export function jointMachining(
  layout: FrameLayout,
  numbers: FrameNumbers,
  member: Member,
): readonly Machining[] {
  const corners: readonly Corner[] =
    member.side === 'left' || member.side === 'right'
      ? [[member.side, 'head'], ...(layout.choices.sill ? ([[member.side, 'sill']] as const) : [])]
      : [
          ['left', member.side],
          ['right', member.side],
        ];
  return corners.flatMap((corner) => atCorner(layout, numbers, member, corner));
}

function atCorner(
  layout: FrameLayout,
  numbers: FrameNumbers,
  member: Member,
  corner: Corner,
): readonly Machining[] {
  const { choices } = layout;
  const isJamb = member.side === 'left' || member.side === 'right';
  if (choices.flat) return flatCorner(layout, numbers, { member, corner, isJamb });
  if (corner[1] === 'sill') return sillCorner(layout, numbers, { member, corner, isJamb });
  const { jamb, headStart, headInside, joint } = numbers;
  const tongue = choices.tongueThickness;
  const figure = (fromJamb: Span, fromHead: Span) => cornerFigure(numbers.lines, corner, fromJamb, fromHead);
  const into: Span = [headInside - joint, headInside];
  switch (choices.corner) {
    case 'rebate':
      return isJamb ? [] : [receive(member, figure([0, jamb], into), 'rebate')];
    case 'housing-over':
      return isJamb ? [] : [receive(member, figure([0, jamb], into), 'housing')];
    case 'tongue':
      return isJamb
        ? [shape(member, figure([0, jamb - tongue], into), 'shoulder')]
        : [receive(member, figure([jamb - tongue, jamb], into), 'housing')];
    case 'housing-between':
      return isJamb
        ? [receive(member, figure([jamb - joint, jamb], [headStart, headInside]), 'housing')]
        : [];
    default:
      return [];
  }
}

interface AtCorner {
  readonly member: Member;
  readonly corner: Corner;
  readonly isJamb: boolean;
}

function sillCorner(
  { choices, book }: FrameLayout,
  numbers: FrameNumbers,
  { member, corner, isJamb }: AtCorner,
): readonly Machining[] {
  if (choices.sillJoint === 'butt') return [];
  const tongue = choices.tongueThickness;
  const into: Span = [numbers.sill - book.value('gt_sill'), numbers.sill];
  const figure = (fromJamb: Span) => cornerFigure(numbers.lines, corner, fromJamb, into);
  return isJamb
    ? [shape(member, figure([0, numbers.jamb - tongue]), 'shoulder')]
    : [receive(member, figure([numbers.jamb - tongue, numbers.jamb]), 'housing')];
}

function flatCorner(
  { choices }: FrameLayout,
  numbers: FrameNumbers,
  { member, corner, isJamb }: AtCorner,
): readonly Machining[] {
  const other = corner[1] === 'head' ? numbers.headInside : numbers.sill;
  const figure = cornerFigure(numbers.lines, corner, [0, numbers.jamb], [0, other]);
  const thickness = member.thickness;
  const third: Span = [thickness / 3, (2 * thickness) / 3];
  const gap = choices.glue ? gluedGap(choices.glue) : 0;
  switch (choices.corner) {
    case 'half-lap':
      return [layer(member, figure, isJamb ? [0, thickness / 2] : [thickness / 2, thickness], 'lap')];
    case 'bridle':
      return isJamb
        ? [layer(member, figure, [third[0] - gap, third[1] + gap], 'slot')]
        : [
            layer(member, figure, [0, third[0]], 'shoulder'),
            layer(member, figure, [third[1], thickness], 'shoulder'),
          ];
    case 'mitre':
      return [splineSlot(numbers, member, corner)];
    default:
      return [];
  }
}

/**
 * Wood taken from a member that receives another: square to its own face up to 2 degrees off (joinery B1). The joints of the
 * library stand square and end square, while a frame out of square has every corner at an angle of its own: so its cuts are
 * figures where two members cross, of which a square corner is one.
 */
function receive(member: Member, figure: readonly Point[], name: RecessName): Machining {
  const own = figure.map(member.laid.toPart);
  return skewOf(own) <= Math.tan((squareHousingDegrees * Math.PI) / 180)
    ? boxOf(member, own, name)
    : prismOf(member, own, name);
}

/** Wood taken from a member that enters another: exactly on the line. */
function shape(member: Member, figure: readonly Point[], name: RecessName): Machining {
  const own = figure.map(member.laid.toPart);
  const rise = Math.max(...own.map((p) => p.y)) - Math.min(...own.map((p) => p.y));
  return skewOf(own) * rise < sawable ? boxOf(member, own, name) : prismOf(member, own, name);
}

/** Wood taken from part of the thickness of a flat member. */
function layer(member: Member, figure: readonly Point[], z: Span, name: RecessName): Machining {
  const own = counterClockwise(figure.map(member.laid.toPart));
  const fromBack = z[1] >= member.thickness;
  if (skewOf(own) * member.width < sawable) {
    const from = name === 'slot' ? 'end' : fromBack ? 'back' : 'face';
    return makeRecess(name, from, { x: spanOf(own, 'x'), y: spanOf(own, 'y'), z });
  }
  if (fromBack)
    return { kind: 'prism', name: 'slope', from: 'back', outline: own, depth: z[1] - z[0], note: name };
  const below = z[0] > 0 ? { below: z[0] } : {};
  return { kind: 'prism', name: 'slope', from: 'face', outline: own, ...below, depth: z[1], note: name };
}

function boxOf(member: Member, own: readonly Point[], name: RecessName): Machining {
  const from = name === 'shoulder' ? 'back' : 'face';
  return makeRecess(name, from, {
    x: spanOf(own, 'x'),
    y: [member.nosing, member.width],
    z: spanOf(own, 'y'),
  });
}

function prismOf(member: Member, own: readonly Point[], name: RecessName): Machining {
  const outline = counterClockwise(own);
  return {
    kind: 'prism',
    name: 'slope',
    from: 'far-edge',
    outline,
    depth: member.width - member.nosing,
    note: name,
  };
}

/** How far the sides of a figure across the part lean from square, as a slope. */
function skewOf(own: readonly Point[]): number {
  return own.reduce((most, p, i) => {
    const next = own[(i + 1) % own.length] ?? p;
    const [dx, dy] = [Math.abs(next.x - p.x), Math.abs(next.y - p.y)];
    return Math.max(most, Math.min(dx, dy) / Math.max(dx, dy));
  }, 0);
}

export function spanOf(points: readonly Point[], axis: 'x' | 'y'): Span {
  return [Math.min(...points.map((p) => p[axis])), Math.max(...points.map((p) => p[axis]))];
}

/** Rebate for the door in a rebated lining: jambs full length, the head between the jambs' own rebates. */
export function doorRebate(layout: FrameLayout, numbers: FrameNumbers, member: Member): readonly Machining[] {
  const { choices } = layout;
  if (choices.stop !== 'rebated' || member.flat || member.side === 'sill') return [];
  const y: Span = [0, choices.doorThickness + 1];
  const z: Span = [0, choices.stopRebate];
  if (member.side !== 'head')
    return [makeRecess('rebate', 'face', { x: [0, member.laid.length], y, z }, 'door')];
  const ends = (['left', 'right'] as const).flatMap((side) =>
    cornerFigure(
      numbers.lines,
      [side, 'head'],
      [choices.jambThickness, numbers.jamb],
      [0, numbers.headInside],
    ),
  );
  const x = spanOf(ends.map(member.laid.toPart), 'x');
  return [makeRecess('rebate', 'face', { x, y, z }, 'door')];
}

/** Grooves for the panel above the head: in the jambs from the head up, along the whole top of the head. */
export function infillGrooves(
  layout: FrameLayout,
  numbers: FrameNumbers,
  member: Member,
  width: number,
): readonly Machining[] {
  const { choices, book } = layout;
  if (!choices.infill || member.flat || member.side === 'sill') return [];
  const y: Span = [(member.width - width) / 2, (member.width + width) / 2];
  if (member.side === 'head') {
    const z: Span = [member.thickness - book.value('gd_head'), member.thickness];
    return [makeRecess('groove', 'back', { x: [0, member.laid.length], y, z }, 'panel above the head')];
  }
  const start = member.laid.toPart(
    cornerFigure(numbers.lines, [member.side, 'head'], [0, numbers.jamb], [0, 1])[0] ??
      moveIn(numbers.lines.head, 0).at,
  ).x;
  const x: Span = member.side === 'left' ? [start, member.laid.length] : [0, start];
  return [makeRecess('groove', 'face', { x, y, z: [0, book.value('gd_jamb')] }, 'panel above the head')];
}
