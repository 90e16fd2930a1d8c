import { checkNest, solveNesting, type NestJob, type NestPlan, type NestProgress } from '#core/nesting';
import { hasStop } from '#core/problems';

import type { PlannedGroup, PlannedRouting, RouterGroup } from '../types.ts';

/** What laying shapes takes from outside; with `work` instead of `seconds` the answer is the same everywhere. */
export interface NestingTools {
  /** Milliseconds of some clock that only runs forward. */
  readonly clock: () => number;
  readonly seconds?: number;
  readonly work?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: NestProgress) => void;
}

/** The job of a group with what the saw has not used of its sheets: saw and router share the rack, the saw goes first. */
export function remainingJob(group: RouterGroup, planned: readonly PlannedGroup[]): NestJob {
  const used = new Map<string, number>();
  for (const { plan } of planned)
    for (const { id, count } of plan.stockUsed) used.set(id, (used.get(id) ?? 0) + count);
  return {
    ...group.job,
    stock: group.job.stock.flatMap((stock) => {
      if ('strip' in stock || stock.count === null || stock.count === undefined) return [stock];
      const count = stock.count - (used.get(stock.id) ?? 0);
      return count > 0 ? [{ ...stock, count }] : [];
    }),
  };
}

/** The plans of the router's groups; a group whose job makes no sense is left out: its findings say why. */
export function planRouting(
  groups: readonly RouterGroup[],
  planned: readonly PlannedGroup[],
  tools: NestingTools,
): readonly PlannedRouting[] {
  const sound = groups.filter((group) => !hasStop(group.findings));
  return sound.map((group) => {
    const job = remainingJob(group, planned);
    const seconds = tools.seconds === undefined ? {} : { seconds: tools.seconds / sound.length };
    const plan = solveNesting(job, { ...tools, ...seconds });
    assertNest(group, job, plan);
    return { group, job, plan };
  });
}

/** Throws when the checker finds fault with a plan: such a plan is never handed on. */
export function assertNest(group: RouterGroup, job: NestJob, plan: NestPlan): void {
  const [fault] = checkNest(job, plan);
  if (fault) throw new Error(`the checker refuses the plan of ${group.id}: ${fault.message}`);
}
