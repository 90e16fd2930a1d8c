import type { Random } from '#core/numerics';
import { swapPart } from './change-sheet.ts';
import { blink, startHunt } from './insert.ts';
import type { Hunt } from './insert.ts';
import { draftOf, dropSheet, emptyLoad, makeLoad, weighLeft } from './load.ts';
import type { Load } from './load.ts';
import type { Model } from './model.ts';
import { recreate, ruin } from './ruin.ts';
import type { Sheet } from './sheet.ts';

/** A search that can be run in portions. It looks for a load that costs less than the best so far. */
export interface Search {
  readonly hunt: Hunt;
  best: Load;
  current: Load;
  currentGrade: number;
  readonly history: Float64Array;
  /** Whether what is left over again and again weighs more. */
  readonly weighs: boolean;
  step: number;
  budget: number;
  /** Best grade since the search last began anew, and steps since. */
  lowGrade: number;
  lowLoad: Load;
  stale: number;
}

const historyLength = 300;

/** Starts from the best of several greedy loads, and one to go on from if given. */
export function startSearch(model: Model, random: Random, tries: number, start: Load | null = null): Search {
  const hunt = startHunt(model, random);
  let best = start ?? fillGreedily(hunt, Infinity);
  for (let i = start ? 0 : 1; i < tries; i++) {
    const next = fillGreedily(hunt, Infinity);
    if (isBetterLoad(next, best)) best = next;
  }
  const search: Search = {
    hunt,
    best,
    current: best,
    currentGrade: 0,
    history: new Float64Array(historyLength),
    weighs: model.kinds.reduce((sum, kind) => sum + kind.count, 0) <= mostWeighed,
    step: 0,
    budget: 0,
    lowGrade: 0,
    lowLoad: best,
    stale: 0,
  };
  aimBelow(search);
  return search;
}

export function fillGreedily(hunt: Hunt, budget: number): Load {
  const load = emptyLoad(hunt.model);
  recreate(hunt, load, budget);
  return load;
}

export function isBetterLoad(a: Load, b: Load): boolean {
  return a.leftCount < b.leftCount || (a.leftCount === b.leftCount && a.cost < b.cost);
}

/** Sets the budget one step below the best cost and takes sheets out until it holds. */
export function aimBelow(search: Search): void {
  const { model } = search.hunt;
  const step = model.costGrid > 0 ? model.costGrid : Math.max(search.best.cost, 1) * 1e-9;
  search.budget = search.best.leftCount > 0 ? Infinity : search.best.cost - step * (1 - 1e-6);
  const load = draftOf(search.best);
  while (load.cost > search.budget && load.sheets.length > 0) dropSheet(load, emptiest(load));
  recreate(search.hunt, load, search.budget);
  goOnFrom(search, load);
}

/**
 * Mends a load within the budget by a search of its own; the search at hand goes on from it only where that leaves less
 * than it has reached itself.
 */
export function tryLoad(search: Search, load: Load, isOver: () => boolean): void {
  recreate(search.hunt, load, search.budget);
  const side: Search = { ...search, history: new Float64Array(60), step: 0 };
  goOnFrom(side, load);
  if (load.leftCount === 0) side.best = load;
  else runSearch(side, mendingSteps, isOver);
  if (isBetterLoad(side.best, search.best)) adoptLoad(search, side.best);
  else if (plainGrade(side) < plainGrade(search)) goOnFrom(search, side.lowLoad);
}

/** The grade of the lowest load with all parts as heavy as they are large, so that two searches can be compared. */
function plainGrade({ hunt, lowLoad }: Search): number {
  return gradeOf(hunt, makeLoad(hunt.model, lowLoad.sheets, lowLoad.left));
}

const mendingSteps = 3000;

export function goOnFrom(search: Search, load: Load): void {
  search.current = load;
  search.currentGrade = gradeOf(search.hunt, load);
  search.history.fill(search.currentGrade);
  search.lowGrade = search.currentGrade;
  search.lowLoad = load;
  search.stale = 0;
}

/** Steps without a better grade after which a fresh load is tried: other beginnings reach other ends. */
const staleAfter = 40_000;

/** Takes a better load from outside and goes on from there. */
export function adoptLoad(search: Search, load: Load): void {
  search.best = load;
  aimBelow(search);
}

function emptiest(load: Load): number {
  let at = 0;
  let least = Infinity;
  load.sheets.forEach((sheet, i) => {
    const fill = sheet.usedArea / Math.max(sheet.bin.cost, 1e-9);
    if (fill < least) {
      least = fill;
      at = i;
    }
  });
  return at;
}

/** What is left out, plus the worth lost in the sheets; less is better. */
export function gradeOf(hunt: Hunt, load: Load): number {
  const { wholeWorth } = hunt;
  let grade = leftGrade(hunt, load);
  for (let i = 0; i < load.sheets.length; i++) {
    const sheet = load.sheets[i] as Sheet;
    grade += (wholeWorth[sheet.bin.index] as number) - sheet.worth;
  }
  return grade;
}

function leftGrade({ maxArea }: Hunt, load: Load): number {
  return load.leftArea * Math.sqrt(Math.sqrt(maxArea)) * leftWeight;
}

const leftWeight = 1.5;

/** How often a step begins with one part in the place of another. */
const swapShare = 0.3;

/** Runs some steps; answers true as soon as a cheaper load is found. `isOver` is asked now and then. */
export function runSearch(search: Search, steps: number, isOver: () => boolean): boolean {
  for (let i = 0; i < steps; i++) {
    if ((i & 15) === 0 && isOver()) return false;
    if (stepOnce(search)) return true;
  }
  return false;
}

export function stepOnce(search: Search): boolean {
  const { hunt, history } = search;
  const draft = draftOf(search.current);
  blink(hunt);
  if (hunt.random.next() >= swapShare || !swapPart(hunt, draft)) {
    ruin(hunt, draft, 1 + hunt.random.whole(0, 11));
  }
  recreate(hunt, draft, search.budget);
  hunt.untilBlink = Infinity;
  const at = search.step++ % history.length;
  if (draft.leftCount === 0 || draft.leftCount < search.best.leftCount) {
    if (isBetterLoad(draft, search.best)) {
      search.best = draft;
      aimBelow(search);
      return true;
    }
  }
  const grade = gradeOf(hunt, draft);
  if (grade <= search.currentGrade || grade <= (history[at] as number)) {
    search.current = draft;
    search.currentGrade = grade;
  }
  history[at] = Math.min(history[at] as number, search.currentGrade);
  if (search.weighs && search.step % weighEvery === 0) weighStubborn(search);
  search.stale++;
  if (search.currentGrade < search.lowGrade - 1e-9 * search.lowGrade) {
    search.lowGrade = search.currentGrade;
    search.lowLoad = search.current;
    search.stale = 0;
  } else if (search.stale > staleAfter) goOnFrom(search, fillGreedily(hunt, search.budget));
  return false;
}

/** Steps after which what is left over weighs more. */
const weighEvery = 1000;

/** Among more parts than this other things than stubborn parts decide: 300 took a sheet more with weights (D31). */
const mostWeighed = 150;

/** Makes the parts left heavier, and all grades with them: what is left over again and again gets its place in the end. */
function weighStubborn(search: Search): void {
  const { hunt, current, history } = search;
  const heavier = weighLeft(hunt.model, current);
  const more = leftGrade(hunt, heavier) - leftGrade(hunt, current);
  search.current = heavier;
  search.currentGrade += more;
  search.lowGrade += more;
  for (let i = 0; i < history.length; i++) history[i] = (history[i] as number) + more;
}
