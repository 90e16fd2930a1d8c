import { expose } from 'comlink';
import { solveNesting } from '#core/nesting';
import type { NestJob, NestPlan, NestProgress } from '#core/nesting';

/** What the page asks of the worker for true shapes. */
export interface NestingService {
  solve(
    job: NestJob,
    limits: { readonly seconds?: number; readonly seed?: number },
    onProgress: (progress: NestProgress) => void,
  ): Promise<NestPlan>;
}

const service: NestingService = {
  async solve(job, limits, onProgress) {
    return solveNesting(job, { clock: () => performance.now(), ...limits, onProgress });
  },
};

expose(service);
