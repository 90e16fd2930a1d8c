import type { CuttingJob, CuttingPlan, PlanOffer } from '#core/cutting';
import { askWorker } from './ask-worker.ts';
import type { Asked } from './ask-worker.ts';

/** Seeks in a worker of its own plans of another character to choose from, for at most some seconds. */
export function startOffering(
  job: CuttingJob,
  plan: CuttingPlan,
  seconds: number,
): Asked<readonly PlanOffer[]> {
  return askWorker((service) => service.offer(job, plan, seconds));
}
