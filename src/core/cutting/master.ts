import type { LinearRow, LinearSolution, SolveLp } from '#core/numerics';
import type { Column } from './columns.ts';
import type { Model } from './model.ts';

/** The relaxed master program: how much of each pattern, and what one more of each part would cost. */
export interface MasterSolution {
  readonly value: number;
  readonly amounts: Float64Array;
  readonly prices: Float64Array;
  /** Parts the patterns cannot yet supply. */
  readonly missing: number;
}

/** Solves the master for a demand. A part that no pattern holds may be bought at a price no plan would pay. */
export function solveMaster(
  model: Model,
  columns: readonly Column[],
  demand: ArrayLike<number>,
  solveLp: SolveLp,
): MasterSolution | null {
  const penalty = penaltyOf(model);
  const { rows, kinds } = makeRows(model, columns, demand);
  const objective: [string, number][] = columns.map((column, i) => [`c${i}`, column.bin.cost]);
  for (const kind of kinds) objective.push([`s${kind}`, penalty]);
  const solution = solveLp({ sense: 'minimise', objective, rows });
  return solution.status === 'optimal' ? readMaster(model, columns.length, kinds, solution) : null;
}

/** Dearer than any sheet, so that a part is bought only when no pattern can be cut. */
export function penaltyOf(model: Model): number {
  return 10 * Math.max(1, ...model.bins.map((bin) => bin.cost));
}

function makeRows(model: Model, columns: readonly Column[], demand: ArrayLike<number>) {
  const terms: [string, number][][] = model.kinds.map(() => []);
  columns.forEach((column, i) => {
    column.kinds.forEach((kind, k) => terms[kind]?.push([`c${i}`, column.counts[k] as number]));
  });
  const kinds = model.kinds.map((kind) => kind.index).filter((index) => (demand[index] ?? 0) > 0);
  const rows: LinearRow[] = kinds.map((kind) => ({
    name: `d${kind}`,
    terms: [...(terms[kind] ?? []), [`s${kind}`, 1] as const],
    lower: demand[kind] as number,
  }));
  for (const bin of model.bins) {
    if (bin.count === Infinity) continue;
    const uses = columns.flatMap((column, i) =>
      column.bin.index === bin.index ? [[`c${i}`, 1] as const] : [],
    );
    if (uses.length > 0) rows.push({ name: `b${bin.index}`, terms: uses, upper: bin.count });
  }
  return { rows, kinds };
}

function readMaster(
  model: Model,
  n: number,
  kinds: readonly number[],
  solution: LinearSolution,
): MasterSolution {
  const prices = new Float64Array(model.kinds.length);
  let missing = 0;
  for (const kind of kinds) {
    prices[kind] = Math.max(0, solution.duals[`d${kind}`] ?? 0);
    missing += solution.variables[`s${kind}`] ?? 0;
  }
  const amounts = Float64Array.from({ length: n }, (_, i) => Math.max(0, solution.variables[`c${i}`] ?? 0));
  return { value: solution.value, amounts, prices, missing };
}

/**
 * What every plan must cost at least, by any prices of the parts and a limit on the value of a pattern at them
 * (Farley 1990, with stock counts by Lagrangian duality; from memory).
 */
export function dualBound(
  model: Model,
  demand: ArrayLike<number>,
  prices: Float64Array,
  most: Float64Array,
): number {
  const worth = model.kinds.reduce(
    (sum, kind) => sum + (prices[kind.index] as number) * (demand[kind.index] ?? 0),
    0,
  );
  const free = model.bins.filter((bin) => bin.count === Infinity);
  const scales = [free, model.bins].map((bins) =>
    Math.max(1, ...bins.map((bin) => ratio(most[bin.index] as number, bin.cost))),
  );
  return Math.max(0, ...scales.map((scale) => boundAt(model, worth / scale, most, scale)));
}

function ratio(value: number, cost: number): number {
  return cost > 0 ? value / cost : value > 0 ? Infinity : 1;
}

function boundAt(model: Model, worth: number, most: Float64Array, scale: number): number {
  if (scale === Infinity) return 0;
  let bound = worth;
  for (const bin of model.bins) {
    const excess = (most[bin.index] as number) / scale - bin.cost;
    if (bin.count < Infinity && excess > 0) bound -= bin.count * excess;
  }
  return bound;
}
