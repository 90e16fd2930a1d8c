import { costSoFar, isProven, poolLoad } from './engine.ts';
import type { Engine } from './engine.ts';
import { aimFreely, startFreeSearch } from './free-search.ts';
import type { FreeLoad } from './free-search.ts';
import type { Load } from './load.ts';
import { packFreeLoad, packLoad, unpackFreeLoad, unpackLoad } from './pack-load.ts';
import type { PackedFreeLoad, PackedLoad } from './pack-load.ts';
import { isSettled, isStopped } from './run-engine.ts';
import { adoptLoad, isBetterLoad } from './search.ts';

/** What one run tells another of the same job: plain data. */
export interface CuttingNews {
  /** `working`: goes on when asked; `idle`: sees no way to more by itself; `out`: no time or work left; `settled`: proven. */
  readonly state: 'working' | 'idle' | 'out' | 'settled';
  readonly left: number;
  readonly cost: number;
  readonly bound: number;
  /** The best loads, with trees of cuts and without; null when they were told or heard before. */
  readonly found: { readonly load: PackedLoad; readonly free: PackedFreeLoad | null } | null;
}

/** What the other run knows of this one's best loads. */
export interface Told {
  load: Load | null;
  free: FreeLoad | null;
}

/** What a run has, its loads only where the other does not know them. */
export function tellNews(engine: Engine, told: Told): CuttingNews {
  const { search } = engine;
  const free = engine.free?.best ?? null;
  const isKnown = search.best === told.load && free === told.free;
  const news: CuttingNews = {
    state: stateOf(engine),
    left: search.best.leftCount,
    cost: costSoFar(engine),
    bound: engine.bound,
    found: isKnown ? null : { load: packLoad(search.best), free: free && packFreeLoad(free) },
  };
  told.load = search.best;
  told.free = free;
  return news;
}

function stateOf(engine: Engine): CuttingNews['state'] {
  if (isProven(engine) || isSettled(engine)) return 'settled';
  if (engine.isOver() || (engine.generation.done && engine.stepsLeft <= 0)) return 'out';
  return isStopped(engine) ? 'idle' : 'working';
}

/** Takes the higher bound and the better load of another run; goes on from there. */
export function takeNews(engine: Engine, news: CuttingNews, told: Told): void {
  const { bound } = engine;
  const cost = costSoFar(engine);
  engine.bound = Math.max(bound, news.bound);
  if (news.found) takeLoad(engine, unpackLoad(engine.model, news.found.load), told);
  if (news.found?.free) takeFreeLoad(engine, unpackFreeLoad(engine.model, news.found.free), told);
  if (costSoFar(engine) < cost) engine.idle = 0;
  if (engine.bound > bound || costSoFar(engine) < cost) engine.tell('exchange');
}

function takeLoad(engine: Engine, load: Load, told: Told): void {
  if (!isBetterLoad(load, engine.search.best)) return;
  adoptLoad(engine.search, load);
  poolLoad(engine, load);
  told.load = load;
}

function takeFreeLoad(engine: Engine, load: FreeLoad, told: Told): void {
  if (load.cost >= costSoFar(engine)) return;
  const free = (engine.free ??= startFreeSearch(engine.model, engine.random, engine.search.best));
  free.best = load;
  aimFreely(free, load);
  told.free = load;
}
