import { checkJob, checkPlan, solveCutting, type CuttingPlan, type CuttingProgress } from '#core/cutting';
import type { SolveLp } from '#core/numerics';

import { checkInterlock } from './interlock/check-interlock.ts';
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

/** The plan of one group, sought unless one was chosen, with what the person at the saw should know of it. Throws when the checker refuses it: such a plan is never handed on. */
export function planGroup(group: CuttingGroup, tools: SolveTools): PlannedGroup {
  return completePlan(group, group.taken ?? solveCutting(group.job, tools));
}

/** A plan with what the person at the saw should know of it. Throws when the checker refuses it. */
export function completePlan(group: CuttingGroup, plan: CuttingPlan): PlannedGroup {
  assertPlan(group, plan);
  return { group, plan: { ...plan, findings: [...plan.findings, ...findRemainders(group, plan)] } };
}

/** Throws when the checker finds fault with a plan. */
export function assertPlan(group: CuttingGroup, plan: CuttingPlan): void {
  const [fault] = checkPlan(group.job, plan);
  if (fault) throw new Error(`the checker refuses the plan of ${group.id}: ${fault.message}`);
  const [clash] = group.blanks.flatMap((blank) => {
    const part = group.job.parts.find(({ id }) => id === blank.id);
    const size = { length: part?.length ?? 0, width: part?.width ?? 0 };
    return checkInterlock(blank, size, group.saw.kerf);
  });
  if (clash !== undefined) throw new Error(`the checker refuses a blank of ${group.id}: ${clash}`);
}

/** The plans of all groups in one thread, each with all the work or time of the tools. A group whose job makes no sense is left out: its findings say why. */
export function planGroups(groups: readonly CuttingGroup[], tools: SolveTools): readonly PlannedGroup[] {
  return soundGroups(groups).map((group) => planGroup(group, tools));
}

/** Groups whose job makes sense. */
export function soundGroups(groups: readonly CuttingGroup[]): readonly CuttingGroup[] {
  return groups.filter((group) => checkJob(group.job).length === 0);
}
