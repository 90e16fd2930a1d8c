import type { LinearProgram, LinearRow, SolveLp } from '#core/numerics';
import type { Column } from './columns.ts';
import { emptyLoad } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { useColumn } from './use-column.ts';

export interface WholeMaster {
  readonly model: Model;
  readonly columns: readonly Column[];
  /** What one more of each part costs in the relaxed master. */
  readonly prices: Float64Array;
  /** What the load may cost at most. */
  readonly budget: number;
  readonly solveLp: SolveLp;
  readonly seconds: number;
}

/**
 * Whole amounts of known patterns within a budget that leave as little area as can be uncovered: the restricted integer
 * master, with room for the search to mend. Null when the time was not enough for any.
 */
export function solveWholeMaster(master: WholeMaster): Load | null {
  const { model, seconds } = master;
  const columns = usableColumns(master);
  if (columns.length === 0 || seconds < leastSeconds) return null;
  const solution = master.solveLp(wholeProgram(master, columns), seconds);
  if (solution.status !== 'optimal' && solution.status !== 'feasible') return null;
  const load = emptyLoad(model);
  columns.forEach((column, i) => {
    const times = Math.round(solution.variables[`c${i}`] ?? 0);
    for (let t = 0; t < times; t++) useColumn(model, load, column);
  });
  return load.cost <= master.budget + 1e-9 * Math.max(1, master.budget) ? load : null;
}

/** Less time than this is not worth the loading. */
const leastSeconds = 0.05;
/** More columns than this are more than the branching gets through. */
const mostColumns = 1200;

/**
 * A pattern whose reduced cost exceeds what the budget leaves above the relaxation is in no plan within the budget; of
 * the others the cheapest at those prices.
 */
function usableColumns({ model, columns, prices, budget }: WholeMaster): readonly Column[] {
  const relaxed = model.kinds.reduce((sum, kind) => sum + (prices[kind.index] as number) * kind.count, 0);
  const gap = Math.max(0, budget - relaxed) + 1e-6 * Math.max(1, budget);
  return columns
    .map((column) => ({ column, reduced: reducedCost(column, prices) }))
    .filter(({ reduced }) => reduced <= gap)
    .sort((a, b) => a.reduced - b.reduced)
    .slice(0, mostColumns)
    .map(({ column }) => column);
}

/** What a pattern costs beyond the price of its parts. */
export function reducedCost({ bin, kinds, counts }: Column, prices: Float64Array): number {
  return kinds.reduce((cost, kind, k) => cost - (prices[kind] as number) * (counts[k] as number), bin.cost);
}

function wholeProgram({ model, budget }: WholeMaster, columns: readonly Column[]): LinearProgram {
  const names = columns.map((_, i) => `c${i}`);
  const terms: [string, number][][] = model.kinds.map(() => []);
  columns.forEach(({ kinds, counts }, i) => {
    kinds.forEach((kind, k) => terms[kind]?.push([`c${i}`, counts[k] as number]));
  });
  const wanted = model.kinds.filter((kind) => kind.count > 0);
  const whole = Math.max(...model.bins.map((bin) => bin.area));
  const rows: LinearRow[] = wanted.map(({ index, count }) => ({
    name: `d${index}`,
    terms: [...(terms[index] ?? []), [`s${index}`, 1] as const],
    lower: count,
  }));
  rows.push({ name: 'cost', terms: columns.map(({ bin }, i) => [`c${i}`, bin.cost]), upper: budget });
  for (const bin of model.bins) {
    const uses = columns.flatMap((column, i) =>
      column.bin.index === bin.index ? [[`c${i}`, 1] as const] : [],
    );
    if (bin.count < Infinity && uses.length > 0) {
      rows.push({ name: `b${bin.index}`, terms: uses, upper: bin.count });
    }
  }
  return {
    sense: 'minimise',
    objective: wanted.map(({ index, area }) => [`s${index}`, area / whole]),
    rows,
    integers: names,
  };
}
