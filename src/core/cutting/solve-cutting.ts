import { startCuttingRun } from './cutting-run.ts';
import type { CuttingTools } from './cutting-run.ts';
import type { CuttingJob, CuttingPlan } from './types.ts';

/**
 * The cheapest plan found for a job, with a bound that no plan can go below. A job that `checkJob` refuses yields an
 * empty plan with those findings.
 */
export function solveCutting(job: CuttingJob, tools: CuttingTools): CuttingPlan {
  const run = startCuttingRun(job, tools);
  run.work({});
  return run.finish();
}
