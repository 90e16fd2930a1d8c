/** The worker that looks into how pieces go together and to their place. */
export function startCarryWorker(): Worker {
  return new Worker(new URL('./carry-worker.ts', import.meta.url), { type: 'module' });
}
