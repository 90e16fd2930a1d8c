import type { CuttingPlan } from '#core/cutting';

/** The plan that leaves fewer parts, then costs less, the later one where they are alike; with the higher bound of the two, as either holds for both. */
export function betterPlan(former: CuttingPlan | null, later: CuttingPlan): CuttingPlan {
  if (!former) return later;
  return isBetter(former, later) ? withBound(former, later.bound) : withBound(later, former.bound);
}

/** A plan with the higher of two bounds; proven when that meets its cost. A plan that leaves parts keeps its own. */
export function withBound(plan: CuttingPlan, bound: number | null): CuttingPlan {
  if (bound === null || plan.unplaced.length > 0) return plan;
  if (plan.bound !== null && plan.bound >= bound) return plan;
  const proven = plan.proven || plan.cost - bound <= slack * Math.max(1, plan.cost);
  return { ...plan, bound: Math.min(bound, plan.cost), proven };
}

/** Sums of prices that differ by no more are the same, as a share of the cost. */
const slack = 1e-6;

function isBetter(a: CuttingPlan, b: CuttingPlan): boolean {
  const left = (plan: CuttingPlan): number => plan.unplaced.reduce((sum, each) => sum + each.count, 0);
  return left(a) < left(b) || (left(a) === left(b) && a.cost < b.cost);
}
