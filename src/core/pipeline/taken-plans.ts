import { checkPlan, type CuttingJob, type CuttingPlan } from '#core/cutting';
import type { Problem } from '#core/problems';
import type { Command, Project, TakenPlan } from '#core/project';

import type { CuttingGroup } from './types.ts';

/** The act of choosing a plan for a group. */
export function takePlanCommand(
  group: CuttingGroup,
  plan: CuttingPlan,
): Extract<Command, { kind: 'take-plan' }> {
  return { kind: 'take-plan', taken: stampPlan(group, plan) };
}

/** A plan with the mark of the job it is for. */
export function stampPlan({ id, job }: CuttingGroup, plan: CuttingPlan): TakenPlan {
  return { group: id, job: markJob(job), plan };
}

/** The groups with the plans chosen for just their jobs. A chosen plan that the checker refuses is none. */
export function withTaken(project: Project, groups: readonly CuttingGroup[]): readonly CuttingGroup[] {
  const chosen = new Map((project.taken ?? []).map((taken) => [taken.group, taken]));
  return groups.map((group) => {
    const taken = chosen.get(group.id);
    return taken && isOf(taken, group) ? { ...group, taken: taken.plan } : group;
  });
}

function isOf({ job, plan }: TakenPlan, group: CuttingGroup): boolean {
  return job === markJob(group.job) && checkPlan(group.job, plan).length === 0;
}

/** Where a chosen plan is no longer one for what is to be cut: it was left aside. */
export function checkTaken(project: Project, groups: readonly CuttingGroup[]): readonly Problem[] {
  return (project.taken ?? []).flatMap(({ group: id }): readonly Problem[] => {
    const group = groups.find((each) => each.id === id);
    if (!group || group.taken) return [];
    return [
      {
        severity: 'note',
        code: 'taken-plan-outdated',
        about: id,
        message: `The plan you took for ${group.title} was for other parts, stock or saw than there are now: it was left aside and ${group.title} is planned anew.`,
        remedy: 'Undo the change to have it back, or choose again under the plan of the saw.',
      },
    ];
  });
}

/** Sizes that differ by less come from another way of adding up, not from another job; parts of a mm. */
const fineness = 1e4;

/** A mark of a job: jobs of different content have different ones. Two sums over its text (FNV-1a, from memory). */
function markJob(job: CuttingJob): string {
  const text = JSON.stringify(job, (_, value: unknown) =>
    typeof value === 'number' ? Math.round(value * fineness) / fineness : value,
  );
  const sum = (start: number): string => {
    let hash = start;
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
    return hash.toString(16).padStart(8, '0');
  };
  return sum(0x811c9dc5) + sum(0x2f3a91d7);
}
