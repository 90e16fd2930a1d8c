import type { Box3, Point3 } from '#core/geometry';
import type { Range } from '../parts.ts';
import type { WorkingBook } from '../working.ts';

type Values = Pick<WorkingBook, 'value'>;

interface Hinged {
  readonly hinged: 'left' | 'right';
}

/** A box at the lock edge of a door, in the frame of the piece: into the door from its edge, above its foot, behind its face. */
export function boxAtEdge(
  { value: v }: Values,
  { hinged }: Hinged,
  { into, up, deep }: { readonly into: Range; readonly up: Range; readonly deep: Range },
): Box3 {
  const x: Range = hinged === 'left' ? [v('Wd') - into[1], v('Wd') - into[0]] : into;
  return {
    min: { x: x[0], y: up[0], z: -deep[1] },
    max: { x: x[1], y: up[1], z: -deep[0] },
  };
}

/** A point of the face of a door, so far from its lock edge and above its foot. */
export function pointAtEdge(
  { value: v }: Values,
  { hinged }: Hinged,
  { into, up }: { readonly into: number; readonly up: number },
): Point3 {
  return { x: hinged === 'left' ? v('Wd') - into : into, y: up, z: 0 };
}

/** Out of the lock edge. */
export const outOfLockEdge = ({ hinged }: Hinged): Point3 => ({ x: hinged === 'left' ? 1 : -1, y: 0, z: 0 });
