import type { Random } from '#core/numerics';
import { addColumn } from './columns.ts';
import type { Column, Pool } from './columns.ts';
import { blink } from './insert.ts';
import type { Hunt } from './insert.ts';
import { draftOf, emptyLoad } from './load.ts';
import type { Load } from './load.ts';
import { recreate, ruin } from './ruin.ts';
import { useColumn } from './use-column.ts';

export interface SheetSearch {
  readonly hunt: Hunt;
  readonly random: Random;
  /** Where what is found goes. */
  readonly shelf: Pool;
  readonly prices: Float64Array;
  /** A sheet is kept when its cost exceeds the price of its parts by no more than this. */
  readonly gap: number;
  readonly steps: number;
  readonly isOver: () => boolean;
}

/**
 * Looks around one pattern for single sheets worth as much as they cost at the prices of the master, no part cut more
 * often than wanted: the pricing by programs knows no such limit. Answers how many new ones it kept.
 */
export function searchSheets(setup: SheetSearch, start: Column): number {
  const { hunt, shelf, prices, random } = setup;
  let current = emptyLoad(hunt.model);
  if (useColumn(hunt.model, current, start) === 0) return 0;
  recreate(hunt, current, start.bin.cost, prices);
  let value = priceOf(current, prices);
  let kept = 0;
  const keep = (load: Load, worth: number): void => {
    const [sheet] = load.sheets;
    if (sheet && sheet.bin.cost - worth <= setup.gap && addColumn(hunt.model, shelf, sheet)) kept++;
  };
  keep(current, value);
  for (let i = 0; i < setup.steps; i++) {
    if ((i & 15) === 0 && setup.isOver()) break;
    const draft = draftOf(current);
    blink(hunt);
    ruin(hunt, draft, 1 + random.whole(0, 3));
    recreate(hunt, draft, start.bin.cost, prices);
    hunt.untilBlink = Infinity;
    const next = priceOf(draft, prices);
    keep(draft, next);
    if (next < value - heat * start.bin.cost * random.next() ** 3) continue;
    current = draft;
    value = next;
  }
  return kept;
}

/** How much of a sheet's cost a step may lose at most. */
const heat = 0.06;

function priceOf(load: Load, prices: Float64Array): number {
  let sum = 0;
  for (const { parts } of load.sheets) for (const { kind } of parts) sum += prices[kind] as number;
  return sum;
}
