/** The worker that draws and writes everything. */
export function startBundleWorker(): Worker {
  return new Worker(new URL('./bundle-worker.ts', import.meta.url), { type: 'module' });
}
