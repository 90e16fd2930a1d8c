import type { Nest } from './nest.ts';

/** How far the parts on a sheet reach along it. */
export function usedLength(nest: Nest, sheet: number): number {
  let most = 0;
  for (let i = 0; i < nest.count; i++) {
    if (nest.sheet[i] === sheet) most = Math.max(most, nest.x[i]! + nest.shapes.width[nest.pose[i]!]!);
  }
  return most;
}
