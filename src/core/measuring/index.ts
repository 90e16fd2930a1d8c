export type { AdjustedReading, Adjustment, Method, Reading, Survey, Suspect } from './types.ts';
