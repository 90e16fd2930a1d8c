import { checkJob, checkPlan, solveCutting, type CuttingPlan, type CuttingProgress } from '#core/cutting';
import type { SolveLp } from '#core/numerics';

import { findRemainders } from './find-remainders.ts';
import type { CuttingGroup, PlannedGroup } from './types.ts';

/** What solving takes from outside. With `work` instead of `seconds` the answer is the same everywhere. */
export interface SolveTools {
  readonly solveLp: SolveLp;
  /** Milliseconds of some clock that only runs forward. */
  readonly clock: () => number;
  readonly seconds?: number;
  readonly work?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: CuttingProgress) => void;
}

/** The plan of one group, with what the person at the saw should know of it. Throws when the checker refuses it: such a plan is never handed on. */
export function planGroup(group: CuttingGroup, tools: SolveTools): PlannedGroup {
  const plan = solveCutting(group.job, tools);
  assertPlan(group, plan);
  return { group, plan: { ...plan, findings: [...plan.findings, ...findRemainders(group, plan)] } };
}

/** Throws when the checker finds fault with a plan. */
export function assertPlan(group: CuttingGroup, plan: CuttingPlan): void {
  const [fault] = checkPlan(group.job, plan);
  if (fault) throw new Error(`the checker refuses the plan of ${group.id}: ${fault.message}`);
}

/**
 * The plans of all groups within a time, each with its share by the number of its parts; what an early proof leaves goes to
 * those after it. A group whose job makes no sense is left out: its findings say why.
 */
export function planGroups(groups: readonly CuttingGroup[], tools: SolveTools): readonly PlannedGroup[] {
  const start = tools.clock();
  const sound = groups.filter((group) => checkJob(group.job).length === 0);
  return sound.map((group, index) => {
    if (tools.seconds === undefined) return planGroup(group, tools);
    const left = tools.seconds - (tools.clock() - start) / 1000;
    const later = sound.slice(index).reduce((sum, each) => sum + weightOf(each), 0);
    const share = Math.max(leastSeconds, (left * weightOf(group)) / later);
    return planGroup(group, { ...tools, seconds: share });
  });
}

/** Enough for a first plan of any workshop job, seconds. */
const leastSeconds = 0.05;

function weightOf(group: CuttingGroup): number {
  return group.job.parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
}
