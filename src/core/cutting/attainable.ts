import type { Bin, Model } from './model.ts';

/** More steps of cost than this are not worked through; the bound then stays on its grid. */
const mostSteps = 500_000;

/**
 * The least total that whole sheets can come to and that is not below a bound: prices 58 and 71 never make 60. The
 * bound itself, on its grid, when the costs have no common measure or too fine a one.
 */
export function nextAttainable(model: Model, bound: number): number {
  const { costGrid } = model;
  if (costGrid <= 0) return bound * (1 - 1e-9);
  const least = Math.ceil(bound / costGrid - 1e-6);
  const dear = model.bins.filter((bin) => bin.cost > 0 && bin.count > 0);
  const most = least + dear.reduce((steps, bin) => Math.max(steps, stepsOf(bin, costGrid)), 0);
  if (most > mostSteps) return least * costGrid;
  const reached = reachSums(dear, costGrid, most);
  for (let sum = least; sum <= most; sum++) if (reached[sum]) return sum * costGrid;
  return least * costGrid;
}

function stepsOf(bin: Bin, costGrid: number): number {
  return Math.round(bin.cost / costGrid);
}

/** Which sums, in steps of cost, some choice of sheets makes; each kind at most as often as there is of it. */
function reachSums(bins: readonly Bin[], costGrid: number, most: number): Uint8Array {
  const reached = new Uint8Array(most + 1);
  reached[0] = 1;
  const taken = new Int32Array(most + 1);
  for (const bin of bins) {
    const steps = stepsOf(bin, costGrid);
    taken.fill(0);
    for (let sum = steps; sum <= most; sum++) {
      const before = taken[sum - steps] as number;
      if (reached[sum] || !reached[sum - steps] || before >= bin.count) continue;
      reached[sum] = 1;
      taken[sum] = before + 1;
    }
  }
  return reached;
}
