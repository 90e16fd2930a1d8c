import type { Random, SolveLp } from '#core/numerics';
import { addColumn, keepColumns } from './columns.ts';
import type { Column, Pool } from './columns.ts';
import { startHunt } from './insert.ts';
import type { Hunt } from './insert.ts';
import { reducedCost, solveWholeMaster } from './integer-master.ts';
import { restModel } from './dive.ts';
import { emptyLoad } from './load.ts';
import type { Load } from './load.ts';
import { solveMaster } from './master.ts';
import type { MasterSolution } from './master.ts';
import type { Model } from './model.ts';
import { searchSheets } from './sheet-search.ts';
import { fitsTimes, useColumn } from './use-column.ts';

/** Gathers sheets from every source and looks for a whole load among them. */
export interface Combiner {
  readonly model: Model;
  readonly random: Random;
  readonly solveLp: SolveLp;
  /** Sheets full enough to be worth combining, no part in them more often than wanted. */
  readonly shelf: Pool;
  readonly isOver: () => boolean;
  /** Patterns of the generation already looked around. */
  seen: number;
  rounds: number;
  /** Seconds it took so far, by the clock of the run. */
  spent: number;
}

/** Starts with an empty shelf. */
export function startCombiner(setup: Omit<Combiner, 'seen' | 'rounds' | 'spent'>): Combiner {
  return { ...setup, seen: 0, rounds: 0, spent: 0 };
}

/** Keeps the sheets of a load that are full enough for a plan at the bound to hold them. */
export function shelve({ model, shelf }: Combiner, load: Load, bound: number): void {
  if (shelf.columns.length > mostShelved) return;
  const area = model.kinds.reduce((sum, kind) => sum + kind.area * kind.count, 0);
  const rate = bound > 0 ? area / bound : 0;
  for (const sheet of load.sheets) {
    if (sheet.usedArea >= shelfFill * rate * sheet.bin.cost) addColumn(model, shelf, sheet);
  }
}

/** Sheets emptier than this share of what a plan at the bound has on average are rarely in one. */
const shelfFill = 0.9;
const mostShelved = 10_000;
/** Parts on all of them: a sheet of many parts takes more room. */
const mostPartsShelved = 80_000;

/** Takes sheets off a shelf that is full, the dearest at the prices of its master first. */
export function clearShelf(shelf: Pool, prices: Float64Array): void {
  const parts = ({ counts }: Column) => counts.reduce((sum, count) => sum + count, 0);
  const all = shelf.columns.reduce((sum, column) => sum + parts(column), 0);
  const full = Math.max(shelf.columns.length / mostShelved, all / mostPartsShelved);
  if (full <= 1) return;
  const reduced = new Map(shelf.columns.map((column) => [column, reducedCost(column, prices)]));
  const sorted = [...reduced.values()].sort((a, b) => a - b);
  const limit = sorted[Math.floor((0.75 * sorted.length) / full)] as number;
  keepColumns(shelf, (column) => (reduced.get(column) as number) <= limit);
}

/** Up to so many columns the relaxed master is solved in hundredths of a second. */
const mostRelaxed = 800;

/**
 * Some rounds of sheet search at the prices of the shelf's own master, then the integer master within the budget. A
 * load within it that may leave some parts over, or null.
 */
export function combine(
  combiner: Combiner,
  pool: Pool,
  goal: { readonly budget: number; readonly seconds: number },
): Load | null {
  combiner.rounds++;
  takeOver(combiner, pool);
  const { model, shelf, solveLp } = combiner;
  const start = shelf.columns.slice(-mostRelaxed);
  const relaxed = relaxProperly(combiner, { model, columns: start, budget: goal.budget, rounds: 6 });
  if (!relaxed || combiner.isOver()) return null;
  const { columns, master } = relaxed;
  clearShelf(shelf, master.prices);
  // the integer master ends by the clock: a run that must not ask it dives only
  const dives = combiner.rounds % 3 !== 0 || goal.seconds === 0;
  if (dives) return diveProperly(combiner, relaxed, goal.budget);
  return solveWholeMaster({ model, columns, prices: master.prices, solveLp, ...goal });
}

