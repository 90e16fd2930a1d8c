import { planSaws, type SawTools } from './plan-saws.ts';
import { planRouting, type NestingTools } from './router/plan-router.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';

/** Plans of the saws and of the router. */
export interface PlannedWork {
  readonly planned: readonly PlannedGroup[];
  readonly routed: readonly PlannedRouting[];
}

/** What planning takes from outside: the searches, in as many threads as there are. */
export interface PlanTools extends NestingTools, SawTools {
  /** Whether the searches end by their work: then no clock may change what the saws come to. */
  readonly isByWork?: boolean;
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
    cut: tools.cut,
    clock: tools.clock,
    ...(seconds !== undefined && !tools.isByWork && { seconds: seconds * sawShare }),
  });
  const routed = await planRouting(routing, planned, {
    nest,
    ...(seconds !== undefined && { seconds: Math.max(0.1, seconds - (tools.clock() - start) / 1000) }),
  });
  return { planned, routed };
}
