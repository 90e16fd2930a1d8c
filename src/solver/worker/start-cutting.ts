import type { CuttingJob, CuttingNews, CuttingPlan, CuttingProgress } from '#core/cutting';
import type { CuttingTask } from './cutting-worker.ts';
import { runWorkers } from './run-workers.ts';
import type { Running, RunWish } from './run-workers.ts';

/**
 * Seeks a plan off the page's thread, on two cores where there are two; from a plan there is, where one is given. A run
 * cancelled before its first plan answers with that, else with an empty one and a finding that says so.
 */
export function startCutting(
  { job, start }: CuttingTask,
  wish: RunWish<CuttingProgress> = {},
): Running<CuttingPlan> {
  return runWorkers<CuttingTask, CuttingNews, CuttingPlan, CuttingProgress>({
    make: () => new Worker(new URL('./cutting-worker.ts', import.meta.url), { type: 'module' }),
    job: start ? { job, start } : { job },
    wish,
    planOf: ({ plan }) => plan,
    unfinished: () => start ?? unfinishedPlan(job),
  });
}

function unfinishedPlan(job: CuttingJob): CuttingPlan {
  return {
    cost: 0,
    bound: null,
    proven: false,
    seconds: 0,
    stockUsed: [],
    unplaced: job.parts.map((part) => ({ id: part.id, count: part.count ?? 1 })),
    findings: [
      {
        severity: 'stop',
        code: 'cutting-cancelled',
        message: 'The search was cancelled before its first plan: no part is placed.',
        remedy: 'Start the search again.',
      },
    ],
    layouts: [],
  };
}
