import type { Outline, Placement } from '#core/geometry';
import { lipOutline, type LipEnd } from './outlines.ts';
import type { DoorLayout } from './sizes.ts';
import { placeAt } from '../parts.ts';
import type { Machining } from '../types.ts';

/** The edges of a door, clockwise from the left one, as seen. */
export const doorEdges = ['left', 'top', 'right', 'bottom'] as const;
export type DoorEdge = (typeof doorEdges)[number];

/** Directions of the piece's frame. */
export const towards = {
  right: { x: 1, y: 0, z: 0 },
  left: { x: -1, y: 0, z: 0 },
  up: { x: 0, y: 1, z: 0 },
  down: { x: 0, y: -1, z: 0 },
} as const;

/** Each edge's own frame: along it clockwise, and in from it; its neighbours at the start and the end. */
const frames = {
  left: { along: 'up', inwards: 'right', start: 'bottom', end: 'top' },
  top: { along: 'right', inwards: 'down', start: 'left', end: 'right' },
  right: { along: 'down', inwards: 'left', start: 'top', end: 'bottom' },
  bottom: { along: 'left', inwards: 'up', start: 'right', end: 'left' },
} as const;

/** A lipping as it lies: its outer edge is its face edge. */
export interface LaidLip {
  readonly edge: DoorEdge;
  readonly hinge: boolean;
  readonly lock: boolean;
  /** Names of the working steps. */
  readonly names: { readonly length: string; readonly width: string; readonly blank: string };
  readonly outline: Outline;
  readonly bevels: readonly Machining[];
  /** Where it begins along its edge of the door. */
  readonly from: number;
  readonly placement: Placement;
}

/** The hinge edge and the lock edge of the door. */
export function hungOn({ choices }: DoorLayout): { readonly hinge: DoorEdge; readonly lock: DoorEdge } {
  return choices.hinged === 'left' ? { hinge: 'left', lock: 'right' } : { hinge: 'right', lock: 'left' };
}

/** Name of the working step with the width of the lipping on an edge. */
export function lipName(layout: DoorLayout, edge: DoorEdge): 'a' | 'a_hinge' | 'a_lock' {
  if (edge === 'top' || edge === 'bottom') return 'a';
  return hungOn(layout).hinge === edge ? 'a_hinge' : 'a_lock';
}

/** Where each edge's own frame begins, in the frame of the piece. */
export function edgePlacement({ book }: DoorLayout, edge: DoorEdge, from: number, face = 0): Placement {
  const v = book.value;
  const origins = {
    left: { x: 0, y: 0 },
    top: { x: 0, y: v('Hd') },
    right: { x: v('Wd'), y: v('Hd') },
    bottom: { x: v('Wd'), y: 0 },
  };
  const { along, inwards } = frames[edge];
  const [start, step] = [origins[edge], towards[along]];
  const origin = { x: start.x + step.x * from, y: start.y + step.y * from, z: face };
  return placeAt(origin, step, towards[inwards]);
}

/** The bevel of the leading edge on one edge of a part; none when the edge is square. The back is the shorter face. */
export function leadingBevel(
  { book }: DoorLayout,
  edge: 'face-edge' | 'start' | 'end',
): readonly Machining[] {
  const degrees = book.value('beta');
  if (degrees === 0) return [];
  return [{ kind: 'bevel', edge, degrees: -degrees, note: 'leading edge, with the door as a whole' }];
}

/** The four lippings as they lie (joinery B2): the upright ones run through, or mitred, or between corner blocks. */
export function layLips(layout: DoorLayout): readonly LaidLip[] {
  return doorEdges.map((edge) => layLip(layout, edge));
}

function layLip(layout: DoorLayout, edge: DoorEdge): LaidLip {
  const { book, choices } = layout;
  const v = book.value;
  const upright = edge === 'left' || edge === 'right';
  const { start, end } = frames[edge];
  const { hinge, lock } = hungOn(layout);
  const width = lipName(layout, edge);
  const mitred = choices.lipJoint === 'mitre' && !choices.blocks;
  const inset = choices.blocks ? v('block') : upright || mitred ? 0 : v(lipName(layout, start));
  const endOf = (neighbour: DoorEdge): LipEnd => ({
    run: mitred ? v(lipName(layout, neighbour)) : 0,
    round: !choices.blocks && (upright || mitred) ? v('r') : 0,
  });
  const length = upright ? 'lip_v_L' : 'lip_h_L';
  const tips = mitred
    ? [...(start === lock ? ['start' as const] : []), ...(end === lock ? ['end' as const] : [])]
    : [];
  return {
    edge,
    hinge: edge === hinge,
    lock: edge === lock,
    names: { length, width, blank: blankNames[width] },
    outline: lipOutline(v(length), v(width), endOf(start), endOf(end)),
    bevels: [
      ...(edge === lock ? leadingBevel(layout, 'face-edge') : []),
      ...tips.flatMap((tip) => leadingBevel(layout, tip)),
    ],
    from: inset,
    placement: edgePlacement(layout, edge, inset),
  };
}

const blankNames = { a: 'lip_rough_T', a_hinge: 'lip_hinge_rough_T', a_lock: 'lip_lock_rough_T' } as const;
