import { expect } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob, CuttingPlan, CuttingTools } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();

/** Solves a job with a fixed amount of work and holds the plan against the checker. */
export function planOf(job: CuttingJob, tools: Partial<CuttingTools> = {}): CuttingPlan {
  const plan = solveCutting(job, { solveLp, clock: () => performance.now(), work: 400, seed: 1, ...tools });
  expect(checkPlan(job, plan)).toEqual([]);
  return plan;
}
