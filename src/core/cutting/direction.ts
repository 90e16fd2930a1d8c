/** Saw line parallel to x. Its children lie one above the other. */
export const along = 1;
/** Saw line square to x. Its children lie side by side. */
export const across = 2;
export type Direction = typeof along | typeof across;

/** What the saw and the rules allow, in grid units without kerf; Infinity where nothing is limited. */
export interface Limits {
  readonly maxStages: number;
  readonly exact: boolean;
  readonly firstCut: Direction | null;
  readonly maxRip: number;
  readonly maxCut: number;
}
