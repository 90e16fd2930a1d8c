import type { Problem } from '#core/problems';
import { stop } from './check-words.ts';
import { checkCuts } from './check-cuts.ts';
import { checkPlaced } from './check-placed.ts';
import { checkTotals } from './check-totals.ts';
import type { CuttingJob, CuttingPlan } from './types.ts';

/**
 * Everything wrong with a plan for a job; empty when a saw can follow it. It shares nothing with the search: it knows
 * the job, the plan and the contract only.
 */
export function checkPlan(job: CuttingJob, plan: CuttingPlan): readonly Problem[] {
  const problems: Problem[] = [];
  problems.push(...checkTotals(job, plan));
  plan.layouts.forEach((layout, index) => {
    const about = `layouts[${index}]`;
    const stock = job.stock.find((each) => each.id === layout.stock);
    if (!stock) {
      problems.push(
        stop(
          'plan-stock-unknown',
          about,
          `The layout is cut from "${layout.stock}", which the job does not have.`,
        ),
      );
      return;
    }
    problems.push(...checkPlaced(job, stock, layout, about));
    problems.push(...checkCuts(job, stock, layout, about));
  });
  return problems;
}
