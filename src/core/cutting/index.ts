export { checkJob } from './check-job.ts';
export { checkPlan } from './check-plan.ts';
export { solveCutting } from './solve-cutting.ts';
export type { CuttingTools } from './solve-cutting.ts';
export type {
  CutNode,
  CutRules,
  CuttingJob,
  CuttingPart,
  CuttingPlan,
  CuttingProgress,
  CuttingStock,
  Layout,
  PlacedPart,
  Rectangle,
  Trim,
} from './types.ts';
