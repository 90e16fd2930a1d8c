import { formatMoney, formatNumber } from '#core/units';

/**
 * What the costs of a job are told in: money, or where no stock has a price as much of it; `scale` brings a cost to the
 * unit.
 */
export type CostUnit =
  | { readonly kind: 'money'; readonly currency: string }
  | { readonly kind: 'stock'; readonly unit: 'm²' | 'ft²' | 'm' | 'ft'; readonly scale: number };

/** A cost with its unit, as `78.00 EUR` or `2.98 m²`. */
export function formatCost(cost: number, unit: CostUnit): string {
  return unit.kind === 'money'
    ? formatMoney(cost, unit.currency)
    : `${formatNumber(cost * unit.scale, 2)} ${unit.unit}`;
}
