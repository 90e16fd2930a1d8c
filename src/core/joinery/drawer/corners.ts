import type { DrawerLayout } from './sizes.ts';
import { cutButtScrews, cutCornerRebate, cutHousing, cutLockRebate } from '../joints/corner.ts';
import { cutDovetails, tailHolding, workOutDovetails } from '../joints/dovetail.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { cutFingers, pitchHolding, workOutFingers } from '../joints/fingers.ts';
import type { Range } from '../parts.ts';
import type { Machining, PartSize } from '../types.ts';

/** Gap on a glued face for the glue chosen, mm (joinery C). */
const glueGap = ({ choices }: DrawerLayout): number => gluedGap(choices.glue);

/** One pair of corners, at the front or at the back, each cut as at the far end (X = L) of the piece. */
export interface CornerCuts {
  readonly kind:
    'box' | 'through-dovetail' | 'lapped-dovetail' | 'rebate' | 'housing' | 'lock-rebate' | 'butt';
  /** Side: inside face at Z = 0. */
  readonly side: readonly Machining[];
  /** Box front or back: outer face at Z = 0. */
  readonly board: readonly Machining[];
  /** The groove may run out at the end: nothing is seen of it. */
  readonly sideRuns: boolean;
  readonly boardRuns: boolean;
  /** How far the end of the side lies inside the outer face of the box. */
  readonly set: number;
  /** The groove does not lie inside one finger or tail. */
  readonly clash: boolean;
}

export type DrawerEnd = 'front' | 'back';

/** Where the bottom's groove lies, from the upper edge of side, front and back alike. */
export function grooveRange({ book }: DrawerLayout): Range {
  const low = book.value('h') - book.value('yg');
  return [low - book.value('groove_W'), low];
}

/** The cuts of the corners at one end of the box (joinery B5, C7, C8, C11 to C13). */
export function cutCorners(layout: DrawerLayout, end: DrawerEnd): CornerCuts {
  const { corner } = layout.choices;
  switch (corner) {
    case 'box':
      return boxCorners(layout, end);
    case 'through-dovetail':
      return dovetailCorners(layout, end, 0);
    case 'lapped-dovetail':
      return dovetailCorners(layout, end, end === 'front' ? layout.book.value('lap') : 0);
    case 'rebate':
      return rebateCorners(layout, end);
    case 'housed-back':
      return end === 'front' ? rebateCorners(layout, end) : housedCorners(layout);
    case 'lock-rebate':
      return lockCorners(layout, end);
    case 'butt':
      return buttCorners(layout, end);
  }
}

/** Sizes of a side; its width is the height of the box. */
export function sideSize({ book }: DrawerLayout): PartSize {
  return { length: book.value('side_L'), width: book.value('h'), thickness: book.value('ts') };
}

/** Sizes of the box front or the back. */
export function boardSize({ book }: DrawerLayout, end: DrawerEnd): PartSize {
  return end === 'front'
    ? { length: book.value('front_L'), width: book.value('boxfront_h'), thickness: book.value('tf') }
    : { length: book.value('back_L'), width: book.value('back_h'), thickness: book.value('tback') };
}

/** The groove as far as it goes through this end; none at a back that stands on the bottom. */
function keptGroove(layout: DrawerLayout, end: DrawerEnd): Range | undefined {
  return end === 'back' && layout.choices.bottomStyle === 'slides-under-back'
    ? undefined
    : grooveRange(layout);
}

function boxCorners(layout: DrawerLayout, end: DrawerEnd): CornerCuts {
  const side = sideSize(layout);
  const board = boardSize(layout, end);
  const keep = keptGroove(layout, end);
  const fingers = workOutFingers(layout.book, end, {
    width: board.width,
    thickness: Math.max(side.thickness, board.thickness),
    gap: glueGap(layout),
    ...(keep && { keep }),
  });
  const cuts = cutFingers(fingers, side, board);
  const pitch = keep ? pitchHolding(keep, fingers.pitch) : null;
  return {
    kind: 'box',
    side: cuts.male,
    board: cuts.other,
    sideRuns: pitch === null ? !keep : pitch % 2 === 1,
    boardRuns: pitch !== null && pitch % 2 === 0,
    set: 0,
    clash: keep !== undefined && pitch === null,
  };
}

function dovetailCorners(layout: DrawerLayout, end: DrawerEnd, lap: number): CornerCuts {
  const side = sideSize(layout);
  const board = boardSize(layout, end);
  const keep = keptGroove(layout, end);
  const dovetails = workOutDovetails(layout.book, end, {
    width: board.width,
    depth: board.thickness - lap,
    slope: 7,
    halfPin: 5,
    pin: 5,
    ...(keep && { keep }),
  });
  const cuts = cutDovetails(dovetails, side, board, lap);
  const tail = keep ? tailHolding(keep, dovetails) : null;
  return {
    kind: lap > 0 ? 'lapped-dovetail' : 'through-dovetail',
    side: cuts.male,
    board: cuts.other,
    sideRuns: lap > 0 || !keep,
    boardRuns: tail !== null,
    set: lap,
    clash: keep !== undefined && tail === null,
  };
}

function rebateCorners(layout: DrawerLayout, end: DrawerEnd): CornerCuts {
  const lip = layout.book.value(end === 'front' ? 'lip_f' : 'lip_b');
  const cuts = cutCornerRebate(sideSize(layout), boardSize(layout, end), lip);
  return { ...hidden, kind: 'rebate', board: cuts.other, set: lip };
}

function housedCorners(layout: DrawerLayout): CornerCuts {
  const v = layout.book.value;
  const to = v('side_L') - v('behind');
  const housing = { from: to - v('tback') - 2 * glueGap(layout), to, depth: v('housing') };
  const cuts = cutHousing({ width: v('back_h') }, housing);
  return {
    ...hidden,
    kind: 'housing',
    side: cuts.other,
    sideRuns: layout.choices.bottomStyle === 'slides-under-back',
  };
}

function lockCorners(layout: DrawerLayout, end: DrawerEnd): CornerCuts {
  const v = layout.book.value;
  const joint = { tongue: v(end === 'front' ? 'tongue' : 'tongue_b'), depth: v('trench') };
  const cuts = cutLockRebate(boardSize(layout, end), sideSize(layout), joint);
  const sideRuns = keptGroove(layout, end) === undefined;
  return { ...hidden, kind: 'lock-rebate', side: cuts.other, board: cuts.male, sideRuns };
}

function buttCorners(layout: DrawerLayout, end: DrawerEnd): CornerCuts {
  const board = boardSize(layout, end);
  const at = layout.book.value('side_L') - board.thickness / 2;
  const side = cutButtScrews({ at, width: board.width }, { diameter: 3.5, note: 'corner screw' });
  return { ...hidden, kind: 'butt', side, sideRuns: keptGroove(layout, end) === undefined };
}

const hidden: Omit<CornerCuts, 'kind'> = {
  side: [],
  board: [],
  sideRuns: true,
  boardRuns: true,
  set: 0,
  clash: false,
};
