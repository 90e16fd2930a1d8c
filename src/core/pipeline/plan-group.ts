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

/**
 * The plans of all groups within a time, in one thread, each with its share by the number of its parts; what an early proof
 * leaves goes to those after it. A group whose job makes no sense is left out: its findings say why.
 */
export function planGroups(groups: readonly CuttingGroup[], tools: SolveTools): readonly PlannedGroup[] {
  const sound = soundGroups(groups);
  const shareOf = shareTime(sound, tools);
  return sound.map((group, index) => planGroup(group, { ...tools, ...shareOf(index) }));
}

/** Groups whose job makes sense. */
export function soundGroups(groups: readonly CuttingGroup[]): readonly CuttingGroup[] {
  return groups.filter((group) => checkJob(group.job).length === 0);
}

/** What each group may take when its turn comes, by what is left of the time and by the parts still to come. */
export function shareTime(
  groups: readonly CuttingGroup[],
  { clock, seconds }: Pick<SolveTools, 'clock' | 'seconds'>,
): (index: number) => { readonly seconds?: number } {
  const start = clock();
  return (index) => {
    const group = groups[index];
    if (seconds === undefined || !group) return {};
    const left = seconds - (clock() - start) / 1000;
    const later = groups.slice(index).reduce((sum, each) => sum + weightOf(each), 0);
    return { seconds: Math.max(leastSeconds, (left * weightOf(group)) / later) };
  };
}

/** Enough for a first plan of any workshop job, seconds. */
const leastSeconds = 0.05;

function weightOf(group: CuttingGroup): number {
  return group.job.parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
}
