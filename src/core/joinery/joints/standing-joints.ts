import { markSize } from '#core/units';
import { makeRecess, type Range } from '../parts.ts';
import { leastBeyondHousing } from '../rules.ts';
import type { Standing } from './case-joints.ts';
import { cutButtScrews, cutHousing, screwLimits } from './corner.ts';
import type { FrameMember } from './frame.ts';
import { checkWall, findings, gluedGap, type WorkedJoint } from './worked-joint.ts';

const show = markSize;

/** Screws of a butt joint: `at` the middle of the male along the other; the grain they go into, hard wood or not. */
export interface ScrewWish {
  readonly at: number;
  readonly diameter: number;
  readonly grain: 'side' | 'end';
  readonly hard: boolean;
  readonly sheet?: boolean;
}

/** Screws through the other into the male one's end (joinery C1). `at`: middle of the male along the other. */
export function workOutButt({ male, other }: Standing, wish: ScrewWish): WorkedJoint {
  const { at, diameter, grain, hard } = wish;
  const limits = screwLimits(diameter, other.thickness, { depth: male.length, grain, hard });
  const screws = cutButtScrews({ at, width: male.width }, { diameter, note: 'into the end' });
  return {
    cuts: { male: [], other: screws },
    figures: [
      { name: 'pilot', value: limits.pilot },
      { name: 'clearance hole', value: diameter + 0.3 },
      { name: 'least length', value: limits.least },
      { name: 'longest', value: limits.longest },
      { name: 'edge distance', value: Math.max(10, 2.5 * diameter) },
      { name: 'end distance', value: (hard ? 5 : 7) * diameter },
      { name: 'screws', value: screws.length, unit: 'count' },
    ],
    settings: [
      `Clearance ${show(diameter + 0.3)}, countersunk until the head lies up to ${show(2)} below; pilot ${show(limits.pilot)}, waxed bronze or stainless screws.`,
    ],
    findings: checkScrews({ male, other }, wish, limits),
  };
}

function checkScrews({ male, other }: Standing, wish: ScrewWish, limits: ReturnType<typeof screwLimits>) {
  const { diameter, grain, sheet = false } = wish;
  return findings((say) => {
    if (limits.least > limits.longest)
      say('warn', 'screw-no-room', {
        message: `A ${show(diameter)} screw through ${show(other.thickness)} wants to be ${show(limits.least)} long, and there is room for ${show(limits.longest)}.`,
        remedy: 'Take a thinner screw and a deeper piece, or glue with epoxy and count the screws as clamps.',
        source: 'joinery C1',
      });
    if (sheet && (male.thickness < 15 || diameter > male.thickness / 4))
      say('warn', 'screw-into-end', {
        message: `Weak joint: a screw of ${show(diameter)} into the edge of a sheet ${show(male.thickness)} thick; ${show(Math.min(male.thickness / 4, diameter))} is the most, and under ${show(15)} it splits.`,
        remedy: 'Glue with epoxy and count the screws as clamps, or take a housing or a box joint.',
        source: 'joinery C0.1, C1, G21',
      });
    if (grain === 'end')
      say('note', 'screw-into-end-grain', {
        message:
          'The screws go into end grain, where they hold about three quarters of what they do across it.',
        remedy: 'Ten diameters of thread, and glue.',
        source: 'joinery C0.1',
      });
  });
}

const usualRoom = 0.15; // a housing is wider than what stands in it (joinery C7: 0.1 to 0.2)

/** How much wider a housing is than what stands in it: the gap of the glue on both faces, when one is chosen (joinery C, C7). */
export function housingRoom(glue?: string): number {
  return glue === undefined ? usualRoom : 2 * gluedGap(glue);
}

/** Housing in the face of the other, stopped `stopped` from its face edge where asked (joinery C7). */
export function workOutHousing(
  { male, other, glue }: Standing,
  wish: {
    readonly at: number;
    readonly depth?: number;
    readonly stopped?: number;
    readonly cutter?: number;
    readonly film?: number;
  },
): WorkedJoint {
  const { at, stopped = 0, cutter = 0, film = 0 } = wish;
  const depth = wish.depth ?? Math.min(7, other.thickness / 3);
  const width = male.thickness + housingRoom(glue) + 2 * film;
  const [from, to] = [at - width / 2, at + width / 2];
  const plain = cutHousing(other, { from, to, depth });
  const trench = makeRecess('housing', 'face', { x: [from, to], y: [stopped, other.width], z: [0, depth] });
  const notch = stopped > 0 ? stopped + cutter / 2 : 0;
  const cutAway = makeRecess('notch', 'face-edge', {
    x: [male.length - depth, male.length],
    y: [0, notch],
    z: [0, male.thickness],
  });
  return {
    cuts: stopped > 0 ? { male: [cutAway], other: [trench] } : plain,
    figures: [
      { name: 'width', value: width },
      { name: 'depth', value: depth },
      { name: 'near edge', value: from },
      { name: 'notch', value: notch },
      { name: 'shelf over its clear length, both ends', value: 2 * depth - 0.5 },
    ],
    settings: [
      `Mark both uprights paired, inside faces together; trench ${show(width)} wide, ${show(depth)} deep; try it with the shelf itself.`,
    ],
    findings: checkHousing(other, depth, [from, to]),
  };
}

function checkHousing(other: FrameMember, depth: number, [from, to]: Range) {
  return findings((say) => {
    checkWall(say, 'Behind the housing', other.thickness - depth, other.thickness);
    if (depth > other.thickness / 2)
      say('stop', 'housing-too-deep', {
        message: `A housing ${show(depth)} deep takes more than half of ${show(other.thickness)}.`,
        remedy: `Make it ${show(Math.floor(other.thickness / 3))} deep.`,
        source: 'joinery C7',
      });
    const beyond = Math.min(from, other.length - to);
    if (beyond < leastBeyondHousing)
      say('warn', 'housing-near-end', {
        message: `The housing ends ${show(Math.max(0, beyond))} from the end of its member; under ${show(leastBeyondHousing)} that wood breaks away.`,
        remedy: 'Leave the member longer, or take a rebate.',
        source: 'joinery C21, G21',
      });
  });
}
