import { startCuttingRun } from '#core/cutting';
import type { CuttingJob, CuttingNews, CuttingPlan, CuttingProgress } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';
import { callThread } from './call-thread.ts';
import { clockOf } from './clocks.ts';
import { runTogether, stoppable, withoutLeap } from './run-together.ts';
import type { Wish } from './run-together.ts';

/** A wish for a cutting plan: `start` is a plan of the same job to go on from, so that the answer is never dearer. */
export type CuttingWish = Wish<CuttingProgress> & { readonly start?: CuttingPlan };

/** The plan of a job, sought here and, where that takes longer than a moment, in a second thread beside it. */
export async function cutTogether(job: CuttingJob, wish: CuttingWish): Promise<CuttingPlan> {
  const clock = stoppable(clockOf(wish), wish.isStopped);
  const solveLp = await loadGlpk();
  const { onProgress, start } = wish;
  const plan = await runTogether<CuttingNews, CuttingPlan>({
    wish,
    clock,
    startRun: ({ seconds, work, seed }) =>
      startCuttingRun(job, { solveLp, clock, seconds, work, seed, start, onProgress }),
    callMate: (limits) => callThread({ kind: 'cut', job, limits }),
  });
  return withoutLeap(plan);
}
