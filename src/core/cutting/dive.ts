import type { Random } from '#core/numerics';
import type { Column } from './columns.ts';

import { generateOnce, startGeneration } from './generate.ts';
import type { Generation } from './generate.ts';
import { startHunt, worthOf } from './insert.ts';
import { emptyLoad } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { runSearch, startSearch } from './search.ts';
import { listNodes, tidySheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { cloneNode, setFree } from './tree.ts';

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
  return finish(setup, load);
}

/** Amounts of the patterns for what is left, after a few rounds of new patterns for just that. */
function relax(setup: Dive, load: Load): Float64Array | null {
  const { model, pool, solveLp, pricer } = setup.generation;
  const rest = startGeneration(restModel(model, load), pool, solveLp, pricer);
  for (let i = 0; i < setup.rounds && !rest.done && !setup.isOver(); i++) generateOnce(rest);
  return rest.last?.amounts ?? null;
}

/** The job that remains: fewer parts, less stock. */
function restModel(model: Model, load: Load): Model {
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

/** How often a pattern can be cut without cutting a part too often or lacking stock. */
function fitsTimes(column: Column, load: Load): number {
  let times = column.bin.count - (load.used[column.bin.index] as number);
  column.kinds.forEach((kind, k) => {
    times = Math.min(times, Math.floor((load.left[kind] as number) / (column.counts[k] as number)));
  });
  return times;
}

/** Lays one sheet by a pattern; parts of which enough are cut stay out. Answers 1, or 0 when nothing came of it. */
function useColumn(model: Model, load: Load, column: Column): number {
  if ((load.used[column.bin.index] as number) >= column.bin.count) return 0;
  const sheet: Sheet = {
    bin: column.bin,
    way: column.way,
    roots: column.roots.map((root) => cloneNode(root, null)),
    free: [],
    parts: [],
    worth: 0,
    usedArea: 0,
  };
  const hunt = startHunt(model, neverDrawn);
  const worth = (node: { length: number; width: number }) => worthOf(hunt, node.length, node.width);
  listNodes(sheet, worth);
  const out = sheet.parts.filter((node) => !takePart(load, node.kind));
  if (out.length === sheet.parts.length) return 0;
  if (out.length > 0) {
    out.forEach(setFree);
    const kept = tidySheet(model, sheet);
    listNodes(sheet, worth);
    if (!kept) return giveBack(load, sheet);
  }
  load.sheets.push(sheet);
  load.own.push(true);
  load.used[column.bin.index] = (load.used[column.bin.index] as number) + 1;
  load.cost += column.bin.cost;
  return 1;
}

const neverDrawn: Random = { next: () => 0, whole: (lo) => lo, normal: () => 0 };

function takePart(load: Load, kind: number): boolean {
  if ((load.left[kind] as number) === 0) return false;
  load.left[kind] = (load.left[kind] as number) - 1;
  load.leftCount--;
  return true;
}

function giveBack(load: Load, sheet: Sheet): 0 {
  for (const node of sheet.parts) {
    load.left[node.kind] = (load.left[node.kind] as number) + 1;
    load.leftCount++;
  }
  return 0;
}

/** Lets the search lay what is left, and joins both. */
function finish(setup: Dive, load: Load): Load | null {
  if (load.leftCount === 0) return load;
  const model = restModel(setup.generation.model, load);
  const search = startSearch(model, setup.random, 3);
  const goal = setup.generation.bound - load.cost;
  for (let i = 0; i < setup.restSteps && search.best.cost > goal + 1e-9 && !setup.isOver(); i += 500) {
    runSearch(search, 500, setup.isOver);
  }
  return joinLoads(setup.generation.model, load, search.best);
}

function joinLoads(model: Model, a: Load, b: Load): Load {
  const sheets = [...a.sheets, ...b.sheets];
  const used = a.used.slice();
  b.used.forEach((count, i) => (used[i] = (used[i] as number) + count));
  return {
    sheets: sheets.map((sheet) => ({ ...sheet, bin: model.bins[sheet.bin.index] as typeof sheet.bin })),
    own: sheets.map(() => false),
    left: b.left.slice(),
    leftCount: b.leftCount,
    used,
    cost: sheets.reduce((sum, sheet) => sum + sheet.bin.cost, 0),
  };
}
