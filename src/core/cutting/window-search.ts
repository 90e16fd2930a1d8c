import { startHunt } from './insert.ts';
import { makeLoad } from './load.ts';
import type { Load } from './load.ts';
import type { Kind, Model } from './model.ts';
import { aimBelow, goOnFrom, isBetterLoad, stepOnce } from './search.ts';
import type { Search } from './search.ts';
import { cloneSheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';

/** Steps in one window: enough to settle a handful of sheets. */
const windowSteps = 150;
/** Left parts that a window is offered at most. */
const mostOffered = 24;

/**
 * Searches a large load a few sheets at a time, so that a step costs no more than in a small job; answers true as soon
 * as a cheaper load is found.
 */
export function searchWindows(search: Search, steps: number, isOver: () => boolean): boolean {
  for (let done = 0; done < steps && !isOver(); done += windowSteps) {
    search.step += Math.min(windowSteps, steps - done);
    const load = searchWindow(search, Math.min(windowSteps, steps - done), isOver);
    if (!load) continue;
    if (load.leftCount === 0 && isBetterLoad(load, search.best)) {
      search.best = load;
      aimBelow(search);
      return true;
    }
    search.current = load;
  }
  return false;
}

/** A few sheets and some left parts as a job of their own, with kinds counted anew. */
interface Window {
  readonly places: readonly number[];
  /** The job's index of each kind of the window. */
  readonly kinds: readonly number[];
  readonly model: Model;
  readonly load: Load;
}

/** The whole load after one window was searched; null when nothing got better there. */
function searchWindow(search: Search, steps: number, isOver: () => boolean): Load | null {
  const window = openWindow(search);
  const { hunt } = search;
  const local: Search = {
    ...search,
    hunt: {
      ...startHunt(window.model, hunt.random),
      minLength: hunt.minLength,
      minWidth: hunt.minWidth,
    },
    best: { ...window.load, leftCount: 0, cost: -Infinity },
    history: new Float64Array(60),
    step: 0,
    budget: window.load.cost,
  };
  goOnFrom(local, window.load);
  const before = local.lowGrade;
  for (let i = 0; i < steps && !((i & 15) === 0 && isOver()); i++) stepOnce(local);
  return local.lowGrade < before ? closeWindow(search, window, local.lowLoad) : null;
}

function openWindow(search: Search): Window {
  const { hunt, current } = search;
  const { model } = hunt;
  const places = drawPlaces(search);
  const kinds: number[] = [];
  const local = new Map<number, number>();
  const counts: number[] = [];
  const note = (kind: number): number => {
    const known = local.get(kind) ?? kinds.push(kind) - 1;
    local.set(kind, known);
    counts[known] = (counts[known] ?? 0) + 1;
    return known;
  };
  const sheets = places.map((place) => cloneSheet(current.sheets[place] as Sheet, null));
  for (const { parts } of sheets) for (const node of parts) node.kind = note(node.kind);
  const offered = drawLeft(search).map(note);
  const left = new Int32Array(kinds.length);
  for (const kind of offered) left[kind] = (left[kind] as number) + 1;
  const small: Model = {
    ...model,
    kinds: kinds.map((kind, index) => ({ ...(model.kinds[kind] as Kind), index, count: counts[index] ?? 0 })),
    bins: model.bins.map((bin) => ({
      ...bin,
      count: sheets.filter((each) => each.bin.index === bin.index).length,
    })),
  };
  return { places, kinds, model: small, load: makeLoad(small, sheets, left) };
}

/** Three to five sheets by lot. */
function drawPlaces({ hunt, current }: Search): readonly number[] {
  const count = Math.min(current.sheets.length, 3 + hunt.random.whole(0, 2));
  const places = new Set<number>();
  while (places.size < count) places.add(hunt.random.whole(0, current.sheets.length - 1));
  return [...places];
}

/** Kinds of left parts by lot, one entry a part. */
function drawLeft({ hunt, current }: Search): readonly number[] {
  const all: number[] = [];
  current.left.forEach((count, kind) => {
    for (let i = 0; i < count; i++) all.push(kind);
  });
  for (let i = 0; i < Math.min(mostOffered, all.length); i++) {
    const j = hunt.random.whole(i, all.length - 1);
    [all[i], all[j]] = [all[j] as number, all[i] as number];
  }
  return all.slice(0, mostOffered);
}

/** Puts what became of a window back into the whole. */
function closeWindow({ hunt, current }: Search, window: Window, local: Load): Load {
  const { bins } = hunt.model;
  const taken = new Set(window.places);
  const kept = current.sheets.filter((_, place) => !taken.has(place));
  const back = local.sheets.map((sheet) => {
    for (const node of sheet.parts) node.kind = window.kinds[node.kind] as number;
    return { ...sheet, owner: null, refused: [], bin: bins[sheet.bin.index] as Sheet['bin'] };
  });
  const left = current.left.slice();
  window.load.left.forEach((offered, kind) => {
    const at = window.kinds[kind] as number;
    left[at] = (left[at] as number) - offered + (local.left[kind] as number);
  });
  return makeLoad(hunt.model, [...kept, ...back], left);
}
