export { checkNest } from './check-nest.ts';
export { checkNestJob } from './check-nest-job.ts';
export { solveNesting } from './solve-nesting.ts';
export type { NestTools } from './solve-nesting.ts';
export type {
  Corner,
  KeepOut,
  NestJob,
  NestPart,
  NestPlacement,
  NestPlan,
  NestProgress,
  NestSheet,
  NestStock,
  NestStrip,
} from './types.ts';
