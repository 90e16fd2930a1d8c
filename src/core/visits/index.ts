export { checkVisits } from './check-visits.ts';
export { planVisits } from './plan-visits.ts';
export type { Place, Task, Visit, VisitPlan } from './types.ts';
