import type { CuttingPlan } from '#core/cutting';
import type { Project, StockLine } from '#core/project';
import { formatMoney } from '#core/units';

import { countWords } from './words.ts';

/** What is known of a cost: the sum of what has a price, and how many things have none. */
export interface PriceSum {
  readonly total: number;
  readonly unpriced: number;
}

/** What a user reads where a price is not known. */
export const noPrice = 'no price known';

/** What one piece of a stock line costs; null: not known. What is owned costs nothing more. */
export function priceOfStock(line: StockLine): number | null {
  return line.owned === true ? 0 : (line.price ?? null);
}

/** What so many pieces of a stock line cost, in words: `from the rack`, `no price known`, `156.00 EUR`. */
export function sayStockPrice(project: Project, line: StockLine, count: number): string {
  if (line.owned === true) return 'from the rack';
  return line.price === undefined ? noPrice : formatMoney(count * line.price, project.currency);
}

/** What the stock used by plans costs to buy. */
export function sumStock(
  project: Project,
  plans: readonly { readonly stockUsed: CuttingPlan['stockUsed'] }[],
): PriceSum {
  const used = plans.flatMap(({ stockUsed }) => stockUsed).filter(({ count }) => count > 0);
  const prices = used.flatMap(({ id, count }) => {
    const line = project.stock.find((each) => each.id === id);
    const each = line && priceOfStock(line);
    return line ? [{ id, price: each === null || each === undefined ? null : count * each }] : [];
  });
  return {
    total: prices.reduce((sum, { price }) => sum + (price ?? 0), 0),
    unpriced: new Set(prices.flatMap(({ id, price }) => (price === null ? [id] : []))).size,
  };
}

/** A sum in words: `156.00 EUR`, `156.00 EUR and 2 things without a price`, `no price known`. */
export function saySum({ total, unpriced }: PriceSum, currency: string): string {
  if (unpriced === 0) return formatMoney(total, currency);
  return total > 0
    ? `${formatMoney(total, currency)} and ${countWords(unpriced, 'thing')} without a price`
    : noPrice;
}
