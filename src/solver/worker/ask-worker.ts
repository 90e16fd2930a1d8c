import { wrap } from 'comlink';
import type { CuttingService } from './cutting-worker.ts';

/** A question put to a worker of its own. */
export interface Asked<T> {
  /** The answer; null when it was cancelled. Rejects when the worker fails. */
  readonly result: Promise<T | null>;
  readonly cancel: () => void;
}

/** Asks a worker started for just that, and ends it with the answer. */
export function askWorker<T>(ask: (service: CuttingServiceAway) => Promise<T>): Asked<T> {
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
  const told = ask(wrap<CuttingService>(worker));
  const result = Promise.race([told, cancelled, failed]).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}

type CuttingServiceAway = ReturnType<typeof wrap<CuttingService>>;
