import type { Outline, Point } from '#core/geometry';
import { formatNumber, markSize } from '#core/units';
import type { Machining } from '../types.ts';
import type { Meeting } from './frame.ts';
import { notchPasses } from './saw-settings.ts';
import { checkWall, findings, gluedGap, nearestTool, type WorkedJoint } from './worked-joint.ts';

const show = markSize;
const notchPlay = 0.1; // a notch is longer than the other is wide (joinery C6)
const leastLap = 12; // thickness (joinery C6)

/** Where two members lie over each other at an angle: the same parallelogram in the frame of each. mm. */
export interface Overlap {
  readonly male: Outline;
  readonly other: Outline;
  /** Along each member: width of the one it crosses over the sine. */
  readonly along: { readonly male: number; readonly other: number };
}

/**
 * The overlap of a member that crosses the other with its far end (joinery C5, C6). `degrees`: from the X axis of the male
 * to that of the other, counter-clockwise as the face is seen; at 90 they meet as a rail and a stile do. The face edge
 * (Y = 0) of the male meets the far edge of the other at `centre` less half its own width along it.
 */
export function findOverlap({ male, other, centre }: Meeting, degrees = 90): Overlap {
  const turn = (degrees * Math.PI) / 180;
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
  const along = { male: other.width / sin, other: male.width / sin };
  const lean = (male.width * cos) / sin;
  const start = male.length - along.male - Math.max(0, lean);
  const outline: readonly Point[] = [
    { x: start, y: 0 },
    { x: start + along.male, y: 0 },
    { x: start + along.male + lean, y: male.width },
    { x: start + lean, y: male.width },
  ];
  const from = centre - male.width / 2;
  const seen = ({ x, y }: Point): Point => ({
    x: from + (x - start) * cos + y * sin,
    y: other.width - (x - start) * sin + y * cos,
  });
  return { male: outline, other: outline.map(seen), along };
}

/** Half-lap at any angle (joinery C6): the male keeps its face half, the other its back half; faces flush. */
export function workOutHalfLap(
  meeting: Meeting,
  wish: { readonly degrees?: number; readonly kerf?: number; readonly sheet?: boolean } = {},
): WorkedJoint {
  const { degrees = 90, kerf = 3, sheet = false } = wish;
  const { male, other, along } = findOverlap(meeting, degrees);
  const T = meeting.male.thickness;
  const notch = along.other + notchPlay;
  const lap = (from: 'face' | 'back', outline: Outline): Machining => ({
    kind: 'prism',
    name: 'lap',
    from,
    outline,
    depth: T / 2,
  });
  return {
    cuts: { male: [lap('back', male)], other: [lap('face', widen(other, notchPlay / 2))] },
    figures: [
      { name: 'depth of each', value: T / 2 },
      { name: 'lap along the male', value: along.male },
      { name: 'notch along the other', value: notch },
      { name: 'angle', value: degrees, unit: 'degrees' },
    ],
    settings: [
      `Blade ${show(T / 2)} high, mitre gauge at ${formatNumber(Math.abs(90 - degrees))}°; first and last cut against a stop, ${notchPasses(notch, kerf)} passes; both depths together ${show(T)}, within ${show(0.1)}.`,
    ],
    findings: findings((say) => {
      if (T < leastLap)
        say('warn', 'lap-thin', {
          message: `Half-laps leave ${show(T / 2)} of members ${show(T)} thick; ${show(leastLap)} is the least thickness for them.`,
          remedy: 'Take thicker members, or a mitre with a spline.',
          source: 'joinery C6',
        });
      if (sheet)
        say('warn', 'lap-in-sheet', {
          message: 'A half-lap in plywood loses half its plies.',
          remedy: 'Only with a backing; else take a loose tenon, or solid timber.',
          source: 'joinery C6',
        });
    }),
  };
}

/** The overlap seen by the other, its two sides along the male set out by so much: the first two points lie on one of them. */
function widen(outline: Outline, by: number): Outline {
  return outline.map(({ x, y }, i) => ({ x: x + (i < 2 ? -by : by), y }));
}

/** Bridle at any angle (joinery C5): a tongue a third thick in an open slot; both run the full overall length. */
export function workOutBridle(
  meeting: Meeting,
  wish: { readonly degrees?: number; readonly glue?: string } = {},
): WorkedJoint {
  const { degrees = 90 } = wish;
  const { male, other, along } = findOverlap(meeting, degrees);
  const T = meeting.male.thickness;
  const t = nearestTool([6, 8, 10, 12], T / 3);
  const gap = gluedGap(wish.glue);
  const z0 = (T - t) / 2;
  const cheek = (from: 'face' | 'back'): Machining => ({
    kind: 'prism',
    name: 'shoulder',
    from,
    outline: male,
    depth: z0,
  });
  const slot: Machining = {
    kind: 'prism',
    name: 'slot',
    from: 'face',
    outline: other,
    below: z0 - gap,
    depth: z0 + t + gap,
  };
  return {
    cuts: { male: [cheek('face'), cheek('back')], other: [slot] },
    figures: [
      { name: 'tongue thickness', value: t },
      { name: 'slot width', value: t + 2 * gap },
      { name: 'tongue length', value: along.male },
      { name: 'slot depth', value: along.other },
      { name: 'angle', value: degrees, unit: 'degrees' },
    ],
    settings: [
      `Slot ${show(t + 2 * gap)} wide on end against a tall fence; cheeks: blade ${show(z0)} high from both faces. Leave ${show(1)} on both ends to flush; clamp the cheeks too.`,
    ],
    findings: findings((say) => checkWall(say, 'Beside the slot', z0 - gap, T)),
  };
}
