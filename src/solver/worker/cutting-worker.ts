import { expose } from 'comlink';
import { explainBound, offerPlans, solveCutting } from '#core/cutting';
import type { BoundStory, CuttingJob, CuttingPlan, CuttingProgress, PlanOffer } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

/** What the page asks of the worker. */
export interface CuttingService {
  solve(
    job: CuttingJob,
    limits: { readonly seconds?: number; readonly seed?: number },
    onProgress: (progress: CuttingProgress) => void,
  ): Promise<CuttingPlan>;
  explain(job: CuttingJob, plan: CuttingPlan, seconds: number): Promise<BoundStory>;
  offer(job: CuttingJob, plan: CuttingPlan, seconds: number): Promise<readonly PlanOffer[]>;
}

const service: CuttingService = {
  async solve(job, limits, onProgress) {
    const solveLp = await loadGlpk();
    return solveCutting(job, { solveLp, clock: () => performance.now(), ...limits, onProgress });
  },
  async explain(job, plan, seconds) {
    const solveLp = await loadGlpk();
    return explainBound(job, plan, { solveLp, clock: () => performance.now(), seconds });
  },
  async offer(job, plan, seconds) {
    const solveLp = await loadGlpk();
    return offerPlans(job, plan, { solveLp, clock: () => performance.now(), seconds });
  },
};

expose(service);
