import type { Hand, Mate, News, Turn } from './types.ts';

/** A search that works in turns where it is. */
interface Run<N extends News, Plan> {
  readonly work: (turn: Turn<N>) => N;
  readonly finish: () => Plan;
}

/** A hand that works in this thread: between turns it lets messages in. */
export function makeLocalHand<N extends News, Plan>(run: Run<N, Plan>): Hand<N, Plan> {
  return {
    work: async (turn) => {
      await letIn();
      return run.work(turn);
    },
    finish: () => Promise.resolve(run.finish()),
  };
}

/** The same as a second hand: a crew in one thread answers as one in two does, only later. */
export function makeLocalMate<N extends News>(run: Run<N, unknown>): Mate<N> {
  return { work: makeLocalHand(run).work, dismiss: () => undefined };
}

function letIn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
