import { reducedCostOf, valueOf } from './board-lp.ts';
import type { BoardLp } from './board-lp.ts';

/**
 * A bound for plans of so many boards from any prices at all: what a pattern is missing below a reduced cost of 0 is
 * taken off for every board (Farley 1990 in kind). It holds however roughly the program was solved.
 */
export function boundOfNode(lp: BoardLp, boards: number, prices: Float64Array): number {
  const own = prices.map((price, row) => (row < lp.kinds ? Math.max(0, price) : Math.min(0, price)));
  const sum = own.reduce((all, price, row) => all + price * (lp.demand[row] as number), 0);
  const at = { ...lp, prices: own };
  let least = 0;
  for (const pattern of lp.patterns) {
    least = Math.min(least, reducedCostOf(at, pattern) - (pattern.price - pattern.cost));
  }
  return sum + least * boards;
}

/** The same far along the ray on which the prices of a program without solution grow. */
export function boundOfRay(lp: BoardLp, boards: number): number {
  const { rows, amounts, inverse, prices } = lp;
  let leaving = 0;
  for (let i = 1; i < rows; i++) if ((amounts[i] as number) < (amounts[leaving] as number)) leaving = i;
  const missing = -(amounts[leaving] as number);
  if (missing < 1e-9) return -Infinity;
  const far = (boards + 1 - Math.min(boards, valueOf(lp))) / missing;
  const along = prices.map((price, row) => price - far * (inverse[row * rows + leaving] as number));
  return boundOfNode(lp, boards, along);
}
