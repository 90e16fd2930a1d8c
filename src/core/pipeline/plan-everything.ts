import { planGroups, type SolveTools } from './plan-group.ts';
import { planRouting } from './router/plan-router.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';

/** Plans of the saws and of the router. */
export interface PlannedWork {
  readonly planned: readonly PlannedGroup[];
  readonly routed: readonly PlannedRouting[];
}

/** A shape takes longer to lay well than a rectangle: it counts for so many. */
const shapeWeight = 4;

/** The plans of all groups within a time: the saws first, then the router with what they left of the sheets and of the time. */
export function planEverything(understanding: Understanding, tools: SolveTools): PlannedWork {
  const start = tools.clock();
  const { groups, routing } = understanding;
  const { seconds } = tools;
  const copies = (parts: readonly { readonly count?: number }[]) =>
    parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
  const rectangles = groups.reduce((sum, group) => sum + copies(group.job.parts), 0);
  const shapes = shapeWeight * routing.reduce((sum, group) => sum + copies(group.job.parts), 0);
  const sawShare = rectangles / Math.max(1, rectangles + shapes);
  const planned = planGroups(groups, {
    ...tools,
    ...(seconds !== undefined && { seconds: seconds * sawShare }),
  });
  const routed = planRouting(routing, planned, {
    clock: tools.clock,
    ...(tools.work !== undefined && { work: tools.work }),
    ...(tools.seed !== undefined && { seed: tools.seed }),
    ...(seconds !== undefined && { seconds: Math.max(0.1, seconds - (tools.clock() - start) / 1000) }),
  });
  return { planned, routed };
}
