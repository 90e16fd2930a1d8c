import type { JointCuts } from '../joints/fingers.ts';
import type { FrameMember, Meeting } from '../joints/frame.ts';
import { mirrorAll } from '../joints/mirror.ts';
import type { Range } from '../parts.ts';
import type { Machining } from '../types.ts';

/** A rail as it lies in a door: x right, y down, from the face into the wood; `top` is its upper edge above the foot. */
export interface RailInDoor {
  readonly size: FrameMember;
  readonly left: number;
  readonly top: number;
}

/** Cuts of a rail and of the two stiles it stands between, each in its own frame. */
export interface RailCuts {
  readonly rail: readonly Machining[];
  readonly left: readonly Machining[];
  readonly right: readonly Machining[];
}

/**
 * Both ends of a rail in its stiles: the left one has x up and y right, the right one x down and y left. `cut` makes the
 * joint as at the right; for the left end it is asked with the door `turned` half round.
 */
export function cutBothEnds(
  rail: RailInDoor,
  stile: FrameMember,
  cut: (meeting: Meeting, turned: boolean) => JointCuts,
): RailCuts {
  const centre = stile.length - rail.top + rail.size.width / 2; // from the top, as the right stile runs
  const right = cut({ male: rail.size, other: stile, centre }, false);
  const left = cut({ male: rail.size, other: stile, centre: stile.length - centre }, true);
  return { rail: [...right.male, ...turnCuts(left.male, rail.size)], left: left.other, right: right.other };
}

/** A member turned half round in the plane of the door: the same cuts seen in its own frame. */
export function turnCuts(cuts: readonly Machining[], size: FrameMember): readonly Machining[] {
  return mirrorAll(mirrorAll(cuts, 'x', size), 'y', size);
}

/** A range seen from the other end. */
export const flipRange = ([from, to]: Range, width: number): Range => [width - to, width - from];

/** The bevel of the leading edge; none when it is square. The back is the shorter face. */
export function bevelLeading(degrees: number, edge: 'face-edge' | 'start' | 'end'): readonly Machining[] {
  if (degrees === 0) return [];
  return [{ kind: 'bevel', edge, degrees: -degrees, note: 'leading edge, with the door as a whole' }];
}

/** Axes of the members of a door, in the frame of the piece. */
export const towards = {
  right: { x: 1, y: 0, z: 0 },
  left: { x: -1, y: 0, z: 0 },
  up: { x: 0, y: 1, z: 0 },
  down: { x: 0, y: -1, z: 0 },
} as const;
