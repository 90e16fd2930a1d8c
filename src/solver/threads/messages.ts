import type { CuttingJob } from '#core/cutting';
import type { NestJob } from '#core/nesting';
import type { News, Turn } from '#solver/crew';

/** What a search may take, as it can be sent to a thread. */
export interface Limits {
  readonly seconds?: number;
  readonly work?: number;
  readonly seed?: number;
  /** `processor`: what the thread itself has computed counts, for measuring on a machine that others use too. */
  readonly clock?: 'wall' | 'processor';
}

/** What a thread is told: its job first, then one turn after the other. */
export type Order =
  | { readonly kind: 'cut'; readonly job: CuttingJob; readonly limits: Limits }
  | { readonly kind: 'nest'; readonly job: NestJob; readonly limits: Limits }
  | { readonly kind: 'work'; readonly turn: Turn<News> };
