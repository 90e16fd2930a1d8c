import { wrap } from 'comlink';
import type { BoundStory, CuttingJob, CuttingPlan } from '#core/cutting';
import type { CuttingService } from './cutting-worker.ts';

export interface Explaining {
  /** Why the plan needs what it needs; null when it was cancelled. Rejects when the worker fails. */
  readonly result: Promise<BoundStory | null>;
  readonly cancel: () => void;
}

/** Seeks in a worker of its own why a plan needs its stock and what would need less, for at most some seconds. */
export function startExplaining(job: CuttingJob, plan: CuttingPlan, seconds: number): Explaining {
  const worker = new Worker(new URL('./cutting-worker.ts', import.meta.url), { type: 'module' });
  let cancel = (): void => undefined;
  const cancelled = new Promise<null>((resolve) => {
    cancel = () => resolve(null);
  });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the cutting worker failed')),
    );
  });
  const told = wrap<CuttingService>(worker).explain(job, plan, seconds);
  const result = Promise.race([told, cancelled, failed]).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}
