import { startCuttingRun } from '#core/cutting';
import type { CuttingJob, CuttingPlan, CuttingProgress } from '#core/cutting';
import { makeLocalHand, runCrew } from '#solver/crew';
import { loadGlpk } from '#solver/glpk';
import { callThread } from './call-thread.ts';
import { clockOf } from './messages.ts';
import type { Limits } from './messages.ts';

/** How many threads a search may use, and whom it tells. */
export interface Wish extends Limits {
  readonly workers: 1 | 2;
  readonly onProgress?: (progress: CuttingProgress) => void;
}

/** The plan of a job, sought here and, where that takes longer than a moment, in a second thread beside it. */
export async function cutTogether(job: CuttingJob, wish: Wish): Promise<CuttingPlan> {
  const { workers, onProgress, ...limits } = wish;
  const clock = clockOf(limits);
  const { seconds = 10, work, seed } = limits;
  const start = clock();
  const tools = { clock, seconds, work, seed, onProgress };
  const run = startCuttingRun(job, { ...tools, solveLp: await loadGlpk() });
  const left = (): number => Math.max(0.05, seconds - (clock() - start) / 1000);
  return runCrew({
    lead: makeLocalHand(run),
    callMate:
      workers === 1 ? null : () => callThread({ kind: 'cut', job, limits: { ...limits, seconds: left() } }),
    work: work ?? null,
  });
}
