/** How long and how closely to go down. */
export interface DescentOptions {
  readonly steps: number;
  /** A step that lowers the sum by less than this share has arrived. */
  readonly arrived: number;
  /** A sum below this is rounding. */
  readonly still: number;
}

const firstDamping = 1e-3;
const mostDamping = 1e12;

/**
 * The lowest place met going down from a start: each step damped as by Levenberg and Marquardt, more after a step that led
 * up, less after one that led down, none near the end (Marquardt 1963; the factors are ours). `step` gives the place after one
 * damped step, null when the damping is too small for one. Always comes back, at the start at worst.
 */
export function descend<S extends { readonly sum: number }>(
  start: S,
  step: (from: S, damping: number) => S | null,
  { steps, arrived, still }: DescentOptions,
): S {
  let best = start;
  let damping = firstDamping;
  for (let count = 0; count < steps && damping < mostDamping; count += 1) {
    const next = step(best, damping);
    if (next === null || !(next.sum < best.sum)) {
      if (next !== null && next.sum - best.sum <= arrived * best.sum + still) break;
      damping = damping < 1e-6 ? firstDamping : damping * 10;
      continue;
    }
    const gain = best.sum - next.sum;
    best = next;
    damping = damping < 1e-9 ? 0 : damping / 30;
    if (gain <= arrived * best.sum + still) break;
  }
  return best;
}
