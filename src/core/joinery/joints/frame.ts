import type { JointCuts } from './fingers.ts';
import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';

/** A member whose end (X = L) meets the edge (Y = W) of the other, both of one thickness, faces flush. mm. */
export interface FrameMember {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** Where on the other member the middle of this one comes, along its X. */
export interface Meeting {
  readonly male: FrameMember;
  readonly other: FrameMember;
  readonly centre: number;
}

/** Tenon across the width: `shoulder` on each side of it, `thickness` in the middle; `reach` into the other. */
export interface Tenon {
  readonly reach: number;
  readonly thickness: number;
  readonly shoulder: number;
  /** Gap on each glued face. */
  readonly gap: number;
}

const locating = 0.25; // half the play a mortise has along its length (joinery C4)
const glueWell = 1.5; // past the end of a stub tenon (joinery C4)

/** Stub tenon and its mortise (joinery C4, C-COORD). */
export function cutStubTenon({ male, other, centre }: Meeting, tenon: Tenon): JointCuts {
  const { reach, thickness, shoulder, gap } = tenon;
  const z0 = (male.thickness - thickness) / 2;
  const x = [male.length - reach, male.length] as const;
  const whole = [0, male.width] as const;
  const z = [z0, z0 + thickness] as const;
  return {
    male: [
      makeRecess('shoulder', 'face', { x, y: whole, z: [0, z0] }),
      makeRecess('shoulder', 'back', { x, y: whole, z: [z0 + thickness, male.thickness] }),
      makeRecess('shoulder', 'face-edge', { x, y: [0, shoulder], z }),
      makeRecess('shoulder', 'far-edge', { x, y: [male.width - shoulder, male.width], z }),
    ],
    other: [
      makeRecess('mortise', 'far-edge', {
        x: [centre - male.width / 2 + shoulder - locating, centre + male.width / 2 - shoulder + locating],
        y: [other.width - reach - glueWell, other.width],
        z: [z0 - gap, z0 + thickness + gap],
      }),
    ],
  };
}

/** Loose tenon (joinery C3): the same slot in the end of one and the edge of the other. */
export function cutLooseTenon({ male, other, centre }: Meeting, tenon: Tenon): JointCuts {
  const { reach, thickness, shoulder, gap } = tenon;
  const z = [(male.thickness - thickness) / 2 - gap, (male.thickness + thickness) / 2 + gap] as const;
  return {
    male: [
      makeRecess('mortise', 'end', {
        x: [male.length - reach, male.length],
        y: [shoulder, male.width - shoulder],
        z,
      }),
    ],
    other: [
      makeRecess('mortise', 'far-edge', {
        x: [centre - male.width / 2 + shoulder, centre + male.width / 2 - shoulder],
        y: [other.width - reach, other.width],
        z,
      }),
    ],
  };
}

/** Half-lap (joinery C6): the male piece keeps its face half over `reach`, the other its back half. */
export function cutHalfLap({ male, other, centre }: Meeting, reach: number): JointCuts {
  const half = male.thickness / 2;
  return {
    male: [
      makeRecess('lap', 'back', {
        x: [male.length - reach, male.length],
        y: [0, male.width],
        z: [half, male.thickness],
      }),
    ],
    other: [
      makeRecess('lap', 'face', {
        x: [Math.max(0, centre - male.width / 2), Math.min(other.length, centre + male.width / 2)],
        y: [other.width - reach, other.width],
        z: [0, half],
      }),
    ],
  };
}

/** Dowels (joinery C2): holes in the end of one and the edge of the other, one deeper than the dowel reaches. */
export function cutDowels(
  { male, other, centre }: Meeting,
  dowel: { readonly diameter: number; readonly depth: number; readonly stations: readonly number[] },
): JointCuts {
  const { diameter, depth, stations } = dowel;
  const hole = (from: 'end' | 'far-edge', x: number, y: number): Machining => ({
    kind: 'hole',
    from,
    x,
    y,
    diameter,
    depth: depth + 1,
    note: 'dowel',
  });
  return {
    male: stations.map((e) => hole('end', e, male.thickness / 2)),
    other: stations.map((e) => hole('far-edge', centre + e - male.width / 2, other.thickness / 2)),
  };
}
