import type { CuttingStock, Trim } from '#core/cutting';
import type { Board } from '#core/joinery';
import type { Project, StockLine } from '#core/project';

import { isWorthMoney } from './cost-measure.ts';
import type { Need } from './need.ts';
import { priceOfStock } from './stock-prices.ts';

/** What is left of a piece of stock once its edges are trimmed, mm. Offcuts are trued like whole sheets: their edges get knocked. */
export function usableOf(
  line: { readonly length: number; readonly width: number },
  trim: Trim,
): { readonly length: number; readonly width: number } {
  return {
    length: line.length - (trim.left ?? 0) - (trim.right ?? 0),
    width: line.width - (trim.bottom ?? 0) - (trim.top ?? 0),
  };
}

/** True when the blank comes out of this piece of stock, turned across the grain where it may be. */
export function fitsOn(need: Need, line: StockLine, trim: Trim): boolean {
  const usable = usableOf(line, trim);
  const fits = (length: number, width: number): boolean => length <= usable.length && width <= usable.width;
  return fits(need.length, need.width) || (need.turn && fits(need.width, need.length));
}

/** The boards of the rack as they can be used, for parts that are too wide for one (joinery C16); battens are no boards. */
export function boardsAtHand({ stock, tools }: Project): readonly Board[] {
  return stock
    .filter(({ form, count }) => (form === 'board' || form === 'offcut') && count !== 0)
    .map((line) => ({
      material: line.material,
      ...usableOf(line, tools.boardSaw.trim),
      thickness: line.thickness,
    }));
}

/** How many there are of a stock line; null for as many as wanted. What is owned without a count is there once. */
export function countOf(line: StockLine): number | null {
  return line.owned === true ? (line.count ?? 1) : line.count;
}

/**
 * The stock of a cutting job. What is owned costs nothing more; where nothing can be bought, it counts at its price (or
 * area), so that as little as possible of the rack is used up. What is bought at a price not known has no cost in the job,
 * where it then counts by its size.
 */
export function stockOfJob(
  lines: readonly StockLine[],
  form: 'sheet' | 'board' | 'batten',
): readonly CuttingStock[] {
  const cost = chooseCosts(lines);
  return lines.map((line) => {
    const own = cost(line);
    return {
      id: line.id,
      length: line.length,
      ...(form !== 'batten' && { width: line.width }),
      ...(own !== null && { cost: own }),
      count: countOf(line),
      ...(form !== 'batten' && line.keepOut && line.keepOut.length > 0 && { keepOut: line.keepOut }),
    };
  });
}

function chooseCosts(lines: readonly StockLine[]): (line: StockLine) => number | null {
  if (lines.some((line) => line.owned !== true)) return priceOfStock;
  if (isWorthMoney(lines)) return (line) => line.price ?? null;
  return (line) => Math.round(line.length * line.width) / 1e6;
}
