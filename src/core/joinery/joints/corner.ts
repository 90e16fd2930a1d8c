import type { JointCuts } from './fingers.ts';
import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';

interface End {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * Corner rebate (joinery C8): the other piece, outer face at Z = 0, is cut from inside down to `lip` over the thickness
 * of the male one, which stands in it. Nothing is cut on the male piece.
 */
export function cutCornerRebate(male: Pick<End, 'thickness'>, other: End, lip: number): JointCuts {
  const { length, width, thickness } = other;
  const range = {
    x: [length - male.thickness, length],
    y: [0, width],
    z: [lip, thickness],
  } as const;
  return { male: [], other: [makeRecess('rebate', 'back', range)] };
}

/**
 * Lock rebate (joinery C8): the front is the male piece, outer face at Z = 0, its tongue at the inner face; the side
 * has its inside at Z = 0 and takes the tongue in a trench `depth` deep.
 */
export function cutLockRebate(
  front: End,
  side: End,
  joint: { readonly tongue: number; readonly depth: number },
): JointCuts {
  const { tongue, depth } = joint;
  const shoulder = {
    x: [front.length - depth, front.length],
    y: [0, front.width],
    z: [0, front.thickness - tongue],
  } as const;
  const trench = {
    x: [side.length - front.thickness, side.length - front.thickness + tongue],
    y: [0, front.width],
    z: [0, depth],
  } as const;
  return {
    male: [makeRecess('shoulder', 'face', shoulder)],
    other: [makeRecess('housing', 'face', trench)],
  };
}

/** Housing (joinery C7) in a face at Z = 0, across the whole width or down to `width`; the male piece is not cut. */
export function cutHousing(
  other: Pick<End, 'width'>,
  housing: { readonly from: number; readonly to: number; readonly depth: number },
): JointCuts {
  const range = { x: [housing.from, housing.to], y: [0, other.width], z: [0, housing.depth] } as const;
  return { male: [], other: [makeRecess('housing', 'face', range)] };
}

/** Screws of a butt joint (joinery C1): clearance holes through the back of the other piece into the male one's end. */
export function cutButtScrews(
  other: { readonly at: number; readonly width: number },
  screw: { readonly diameter: number; readonly note: string },
): readonly Machining[] {
  const { diameter } = screw;
  const first = Math.max(20, 5 * diameter);
  const count = Math.max(2, Math.ceil((other.width - 2 * first) / 150) + 1);
  const edge = Math.min(first, other.width / 3);
  const pitch = (other.width - 2 * edge) / (count - 1);
  return Array.from({ length: count }, (_, i) => ({
    kind: 'hole',
    from: 'back',
    x: other.at,
    y: edge + i * pitch,
    diameter: diameter + 0.3,
    depth: 'through',
    countersink: 2 * diameter,
    note: screw.note,
  }));
}

/** Length and pilot of a wood screw (joinery C1): `longest` < `least` means the wood is too thin for it. mm. */
export function screwLimits(
  diameter: number,
  near: number,
  far: { readonly depth: number; readonly grain: 'side' | 'end'; readonly hard: boolean },
): { readonly least: number; readonly longest: number; readonly pilot: number } {
  return {
    least: near + (far.grain === 'side' ? 7 : 10) * diameter,
    longest: near + far.depth - 3,
    pilot: (far.hard ? 0.6 : 0.47) * diameter,
  };
}
