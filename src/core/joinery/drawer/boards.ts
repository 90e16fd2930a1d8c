import { boardSize, grooveRange, sideSize, type CornerCuts, type DrawerEnd } from './corners.ts';
import type { DrawerLayout } from './sizes.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';

/** The corners of both ends. */
export interface DrawerCorners {
  readonly front: CornerCuts;
  readonly back: CornerCuts;
}

/**
 * Machining of the left side: X from front to back, Y down from the upper edge, inside face at Z = 0. The right side is
 * its mirror along X.
 */
export function machineLeftSide(layout: DrawerLayout, corners: DrawerCorners): readonly Machining[] {
  const size = sideSize(layout);
  return [
    ...mirrorAll(corners.front.side, 'x', size),
    ...corners.back.side,
    sideGroove(layout, corners),
    ...notchOf(layout, corners),
    ...railGroove(layout, corners),
  ];
}

function sideGroove(layout: DrawerLayout, { front, back }: DrawerCorners): Machining {
  const v = layout.book.value;
  const from = front.sideRuns ? 0 : Math.max(0, v('tf') - v('gdr') - front.set);
  const stop = v('Lb') - v('behind') - v('tback') + v('gdr') - front.set;
  const to = back.sideRuns || layout.choices.bottomStyle === 'slides-under-back' ? v('side_L') : stop;
  const whole = from === 0 && to === v('side_L');
  const range = { x: [from, to], y: grooveRange(layout), z: [0, v('gdr')] } as const;
  return makeRecess('groove', 'face', range, whole ? undefined : 'stopped: it must not show at the end');
}

function notchOf(layout: DrawerLayout, { front }: DrawerCorners): readonly Machining[] {
  if (!layout.notched) return [];
  const v = layout.book.value;
  const range = {
    x: [0, v('notch_len') - front.set],
    y: [v('h') - v('notch_depth'), v('h')],
    z: [0, v('ts')],
  } as const;
  return [makeRecess('notch', 'far-edge', range, 'straddles the rail')];
}

/** Groove in the outside of a side for its rail: from behind the box front out through the back. */
function railGroove(layout: DrawerLayout, { front }: DrawerCorners): readonly Machining[] {
  if (layout.choices.runner !== 'side-rail') return [];
  const v = layout.book.value;
  const low = v('h') - v('rail_up');
  const range = {
    x: [v('tf') + 9 - front.set, v('side_L')],
    y: [low - v('rail_groove_H'), low],
    z: [v('ts') - v('rail_groove_D'), v('ts')],
  } as const;
  return [makeRecess('groove', 'back', range, 'for the side rail, open at the back')];
}

/** Machining of the box front or the back as if its outer face were the face side (Z = 0), X from left to right. */
export function machineBoard(layout: DrawerLayout, end: DrawerEnd, corner: CornerCuts): readonly Machining[] {
  const size = boardSize(layout, end);
  const v = layout.book.value;
  const grooved = end === 'front' || layout.choices.bottomStyle === 'captured';
  const inset = (v('Wb') - size.length) / 2;
  const stop = corner.boardRuns ? 0 : Math.max(0, v('ts') - v('gdr') - inset);
  const range = {
    x: [stop, size.length - stop],
    y: grooveRange(layout),
    z: [size.thickness - v('gdr'), size.thickness],
  } as const;
  return [
    ...corner.board,
    ...mirrorAll(corner.board, 'x', size),
    ...(grooved
      ? [makeRecess('groove', 'back', range, stop > 0 ? 'stopped: it must not show at the end' : undefined)]
      : []),
    ...(end === 'front' && layout.choices.front !== 'none' ? frontScrews(layout) : []),
    ...(end === 'back' ? backRailSlots(layout, inset) : []),
  ];
}

/** The side rails run out through the ends of the back where these reach the outside of the box. */
function backRailSlots(layout: DrawerLayout, inset: number): readonly Machining[] {
  if (layout.choices.runner !== 'side-rail') return [];
  const v = layout.book.value;
  const size = boardSize(layout, 'back');
  const deep = v('rail_groove_D') - inset;
  if (deep <= 0) return [];
  const low = v('h') - v('rail_up');
  const range = {
    x: [0, deep],
    y: [low - v('rail_groove_H'), low],
    z: [0, size.thickness],
  } as const;
  const slot = makeRecess('slot', 'start', range, 'for the side rail, through with the groove of the side');
  return [slot, ...mirrorAll([slot], 'x', size)];
}

/** Four oversize holes for the screws of the false front, from inside. */
function frontScrews(layout: DrawerLayout): readonly Machining[] {
  const { length, width } = boardSize(layout, 'front');
  const edge = Math.min(60, length / 4);
  return [edge, length - edge].flatMap((x) =>
    [width / 4, (3 * width) / 4].map((y) => ({
      kind: 'hole' as const,
      from: 'back' as const,
      x,
      y,
      diameter: 6,
      depth: 'through' as const,
      note: 'oversize, for the false front',
    })),
  );
}
