import type { Problem } from '#core/problems';

import type { Task, VisitPlan } from './types.ts';

/**
 * What is wrong with a plan of visits, by doing it task by task: one left out or done twice, done at the wrong place or too
 * early, two visits running at one place, or a task said to be out of reach that could be done. Empty for a sound plan.
 */
export function checkVisits(tasks: readonly Task[], plan: VisitPlan): readonly Problem[] {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const done = new Set(tasks.filter((task) => task.done === true).map((task) => task.id));
  const faults: Problem[] = [];
  plan.visits.forEach((visit, index) => {
    if (visit.place === plan.visits[index - 1]?.place)
      faults.push(
        fault(`visit ${index + 1}`, `Visits ${index} and ${index + 1} are both at the ${visit.place}.`),
      );
    for (const id of visit.tasks) {
      faults.push(...checkTask(byId, id, visit.place, done));
      done.add(id);
    }
  });
  return [...faults, ...checkRest(tasks, plan, done)];
}

function checkTask(
  byId: ReadonlyMap<string, Task>,
  id: string,
  place: string,
  done: ReadonlySet<string>,
): readonly Problem[] {
  const task = byId.get(id);
  if (!task) return [fault(id, `The plan has a task "${id}" that is not on the list.`)];
  const early = task.after.filter((before) => byId.has(before) && !done.has(before));
  return [
    ...(done.has(id) ? [fault(id, `"${task.text}" is done twice.`)] : []),
    ...(task.place === place
      ? []
      : [fault(id, `"${task.text}" is done at the ${place}, not the ${task.place}.`)]),
    ...early.map((before) => fault(id, `"${task.text}" is done before "${before}".`)),
  ];
}

function checkRest(tasks: readonly Task[], plan: VisitPlan, done: ReadonlySet<string>): readonly Problem[] {
  const known = new Set(tasks.map((task) => task.id));
  const rest = tasks.filter((task) => !done.has(task.id));
  return rest.flatMap((task) => {
    if (!plan.undone.includes(task.id)) return [fault(task.id, `"${task.text}" is left out.`)];
    const free = task.after.every((before) => done.has(before) || !known.has(before));
    return free ? [fault(task.id, `"${task.text}" could be done but is left out.`)] : [];
  });
}

function fault(about: string, message: string): Problem {
  return { severity: 'stop', code: 'visits-unsound', about, message };
}
