import type { NestJob, NestNews, NestPlan, NestProgress } from '#core/nesting';
import { runWorkers } from './run-workers.ts';
import type { Running, RunWish } from './run-workers.ts';

/**
 * Lays true shapes off the page's thread, on two cores where there are two. A run cancelled before its first plan answers
 * with an empty one and a finding that says so.
 */
export function startNesting(job: NestJob, wish: RunWish<NestProgress> = {}): Running<NestPlan> {
  return runWorkers<NestJob, NestNews, NestPlan, NestProgress>({
    make: () => new Worker(new URL('./nesting-worker.ts', import.meta.url), { type: 'module' }),
    ...{ job, wish },
    planOf: ({ plan }) => plan,
    unfinished: () => unfinishedPlan(job),
  });
}

function unfinishedPlan(job: NestJob): NestPlan {
  return {
    sheets: [],
    placements: [],
    stockUsed: [],
    length: null,
    cost: 0,
    bound: null,
    proven: false,
    density: 0,
    unplaced: job.parts.map((part) => ({ id: part.id, count: part.count ?? 1 })),
    seconds: 0,
    findings: [
      {
        severity: 'stop',
        code: 'nesting-cancelled',
        message: 'The search was cancelled before its first plan: no part is laid.',
        remedy: 'Start the search again.',
      },
    ],
  };
}
