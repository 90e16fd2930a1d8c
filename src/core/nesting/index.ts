export { checkNest } from './check-nest.ts';
export { checkNestJob } from './check-nest-job.ts';
export { solveNesting } from './solve-nesting.ts';
export { startNestingRun } from './nesting-run.ts';
export type { NestNews, NestTools, NestTurn, NestingRun } from './nesting-run.ts';
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
