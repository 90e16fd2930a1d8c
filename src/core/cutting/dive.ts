import type { Random } from '#core/numerics';
import type { Column } from './columns.ts';
import { generateOnce, startGeneration } from './generate.ts';
import type { Generation } from './generate.ts';
import { emptyLoad, makeLoad } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { runSearch, startSearch } from './search.ts';
import { fitsTimes, useColumn } from './use-column.ts';

/** A dive is over the job once: fixes what the master is sure of, searches for the rest. */
export interface Dive {
  readonly generation: Generation;
  readonly random: Random;
  readonly isOver: () => boolean;
  /** Leave so many parts to the search. */
  readonly restParts: number;
  readonly restSteps: number;
  /** Rounds of generation after each fixing. */
  readonly rounds: number;
  /** An amount so little below a whole number is fixed at it. */
  readonly boldness: number;
}

/**
 * A whole load made from the patterns: the master's amounts are rounded down and fixed, then the largest rest up, one
 * pattern at a time, the master solved anew in between; the last few parts are laid by the search.
 */
export function dive(setup: Dive): Load | null {
  const { generation } = setup;
  const { model } = generation;
  const load = emptyLoad(model);
  while (load.leftCount > setup.restParts && !setup.isOver()) {
    const amounts = relax(setup, load);
    if (!amounts || fixColumns(setup, load, amounts) === 0) break;
  }
  return layRest({ ...setup, goal: generation.bound }, load);
}

/** Amounts of the patterns for what is left, after a few rounds of new patterns for just that. */
function relax(setup: Dive, load: Load): Float64Array | null {
  const { model, pool, solveLp, pricer } = setup.generation;
  const rest = startGeneration(restModel(model, load), pool, solveLp, pricer);
  for (let i = 0; i < setup.rounds && !rest.done && !setup.isOver(); i++) generateOnce(rest);
  return rest.last?.amounts ?? null;
}

/** The job that remains: fewer parts, less stock. */
export function restModel(model: Model, load: Load): Model {
  return {
    ...model,
    kinds: model.kinds.map((kind) => ({ ...kind, count: load.left[kind.index] as number })),
    bins: model.bins.map((bin) => ({ ...bin, count: bin.count - (load.used[bin.index] as number) })),
  };
}

/** Fixes all whole amounts and those nearly whole; with none, the pattern whose fraction is largest. Answers how many sheets. */
function fixColumns(setup: Dive, load: Load, amounts: Float64Array): number {
  const { model, pool } = setup.generation;
  const { columns } = pool;
  let fixed = 0;
  let best = -1;
  let most = 1e-6;
  amounts.forEach((amount, i) => {
    const column = columns[i] as Column;
    const whole = Math.min(Math.floor(amount + setup.boldness), fitsTimes(column, load));
    for (let t = 0; t < whole; t++) fixed += useColumn(model, load, column);
    if (amount > most) [best, most] = [i, amount];
  });
  const column = columns[best];
  return fixed > 0 || !column ? fixed : useColumn(model, load, column);
}

/** What laying the rest of a load by the search needs. */
export interface RestSearch extends Pick<Dive, 'generation' | 'random' | 'isOver' | 'restSteps'> {
  /** A cost of all at which it may stop. */
  readonly goal: number;
}

/** Lets the search lay what is left, and joins both. */
export function layRest(setup: RestSearch, load: Load): Load | null {
  if (load.leftCount === 0) return load;
  const model = restModel(setup.generation.model, load);
  const search = startSearch(model, setup.random, 3);
  const goal = setup.goal - load.cost;
  for (let i = 0; i < setup.restSteps && search.best.cost > goal + 1e-9 && !setup.isOver(); i += 500) {
    runSearch(search, 500, setup.isOver);
  }
  return joinLoads(setup.generation.model, load, search.best);
}

export function joinLoads(model: Model, a: Load, b: Load): Load {
  const sheets = [...a.sheets, ...b.sheets].map((sheet) => ({
    ...sheet,
    owner: null,
    bin: model.bins[sheet.bin.index] as typeof sheet.bin,
  }));
  return makeLoad(model, sheets, b.left.slice());
}
