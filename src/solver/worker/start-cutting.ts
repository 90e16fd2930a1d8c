import { proxy, wrap } from 'comlink';
import type { CuttingJob, CuttingPlan, CuttingProgress } from '#core/cutting';
import type { CuttingService } from './cutting-worker.ts';

export interface CuttingWish {
  readonly seconds?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: CuttingProgress) => void;
}

export interface CuttingRun {
  /** The best plan: at the end, or as it stood when the run was cancelled. */
  readonly result: Promise<CuttingPlan>;
  readonly cancel: () => void;
}

/**
 * Seeks a plan in a worker of its own, so that the page stays free. A run cancelled before its first plan answers with
 * an empty one and a finding that says so.
 */
export function startCutting(job: CuttingJob, wish: CuttingWish = {}): CuttingRun {
  const worker = new Worker(new URL('./cutting-worker.ts', import.meta.url), { type: 'module' });
  const service = wrap<CuttingService>(worker);
  let best: CuttingPlan | null = null;
  let cancel = (): void => undefined;
  const cancelled = new Promise<CuttingPlan>((resolve) => {
    cancel = () => resolve(best ?? unfinishedPlan(job));
  });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the cutting worker failed')),
    );
  });
  const note = proxy((progress: CuttingProgress) => {
    best = progress.plan ?? best;
    wish.onProgress?.(progress);
  });
  const { seconds, seed } = wish;
  const solved = service.solve(job, { seconds, seed }, note);
  const result = Promise.race([solved, cancelled, failed]).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
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
