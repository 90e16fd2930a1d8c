import { startNestingRun } from '#core/nesting';
import type { NestJob, NestNews, NestPlan, NestProgress } from '#core/nesting';
import { callThread } from './call-thread.ts';
import { clockOf } from './clocks.ts';
import { runTogether, stoppable, withoutLeap } from './run-together.ts';
import type { Wish } from './run-together.ts';

/** True shapes laid here and, where that takes longer than a moment, in a second thread beside it. */
export async function nestTogether(job: NestJob, wish: Wish<NestProgress>): Promise<NestPlan> {
  const clock = stoppable(clockOf(wish), wish.isStopped);
  const { onProgress } = wish;
  const plan = await runTogether<NestNews, NestPlan>({
    wish,
    clock,
    startRun: ({ seconds, work, seed }) => startNestingRun(job, { clock, seconds, work, seed, onProgress }),
    callMate: (limits) => callThread({ kind: 'nest', job, limits }),
  });
  return withoutLeap(plan);
}
