import type { Project } from '#core/project';
import type { Place, Task, VisitPlan } from '#core/visits';

import { listTasks } from './list-tasks.ts';
import { planTrips } from './plan-trips.ts';
import type { PlannedGroup, Understanding } from './types.ts';
import { countWords, describeThings, wrapLines } from './words.ts';

const placeWords: Readonly<Record<Place, string>> = {
  boat: 'On site',
  workshop: 'At the workshop',
  shop: 'At the shop',
};

/** `trips.txt`: the fewest visits with what to take along and what to do, each task with a box to tick. */
export function writeTrips(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
): string {
  const tasks = listTasks(project, understanding, planned);
  const plan = planTrips(tasks);
  const blocks = plan.visits.map((visit, index) => [
    `${index + 1}. ${placeWords[visit.place]}, ${formatTime(visit.minutes)}`,
    ...wrapLines(`   Take along: ${describeThings(visit.take)}`, 96, '     '),
    ...visit.tasks.flatMap((id) => describeTask(tasks, id)),
    '',
  ]);
  return [
    `${project.name}: visits`,
    '',
    describeNumber(plan),
    'On site only knife, hand plane, drill with a cup: all sawing and sanding is done in the workshop.',
    '',
    ...blocks.flat(),
    ...plan.findings.map((finding) => `${finding.message} ${finding.remedy ?? ''}`.trim()),
  ]
    .join('\n')
    .trimEnd()
    .concat('\n');
}

function describeNumber(plan: VisitPlan): string {
  if (plan.visits.length === 0) return 'Nothing is left to do.';
  const number = countWords(plan.visits.length, 'visit');
  return plan.proven
    ? `${number}; with fewer it cannot be done, as one task waits for another.`
    : `${number}; whether fewer would do is not proven.`;
}

function describeTask(tasks: readonly Task[], id: string): readonly string[] {
  const task = tasks.find((each) => each.id === id);
  return task ? wrapLines(`   [ ] ${task.text}`, 96, '       ') : [];
}

function formatTime(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = Math.round(minutes - hours * 60);
  if (hours === 0) return `about ${rest} min`;
  return rest === 0 ? `about ${hours} h` : `about ${hours} h ${rest} min`;
}
