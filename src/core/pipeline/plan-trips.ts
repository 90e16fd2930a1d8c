import { checkVisits, planVisits, type Task, type VisitPlan } from '#core/visits';

/** The fewest visits for these tasks, done once task by task; throws when the checker finds fault with them. */
export function planTrips(tasks: readonly Task[]): VisitPlan {
  const plan = planVisits(tasks);
  const [fault] = checkVisits(tasks, plan);
  if (fault) throw new Error(`the checker refuses the plan of the visits: ${fault.message}`);
  return plan;
}
