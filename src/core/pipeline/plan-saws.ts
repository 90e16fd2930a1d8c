import type { CuttingJob, CuttingPlan } from '#core/cutting';

import { betterPlan } from './better-plan.ts';
import { completePlan, soundGroups } from './plan-group.ts';
import type { CuttingGroup, PlannedGroup } from './types.ts';

/** What planning the saws takes from outside. */
export interface SawTools {
  /** Cuts a job in so many seconds, without them by its own measure; from a plan there is, where one is given. */
  readonly cut: (job: CuttingJob, seconds: number | undefined, start?: CuttingPlan) => Promise<CuttingPlan>;
  /** Milliseconds of some clock that only runs forward. */
  readonly clock: () => number;
  readonly seconds?: number;
}

/** A group whose plan is sought, and how it stands. */
interface Quest {
  readonly group: CuttingGroup;
  readonly parts: number;
  plan: CuttingPlan | null;
}

/**
 * The plans of the groups of the saws within a time, one after the other with all threads. Small ones come first: they are
 * soon proven, and what they leave of their share goes to the large ones. What those leave goes to all that is not proven
 * yet. A group whose job makes no sense is left out: its findings say why.
 */
export async function planSaws(
  groups: readonly CuttingGroup[],
  tools: SawTools,
): Promise<readonly PlannedGroup[]> {
  const quests = soundGroups(groups).map((group): Quest => ({
    group,
    parts: countParts(group.job),
    plan: group.taken ?? null,
  }));
  const sought = quests.filter(({ group }) => !group.taken).sort((a, b) => a.parts - b.parts);
  const secondsLeft = countDown(tools);
  for (const [index, quest] of sought.entries()) await seek(quest, sought.slice(index), tools, secondsLeft());
  await seekOn(sought, tools, secondsLeft);
  return quests.flatMap(({ group, plan }) => (plan ? [completePlan(group, plan)] : []));
}

/** Below this a further search comes to nothing, seconds. */
const worthwhile = 0.2;

/** Gives what is left of the time to the groups that are not proven, from the plans they have. */
async function seekOn(
  sought: readonly Quest[],
  tools: SawTools,
  secondsLeft: () => number | undefined,
): Promise<void> {
  const open = sought.filter(({ plan }) => plan && !plan.proven);
  for (const [index, quest] of open.entries()) {
    const left = secondsLeft();
    if (left === undefined || left < worthwhile) return;
    await seek(quest, open.slice(index), tools, left);
  }
}

async function seek(
  quest: Quest,
  waiting: readonly Quest[],
  { cut }: SawTools,
  left: number | undefined,
): Promise<void> {
  const seconds = left === undefined ? undefined : Math.max(leastSeconds, left * shareOf(quest, waiting));
  const { group, plan } = quest;
  quest.plan = betterPlan(plan, await cut(group.job, seconds, plan ?? undefined));
}

/** Enough for a first plan of any workshop job, seconds. */
const leastSeconds = 0.05;

/** What part of the time is shared evenly, the rest by the number of parts: few parts can be as hard as many. */
const evenPart = 0.25;

function shareOf({ parts }: Quest, waiting: readonly Quest[]): number {
  const all = waiting.reduce((sum, each) => sum + each.parts, 0);
  return evenPart / waiting.length + ((1 - evenPart) * parts) / Math.max(1, all);
}

function countParts({ parts }: CuttingJob): number {
  return parts.reduce((sum, part) => sum + (part.count ?? 1), 0);
}

function countDown({ clock, seconds }: SawTools): () => number | undefined {
  const start = clock();
  return () => (seconds === undefined ? undefined : seconds - (clock() - start) / 1000);
}
