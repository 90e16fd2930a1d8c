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
