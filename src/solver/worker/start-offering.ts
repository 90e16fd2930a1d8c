import type { CuttingJob, CuttingPlan, PlanAim, PlanOffer } from '#core/cutting';
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

/** Seeks in a worker of its own a plan that is better by these weights, for at most some seconds; null when there is none. */
export function startWeighing(
  job: CuttingJob,
  plan: CuttingPlan,
  { seconds, weights }: { readonly seconds: number; readonly weights: PlanAim },
): Asked<PlanOffer | null> {
  return askWorker((service) => service.weigh(job, plan, seconds, weights));
}
