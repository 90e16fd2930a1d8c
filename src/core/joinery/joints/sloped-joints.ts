import type { Outline } from '#core/geometry';
import { formatNumber, markSize } from '#core/units';
import type { Machining } from '../types.ts';
import type { FrameMember } from './frame.ts';
import { findings, type WorkedJoint } from './worked-joint.ts';

const show = markSize;

/**
 * Mitre across the thickness with a spline (joinery C14): both members end at `degrees` to their inside face (Z = T), each
 * with a slot square to the mitre at `at` from the heel. The other member is the mirror image.
 */
export function workOutMitreSpline(
  member: FrameMember,
  wish: { readonly degrees?: number; readonly spline?: number; readonly at?: number } = {},
): WorkedJoint {
  const { degrees = 45 } = wish;
  const { width, thickness: T } = member;
  const spline = wish.spline ?? Math.max(3, T / 4);
  const q = wish.at ?? T / 3;
  const turn = (degrees * Math.PI) / 180;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  const most = (T - (q + spline / 2) * sin) / cos;
  const depth = most - 3 / cos;
  const outline = slotOutline(member, { turn, q, spline, depth });
  const cuts: readonly Machining[] = [
    { kind: 'bevel', edge: 'end', degrees: degrees - 90, note: 'mitre' },
    ...(depth > 0
      ? ([
          { kind: 'prism', name: 'slot', from: 'face-edge', outline, depth: width, note: 'for the spline' },
        ] as const)
      : []),
  ];
  return {
    cuts: { male: cuts, other: cuts },
    figures: [
      { name: 'saw tilt', value: 90 - degrees, unit: 'degrees' },
      { name: 'depth before it breaks out', value: most },
      { name: 'slot depth', value: depth },
      { name: 'spline thickness', value: spline },
      { name: 'spline width', value: 2 * depth - 1 },
    ],
    settings: [
      `Tilt ${formatNumber(90 - degrees)}°; slot ${show(spline)} wide, ${show(Math.max(0, depth))} deep, ${show(q)} from the heel, square to the mitre. Grain of the spline across the joint; size the end grain first.`,
    ],
    findings: checkSpline(q, depth),
  };
}

/** The slot in the plane of X and Z: from the mitre face into the wood, square to it. */
function slotOutline(
  { length, thickness: T }: FrameMember,
  slot: { readonly turn: number; readonly q: number; readonly spline: number; readonly depth: number },
): Outline {
  const { turn, q, spline, depth } = slot;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  const heel = { x: length - T / Math.tan(turn), y: T };
  const on = (along: number, deep: number) => ({
    x: heel.x + along * cos - deep * sin,
    y: heel.y - along * sin - deep * cos,
  });
  const [low, high] = [q - spline / 2, q + spline / 2];
  return [on(low, depth), on(high, depth), on(high, 0), on(low, 0)];
}

function checkSpline(q: number, depth: number) {
  return findings((say) => {
    if (depth >= 4) return;
    say('stop', 'spline-no-room', {
      message: `At ${show(q)} from the heel the slot can be ${show(Math.max(0, depth))} deep before it shows; ${show(4)} is the least.`,
      remedy: 'Set it nearer to the heel, or take a thinner spline.',
      source: 'joinery C14',
    });
  });
}

/** Scarf (joinery C15): the end of one and the start of the other, each planed to a feather over `ratio` times the thickness. */
export function workOutScarf(
  { male, other }: { readonly male: FrameMember; readonly other: FrameMember },
  ratio: number,
): WorkedJoint {
  const { length, width, thickness: T } = male;
  const run = ratio * T;
  const plane = (outline: Outline): Machining => ({
    kind: 'prism',
    name: 'slope',
    from: 'face-edge',
    outline,
    depth: width,
    note: 'scarf',
  });
  return {
    cuts: {
      male: [
        plane([
          { x: length - run, y: 0 },
          { x: length, y: 0 },
          { x: length, y: T },
        ]),
      ],
      other: [
        plane([
          { x: 0, y: 0 },
          { x: run, y: T },
          { x: 0, y: T },
        ]),
      ],
    },
    figures: [
      { name: 'run', value: run },
      { name: 'length of both', value: length + other.length - run },
      { name: 'face', value: T * Math.sqrt(1 + ratio * ratio) },
      { name: 'angle', value: (Math.atan(1 / ratio) * 180) / Math.PI, unit: 'degrees' },
    ],
    settings: [
      `Stack both, ends set back by ${show(run)}, and plane one slope; wet both with epoxy, thickened for the joint, wax paper, no hard clamping.`,
    ],
    findings: checkScarf(run, ratio, Math.min(length, other.length)),
  };
}

function checkScarf(run: number, ratio: number, shorter: number) {
  return findings((say) => {
    if (run > shorter)
      say('stop', 'scarf-too-long', {
        message: `A scarf of 1 in ${formatNumber(ratio)} runs over ${show(run)}, longer than a piece of ${show(shorter)}.`,
        remedy: 'Join longer pieces.',
        source: 'joinery C15',
      });
    if (ratio < 8)
      say('warn', 'scarf-steep', {
        message: `A scarf of 1 in ${formatNumber(ratio)} is mostly end grain: 8 is the least, 12 where it is highly stressed.`,
        remedy: 'Make it 8 times the thickness long.',
        source: 'joinery C15',
      });
  });
}
