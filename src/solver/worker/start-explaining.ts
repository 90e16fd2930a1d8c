import type { BoundStory, CostUnit, CuttingJob, CuttingPlan } from '#core/cutting';
import { askWorker } from './ask-worker.ts';
import type { Asked } from './ask-worker.ts';

export type Explaining = Asked<BoundStory>;

/** Seeks in a worker of its own why a plan needs its stock and what would need less, for at most some seconds; costs are told in the unit. */
export function startExplaining(
  job: CuttingJob,
  plan: CuttingPlan,
  { seconds, unit }: { readonly seconds: number; readonly unit: CostUnit },
): Explaining {
  return askWorker((service) => service.explain(job, plan, seconds, unit));
}
