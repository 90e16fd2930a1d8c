import type { CuttingJob } from '#core/cutting';
import type { News, Turn } from '#solver/crew';

/** What a search may take, as it can be sent to a thread. */
export interface Limits {
  readonly seconds?: number;
  readonly work?: number;
  readonly seed?: number;
  /** `processor`: time counts as half of what this process computes, for measuring on a machine that others use too. */
  readonly clock?: 'wall' | 'processor';
}

/** What a thread is told: its job first, then one turn after the other. */
export type Order =
  | { readonly kind: 'cut'; readonly job: CuttingJob; readonly limits: Limits }
  | { readonly kind: 'work'; readonly turn: Turn<News> };

/** The clock of a run, milliseconds. */
export function clockOf({ clock = 'wall' }: Limits): () => number {
  if (clock === 'wall') return () => performance.now();
  return () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 2000;
  };
}
