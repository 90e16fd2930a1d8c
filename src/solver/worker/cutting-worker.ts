import { expose } from 'comlink';
import { solveCutting } from '#core/cutting';
import type { CuttingJob, CuttingPlan, CuttingProgress } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

/** What the page asks of the worker. */
export interface CuttingService {
  solve(
    job: CuttingJob,
    limits: { readonly seconds?: number; readonly seed?: number },
    onProgress: (progress: CuttingProgress) => void,
  ): Promise<CuttingPlan>;
}

const service: CuttingService = {
  async solve(job, limits, onProgress) {
    const solveLp = await loadGlpk();
    return solveCutting(job, { solveLp, clock: () => performance.now(), ...limits, onProgress });
  },
};

expose(service);
