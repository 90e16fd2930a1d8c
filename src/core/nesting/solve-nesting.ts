import { startNestingRun } from './nesting-run.ts';
import type { NestTools } from './nesting-run.ts';
import type { NestJob, NestPlan } from './types.ts';

/**
 * The cheapest sheets found for true shapes, or the shortest strip, with a bound that no plan can go below. A job that
 * `checkNestJob` refuses yields an empty plan with those findings.
 */
export function solveNesting(job: NestJob, tools: NestTools): NestPlan {
  const run = startNestingRun(job, tools);
  run.work({});
  return run.finish();
}
