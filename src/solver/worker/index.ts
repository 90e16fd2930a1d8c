export { startExplaining } from './start-explaining.ts';
export type { Explaining } from './start-explaining.ts';
export { startOffering, startWeighing } from './start-offering.ts';
export type { Asked } from './ask-worker.ts';
export { startCutting } from './start-cutting.ts';
export { startNesting } from './start-nesting.ts';
export type { Running, RunWish } from './run-workers.ts';
