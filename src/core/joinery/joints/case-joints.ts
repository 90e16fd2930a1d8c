import { formatNumber, markSize } from '#core/units';
import type { Range } from '../parts.ts';
import { openWorkingBook } from '../working.ts';
import { cutCornerRebate, cutLockRebate } from './corner.ts';
import { cutDovetails, workOutDovetails, type DovetailRequest } from './dovetail.ts';
import { cutFingers, fingersProud, workOutFingers } from './fingers.ts';
import type { FrameMember } from './frame.ts';
import { rebateSettings } from './saw-settings.ts';
import { checkWall, findings, gluedGap, type JointFigure, type WorkedJoint } from './worked-joint.ts';

const show = markSize;

/** What stands on what, for joints whose male member stands square on a face or at the end of the other. */
export interface Standing {
  readonly male: FrameMember;
  readonly other: FrameMember;
  readonly glue?: string;
}

/** Corner rebate in the other, a lip left over the end of the male (joinery C8): half to two thirds deep. */
export function workOutRebate(
  { male, other }: Standing,
  wish: { readonly lip?: number; readonly kerf?: number } = {},
): WorkedJoint {
  const lip = wish.lip ?? Math.max(5, other.thickness / 3);
  const height = other.thickness - lip;
  const { flat, onEdge } = rebateSettings({ width: male.thickness, height }, other.thickness, wish.kerf ?? 3);
  return {
    cuts: cutCornerRebate(male, other, lip),
    figures: [
      { name: 'width', value: male.thickness },
      { name: 'depth', value: height },
      { name: 'lip', value: lip },
    ],
    settings: [
      `Inside face down: blade ${show(flat.blade)} high, fence ${show(flat.fence)} to the near side of the blade.`,
      `On edge, outer face to the fence: blade ${show(onEdge.blade)} high, fence ${show(onEdge.fence)}; the waste falls on the free side.`,
    ],
    findings: findings((say) => {
      if (lip < 5)
        say('stop', 'wall-too-thin', {
          message: `The lip of the rebate is ${show(lip)}; ${show(5)} is the least.`,
          remedy: 'Cut it less deep.',
          source: 'joinery C8, C0.2',
        });
    }),
  };
}

/** Lock rebate of a front (male) on a side (joinery C8): tongue a third of the front, half into the side. */
export function workOutLockRebate(
  { male, other }: Standing,
  wish: { readonly sheet?: boolean } = {},
): WorkedJoint {
  const tongue = male.thickness / 3;
  const depth = other.thickness / 2;
  return {
    cuts: cutLockRebate(male, other, { tongue, depth }),
    figures: [
      { name: 'tongue', value: tongue },
      { name: 'depth', value: depth },
      { name: 'near edge from the end', value: male.thickness - tongue },
      { name: 'front over its clear width', value: 2 * depth },
    ],
    settings: [
      `Sides: trench ${show(tongue)} wide, ${show(depth)} deep, ${show(male.thickness - tongue)} from the end.`,
      `Front: shoulder ${show(depth)} from the end, stop to the far side of the blade, blade ${show(male.thickness - tongue)} high from the outer face.`,
    ],
    findings: findings((say) => {
      checkWall(say, 'Side behind the tongue', other.thickness - depth, other.thickness);
      const along = male.thickness - tongue;
      if (!wish.sheet && along < 2 * depth - other.thickness / 3)
        say('warn', 'short-grain', {
          message: `Beyond the trench ${show(along)} of side is left along the grain over a depth of ${show(depth)}: it may break out.`,
          remedy: 'Make the tongue thinner, or take plywood.',
          source: 'joinery C0.3',
        });
    }),
  };
}

