import type { Reach } from '../hull/back-edge.ts';
import type { CarcaseChoices } from './choices.ts';

export type Side = 'l' | 'r';
export const sides: readonly Side[] = ['l', 'r'];
export const rule = 'joinery B7';
export const sideName = { l: 'left', r: 'right' } as const;

/** Where an end stands along the boat: its outer and its inner face. */
export function facesOf({ start, width, thickness }: CarcaseChoices, side: Side): readonly [number, number] {
  const outer = side === 'l' ? start : start + width;
  return [outer, side === 'l' ? outer + thickness : outer - thickness];
}

/** What limits the depth of anything in the carcase. */
export const reachOf = (choices: CarcaseChoices): Reach => ({
  hull: choices.hull,
  clearance: choices.clearance,
  before: choices.frontThickness,
});
