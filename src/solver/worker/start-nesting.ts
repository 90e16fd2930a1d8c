import { proxy, wrap } from 'comlink';
import type { NestJob, NestPlan, NestProgress } from '#core/nesting';
import type { NestingService } from './nesting-worker.ts';

export interface NestingWish {
  readonly seconds?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: NestProgress) => void;
}

export interface NestingRun {
  /** The best plan: at the end, or as it stood when the run was cancelled. */
  readonly result: Promise<NestPlan>;
  readonly cancel: () => void;
}

/**
 * Lays true shapes in a worker of its own, so that the page stays free. A run cancelled before its first plan answers
 * with an empty one and a finding that says so.
 */
export function startNesting(job: NestJob, wish: NestingWish = {}): NestingRun {
  const worker = new Worker(new URL('./nesting-worker.ts', import.meta.url), { type: 'module' });
  const service = wrap<NestingService>(worker);
  let best: NestPlan | null = null;
  let cancel = (): void => undefined;
  const cancelled = new Promise<NestPlan>((resolve) => {
    cancel = () => resolve(best ?? unfinishedPlan(job));
  });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the nesting worker failed')),
    );
  });
  const note = proxy((progress: NestProgress) => {
    best = progress.plan;
    wish.onProgress?.(progress);
  });
  const { seconds, seed } = wish;
  const solved = service.solve(job, { seconds, seed }, note);
  const result = Promise.race([solved, cancelled, failed]).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
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
