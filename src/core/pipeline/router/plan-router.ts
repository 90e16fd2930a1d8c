import { checkNest, type NestJob, type NestPlan } from '#core/nesting';
import { hasStop } from '#core/problems';

import type { PlannedGroup, PlannedRouting, RouterGroup } from '../types.ts';

/** What laying shapes takes from outside. */
export interface NestingTools {
  /** Lays a job in so many seconds; without them by its own measure. */
  readonly nest: (job: NestJob, seconds: number | undefined) => Promise<NestPlan>;
  readonly seconds?: number;
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

/** The plans of the router's groups, one after the other; a group whose job makes no sense is left out: its findings say why. */
export async function planRouting(
  groups: readonly RouterGroup[],
  planned: readonly PlannedGroup[],
  { nest, seconds }: NestingTools,
): Promise<readonly PlannedRouting[]> {
  const sound = groups.filter((group) => !hasStop(group.findings));
  const routed: PlannedRouting[] = [];
  for (const group of sound) {
    const job = remainingJob(group, planned);
    const plan = await nest(job, seconds === undefined ? undefined : seconds / sound.length);
    assertNest(group, job, plan);
    routed.push({ group, job, plan });
  }
  return routed;
}

/** Throws when the checker finds fault with a plan: such a plan is never handed on. */
export function assertNest(group: RouterGroup, job: NestJob, plan: NestPlan): void {
  const [fault] = checkNest(job, plan);
  if (fault) throw new Error(`the checker refuses the plan of ${group.id}: ${fault.message}`);
}
