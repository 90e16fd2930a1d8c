import { blink } from './insert.ts';
import { draftOf } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { recreate, ruin } from './ruin.ts';
import type { Search } from './search.ts';
import { across } from './direction.ts';
import { isFree } from './tree.ts';
import type { Node } from './tree.ts';
import type { PlanAim } from './types.ts';

/**
 * Leftovers first: the others only tell plans apart whose leftovers are much alike. A whole sheet left over is worth a
 * hundred settings of the fence.
 */
export const usualAim: Required<PlanAim> = { leftovers: 1, settings: 0.01, cuts: 0.001, turns: 0.001 };

/** Goes on at the same cost for what else makes a plan good. Only for loads with all parts placed. */
export function polishSearch(search: Search, aim: PlanAim, steps: number, isOver: () => boolean): void {
  const { hunt } = search;
  const full = { ...usualAim, ...aim };
  let current = search.best;
  let merit = meritOf(hunt.model, current, full);
  let best = merit;
  const heat = 0.02 * Math.max(Math.abs(best), full.settings);
  for (let i = 0; i < steps && !((i & 15) === 0 && isOver()); i++) {
    const draft = draftOf(current);
    blink(hunt);
    ruin(hunt, draft, 1 + hunt.random.whole(0, 7));
    recreate(hunt, draft, search.best.cost);
    hunt.untilBlink = Infinity;
    if (draft.leftCount > 0 || draft.cost > search.best.cost) continue;
    const next = meritOf(hunt.model, draft, full);
    if (next < merit - heat * hunt.random.next() ** 4) continue;
    current = draft;
    merit = next;
    if (next <= best + 1e-12) continue;
    search.best = draft;
    best = next;
  }
}

/**
 * Squares of the leftovers worth keeping, as shares of the largest sheet, less what settings, cuts and turns weigh: one
 * large leftover is worth more than two halves of it, and as much from one sheet as from another.
 */
function meritOf(model: Model, load: Load, aim: Required<PlanAim>): number {
  const saw: Saw = { fences: new Set(), cuts: 0, turns: 0 };
  const whole = Math.max(...model.bins.map((bin) => bin.area));
  let leftovers = 0;
  for (const { bin, free, roots } of load.sheets) {
    for (const { length, width } of free) {
      const kept = length - model.kerfX >= model.keepLength && width - model.kerfY >= model.keepWidth;
      if (kept) leftovers += ((length * width) / whole) ** 2;
    }
    for (const root of roots) countCuts(saw, root, bin.area);
  }
  const { fences, cuts, turns } = saw;
  return aim.leftovers * leftovers - aim.settings * fences.size - aim.cuts * cuts - aim.turns * turns;
}

interface Saw {
  /** Settings of the fence: a width to rip as it is, a length to crosscut as what is not one. */
  readonly fences: Set<number>;
  cuts: number;
  /** Times that a piece is turned for its next cut, each by its share of a sheet. */
  turns: number;
}

function countCuts(saw: Saw, node: Node, whole: number): void {
  if (node.direction === 0) return;
  if (node.parent) saw.turns += (node.length * node.width) / whole;
  saw.cuts += node.kids.length - 1;
  const lengthwise = node.direction === across;
  // what stays after the last cut needs no setting: what is free, or the least
  let rest = Infinity;
  for (const kid of node.kids) rest = Math.min(rest, isFree(kid) ? 0 : lengthwise ? kid.length : kid.width);
  for (const kid of node.kids) {
    const size = lengthwise ? kid.length : kid.width;
    if (!isFree(kid) && size > rest) saw.fences.add(lengthwise ? -size : size);
    countCuts(saw, kid, whole);
  }
}
