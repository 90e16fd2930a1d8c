export { startCutting } from './start-cutting.ts';
export type { CuttingRun, CuttingWish } from './start-cutting.ts';
