import { nextAttainable } from './attainable.ts';
import type { Model } from './model.ts';
import { usableArea } from './usable-area.ts';

/** Rounds a bound up to the next total that whole sheets can come to; with no common measure of costs it stays. */
export function roundBound(model: Model, bound: number): number {
  return bound > 0 ? nextAttainable(model, bound) : 0;
}

/**
 * The least cost of stock whose area holds the area of the parts, kerf counted with both: the cheapest area is used
 * first, as far as there is any. What keep-outs take of the stock does not count. Valid for every style.
 */
export function areaBound(model: Model): number {
  let area = 0;
  for (const kind of model.kinds) area += kind.area * kind.count;
  const bins = model.bins.map((bin) => ({ ...bin, area: usableArea(model, bin) }));
  const usable = bins.filter((bin) => bin.area > 0);
  usable.sort((a, b) => a.cost / a.area - b.cost / b.area);
  let cost = 0;
  for (const bin of usable) {
    if (area <= 0) break;
    const take = Math.min(area, bin.area * bin.count);
    cost += (take / bin.area) * bin.cost;
    area -= take;
  }
  return roundBound(model, cost);
}
