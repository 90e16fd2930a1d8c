import type { Model } from './model.ts';

/** Rounds a bound up to the grid of the costs; with no grid it stays. */
export function roundBound(model: Model, bound: number): number {
  const { costGrid } = model;
  if (!(bound > 0)) return 0;
  return costGrid > 0 ? Math.ceil(bound / costGrid - 1e-6) * costGrid : bound * (1 - 1e-9);
}

/**
 * The least cost of stock whose area holds the area of the parts, kerf counted with both: the cheapest area is used
 * first, as far as there is any. Valid for every style.
 */
export function areaBound(model: Model): number {
  let area = 0;
  for (const kind of model.kinds) area += kind.area * kind.count;
  const bins = [...model.bins].filter((bin) => bin.area > 0);
  bins.sort((a, b) => a.cost / a.area - b.cost / b.area);
  let cost = 0;
  for (const bin of bins) {
    if (area <= 0) break;
    const take = Math.min(area, bin.area * bin.count);
    cost += (take / bin.area) * bin.cost;
    area -= take;
  }
  return roundBound(model, cost);
}
