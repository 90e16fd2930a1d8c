export { checkJob } from './check-job.ts';
export { checkPlan } from './check-plan.ts';
export { collectSettings } from './collect-settings.ts';
export type { SawSetting } from './collect-settings.ts';
export { formatCost } from './cost-unit.ts';
export type { CostUnit } from './cost-unit.ts';
export { explainBound } from './explain-bound.ts';
export type { BoundStory } from './explain-bound.ts';
export type { Saving } from './saving.ts';
export { startCuttingRun } from './cutting-run.ts';
export type { CuttingRun, CuttingTools, Turn } from './cutting-run.ts';
export type { CuttingNews } from './cutting-news.ts';
export { fillCosts } from './model.ts';
export { measurePlan } from './measure-plan.ts';
export type { PlanFigures } from './measure-plan.ts';
export { offerByWeights, offerPlans } from './offer-plans.ts';
export type { PlanOffer } from './offer-plans.ts';
export { usualAim } from './polish.ts';
export { letterOf, sequenceCuts } from './sequence-cuts.ts';
export type { PartPlace, SawSequence, SawStep } from './sequence-cuts.ts';
export { solveCutting } from './solve-cutting.ts';
export { tightBound } from './tighten.ts';
export { valuePattern } from './value-pattern.ts';
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
  PlanAim,
  Rectangle,
  Trim,
} from './types.ts';