/** Box joint (joinery C11): both pieces are cut 0.3 longer than the mate is thick and flushed. */
export function workOutBoxJoint({ male, other, glue }: Standing, keep?: Range): WorkedJoint {
  const book = openWorkingBook();
  const fingers = workOutFingers(book, 'box', {
    ...{ width: male.width, thickness: male.thickness, gap: gluedGap(glue) },
    ...(keep && { keep }),
  });
  return {
    cuts: cutFingers(fingers, male, other),
    figures: [
      { name: 'fingers', value: fingers.count, unit: 'count' },
      { name: 'pitch', value: fingers.pitch },
      { name: 'length as cut', value: other.thickness + fingersProud },
    ],
    settings: [
      `Jig or dado ${show(fingers.pitch)} wide, ${show(other.thickness + fingersProud)} high; try ${fingers.count} fingers on spare stock; flush ${show(fingersProud)} off when glued.`,
    ],
    findings: findings((say) => {
      if (fingers.pitch < 4)
        say('stop', 'fingers-too-narrow', {
          message: `Fingers of ${show(fingers.pitch)} in wood ${show(male.thickness)} thick break.`,
          remedy: 'Take fewer.',
          source: 'joinery C11',
        });
    }),
  };
}

/** Dovetails, the tails on the male (joinery C12); with a lap they do not show from the front (joinery C13). */
export function workOutDovetailJoint({ male, other }: Standing, wish: DovetailWish): WorkedJoint {
  const book = openWorkingBook();
  const { lap = 0 } = wish;
  const dovetails = workOutDovetails(book, 'j', { ...wish, width: male.width, depth: other.thickness - lap });
  const v = (name: string) => book.value(`${name}_j`);
  const names = ['delta', 'tail_end', 'tail_base', 'pin_base', 'half_base', 'sum_end', 'sum_base'];
  const figures: readonly JointFigure[] = [
    { name: 'tails', value: dovetails.tails, unit: 'count' },
    ...names.map((name) => ({ name, value: v(name) })),
    { name: 'angle', value: v('dove_angle'), unit: 'degrees' },
  ];
  return {
    cuts: cutDovetails(dovetails, male, other, lap),
    figures,
    settings: [
      `Saw the tails ${formatNumber(v('dove_angle'), 2)}° off square, ${show(dovetails.depth)} deep; mark the pins from them.`,
    ],
    findings: checkDovetail(male, wish, v('tail_base')),
  };
}

/** What dovetails are to be; `sheet`: the wood is plywood. */
export type DovetailWish = Omit<DovetailRequest, 'width' | 'depth'> & {
  readonly lap?: number;
  readonly sheet?: boolean;
};

function checkDovetail(male: FrameMember, wish: DovetailWish, tailBase: number) {
  const { lap = 0 } = wish;
  return findings((say) => {
    const stop = (message: string, remedy: string, code: string) =>
      say('stop', code, { message, remedy, source: 'joinery C12, G21' });
    if (wish.sheet)
      stop('Dovetails in plywood: the edges of the plies crumble.', 'Take a box joint.', 'dovetail-in-sheet');
    if (tailBase < 6)
      stop(
        `Tails of ${show(tailBase)} at their base; ${show(6)} is the least.`,
        'Take fewer tails.',
        'tail-too-narrow',
      );
    if (wish.slope < 5 || wish.slope > 8)
      say('warn', 'dovetail-slope', {
        message: `A slope of 1 in ${formatNumber(wish.slope)}: below 5 the corners are short grain, above 8 it does not hold.`,
        remedy: '1 in 6 for softwood, 7 in general, 8 for hardwood.',
        source: 'joinery C12',
      });
    if (male.thickness < 8 || (lap > 0 && (lap < 2.4 || lap > 5)))
      say('warn', 'dovetail-too-thin', {
        message:
          lap > 0 && male.thickness >= 8
            ? `A lap of ${show(lap)}; ${show(2.4)} to ${show(5)} is usual.`
            : `Dovetails in wood ${show(male.thickness)} thick; ${show(8)} is the least.`,
        remedy: 'Take a rebate or a box joint.',
        source: 'joinery C12, C13',
      });
  });
}
