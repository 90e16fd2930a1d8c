import { makeLocalHand, runCrew } from '#solver/crew';
import type { Mate, News, Turn } from '#solver/crew';
import type { Limits } from './messages.ts';

/** How many threads a search may use, and whom it tells. */
export interface Wish<Progress> extends Limits {
  readonly workers: 1 | 2;
  readonly onProgress?: (progress: Progress) => void;
  /** Asked between turns: true ends a search by the clock with the best plan so far. */
  readonly isStopped?: () => boolean;
}

/** Usual seconds of a search. */
const usualSeconds = 10;

interface Together<N extends News, Plan> {
  readonly wish: Wish<never>;
  readonly clock: () => number;
  readonly startRun: (limits: Limits) => { work: (turn: Turn<N>) => N; finish: () => Plan };
  readonly callMate: (limits: Limits) => Mate<N>;
}

/** Runs a job here and, where that takes longer than a moment, in a second thread beside it. */
export function runTogether<N extends News, Plan>(together: Together<N, Plan>): Promise<Plan> {
  const { wish, clock, startRun, callMate } = together;
  const start = clock();
  const limits: Limits = { work: wish.work, seed: wish.seed, clock: wish.clock };
  const seconds = wish.seconds ?? (wish.work === undefined ? usualSeconds : undefined);
  const left = (): Limits =>
    seconds === undefined
      ? limits
      : { ...limits, seconds: Math.max(0.05, seconds - (clock() - start) / 1000) };
  return runCrew<N, Plan>({
    lead: makeLocalHand(startRun(left())),
    callMate: wish.workers === 1 ? null : () => callMate(left()),
    work: wish.work ?? null,
  });
}

/** A clock that leaps beyond all time asked for once the search is to stop. */
export function stoppable(clock: () => number, isStopped: (() => boolean) | undefined): () => number {
  return isStopped ? () => clock() + (isStopped() ? leap : 0) : clock;
}

/** Milliseconds: longer than any search may take. */
const leap = 1e12;

/** Seconds of a plan without the leap. */
export function withoutLeap<Plan extends { readonly seconds: number }>(plan: Plan): Plan {
  return plan.seconds * 1000 < leap / 2 ? plan : { ...plan, seconds: plan.seconds - leap / 1000 };
}
