import type { CuttingJob, CuttingPlan } from '#core/cutting';
import { completePlan, shareTime, soundGroups } from './plan-group.ts';
import { planRouting, type NestingTools } from './router/plan-router.ts';
import type { CuttingGroup, PlannedGroup, PlannedRouting, Understanding } from './types.ts';

/** Plans of the saws and of the router. */
export interface PlannedWork {
  readonly planned: readonly PlannedGroup[];
  readonly routed: readonly PlannedRouting[];
}

/** What planning takes from outside: the searches, in as many threads as there are. */
export interface PlanTools extends NestingTools {
  /** Cuts a job in so many seconds; without them by its own measure. */
  readonly cut: (job: CuttingJob, seconds: number | undefined) => Promise<CuttingPlan>;
  /** Milliseconds of some clock that only runs forward. */
  readonly clock: () => number;
}

/** A shape takes longer to lay well than a rectangle: it counts for so many. */
const shapeWeight = 4;

/** The plans of all groups within a time: the saws first, then the router with what they left of the sheets and of the time. */
export async function planEverything(understanding: Understanding, tools: PlanTools): Promise<PlannedWork> {
  const start = tools.clock();
  const { groups, routing } = understanding;
  const { seconds, nest } = tools;
  const copies = (parts: readonly { readonly count?: number }[]) =>
    parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  const rectangles = groups.reduce((sum, group) => sum + copies(group.job.parts), 0);
  const shapes = shapeWeight * routing.reduce((sum, group) => sum + copies(group.job.parts), 0);
  const sawShare = rectangles / Math.max(1, rectangles + shapes);
  const planned = await planSaws(groups, {
    ...tools,
    ...(seconds !== undefined && { seconds: seconds * sawShare }),
  });
  const routed = await planRouting(routing, planned, {
    nest,
    ...(seconds !== undefined && { seconds: Math.max(0.1, seconds - (tools.clock() - start) / 1000) }),
  });
  return { planned, routed };
}

/** One group after the other: each has all threads while its turn lasts. */
async function planSaws(groups: readonly CuttingGroup[], tools: PlanTools): Promise<readonly PlannedGroup[]> {
  const sound = soundGroups(groups);
  const shareOf = shareTime(sound, tools);
  const planned: PlannedGroup[] = [];
  for (const [index, group] of sound.entries())
    planned.push(completePlan(group, group.taken ?? (await tools.cut(group.job, shareOf(index).seconds))));
  return planned;
}