interface Relaxed {
  readonly columns: readonly Column[];
  readonly master: MasterSolution;
}

/** Solves the master over sheets without surplus, looks for more at its prices, and so on. */
function relaxProperly(
  combiner: Combiner,
  job: {
    readonly model: Model;
    readonly columns: readonly Column[];
    readonly budget: number;
    readonly rounds: number;
  },
): Relaxed | null {
  const { model, budget, rounds } = job;
  const { shelf, solveLp } = combiner;
  const demand = model.kinds.map((kind) => kind.count);
  const hunt = startHunt(model, combiner.random);
  let { columns } = job;
  if (columns.length === 0) return null;
  let master = solveMaster(model, columns, demand, solveLp);
  for (let round = 0; master && round < rounds && !combiner.isOver(); round++) {
    const from = shelf.columns.length;
    gather(combiner, hunt, { columns, master }, Math.max(0, budget - master.value));
    if (shelf.columns.length === from) break;
    columns = cheapest([...columns, ...shelf.columns.slice(from)], master.prices);
    master = solveMaster(model, columns, demand, solveLp);
  }
  return master && { columns, master };
}

/** Fixes the sheets the relaxed master is surest of one by one, with new sheets for the rest in between. */
function diveProperly(combiner: Combiner, start: Relaxed, budget: number): Load | null {
  const { model, random, isOver } = combiner;
  const load = emptyLoad(model);
  let relaxed: Relaxed | null = start;
  while (relaxed && load.leftCount > 0 && !isOver()) {
    const column = surest(relaxed, random);
    if (!column || load.cost + column.bin.cost > budget + 1e-9 * Math.max(1, budget)) break;
    if (useColumn(model, load, column) === 0) break;
    const fitting = combiner.shelf.columns.filter((each) => fitsTimes(each, load) > 0);
    const rest = restModel(model, load);
    const known = fitting.length > 0 ? fitting : combiner.shelf.columns.slice(0, 20);
    const columns = cheapest(known, relaxed.master.prices);
    relaxed = relaxProperly(combiner, { model: rest, columns, budget: budget - load.cost, rounds: 2 });
  }
  return load;
}

/** The column with the largest amount, now and then another: dives shall differ. */
function surest({ columns, master }: Relaxed, random: Random): Column | undefined {
  let best = -1;
  let most = 1e-6;
  master.amounts.forEach((amount, i) => {
    const chance = amount * (1 - 0.4 * random.next());
    if (chance > most) [best, most] = [i, chance];
  });
  return columns[best];
}

/** Brings the patterns of the generation that cut no part too often to the shelf. */
function takeOver(combiner: Combiner, pool: Pool): void {
  const { model, shelf } = combiner;
  for (; combiner.seen < pool.columns.length; combiner.seen++) {
    const column = pool.columns[combiner.seen] as Column;
    const proper = column.kinds.every((kind, k) => (column.counts[k] as number) <= countOf(model, kind));
    if (proper) addColumn(model, shelf, column);
  }
}

function countOf(model: Model, kind: number): number {
  return model.kinds[kind]?.count ?? 0;
}

/** Looks around some of the patterns that the relaxed master uses. */
function gather(combiner: Combiner, hunt: Hunt, { columns, master }: Relaxed, gap: number): void {
  const { random, shelf, isOver } = combiner;
  const { prices, amounts } = master;
  const used = columns.filter((_, i) => (amounts[i] as number) > 1e-6);
  const scarce = master.missing > 1e-6 || columns.length < 100;
  for (let i = 0; i < 8 && !isOver(); i++) {
    const from = used.length === 0 || (scarce && i % 2 === 0) ? shelf.columns : used;
    const start = from[random.whole(0, from.length - 1)];
    if (!start) return;
    searchSheets({ hunt, random, shelf, prices, gap, steps: 150, isOver }, start);
  }
}

function cheapest(columns: readonly Column[], prices: Float64Array): readonly Column[] {
  if (columns.length <= mostRelaxed) return columns;
  return columns
    .map((column) => ({ column, reduced: reducedCost(column, prices) }))
    .sort((a, b) => a.reduced - b.reduced)
    .slice(0, mostRelaxed)
    .map(({ column }) => column);
}
