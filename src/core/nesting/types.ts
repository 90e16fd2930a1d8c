import type { Problem } from '#core/problems';

/** A corner of an outline: x and y, mm. */
export type Corner = readonly [number, number];

/** A rectangle a part keeps clear of by the gap: a clamp or a defect. Measured from the lower left corner of the sheet, mm. */
export interface KeepOut {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A sheet size to cut from. `count` null: as many as wanted. `cost` left out: the dearest rate by area of the others, or its area where none costs anything. */
export interface NestSheet {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly cost?: number;
  readonly count?: number | null;
  readonly keepOut?: readonly KeepOut[];
}

/** A roll of this width: the shortest length of it is asked for. */
export interface NestStrip {
  readonly strip: number;
}

export type NestStock = NestSheet | NestStrip;

/** A part by its outline, a polygon of either orientation; holes lie inside it. `angles`: degrees it may be turned by. */
export interface NestPart {
  readonly id: string;
  readonly outline: readonly Corner[];
  readonly holes?: readonly (readonly Corner[])[];
  readonly angles?: readonly number[];
  readonly count?: number;
}

/**
 * True shapes to lay on sheets, or on one strip: the input of `joggle nest`, as in a file. `gap`: least distance between
 * parts; `margin`: least distance from the edge of a sheet. mm.
 */
export interface NestJob {
  readonly gap?: number;
  readonly margin?: number;
  readonly stock: readonly NestStock[];
  readonly parts: readonly NestPart[];
}

/** A part turned by `angle` (degrees, counter-clockwise about the outline's own origin), then moved by x and y, mm. */
export interface NestPlacement {
  readonly id: string;
  readonly sheet: number;
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/**
 * The answer of `joggle nest`. `length` is null on sheets; on a strip `cost` and `bound` are lengths too. `bound`: no plan
 * can cost less; null when something could not be placed. `density`: net area of the parts over the area used.
 */
export interface NestPlan {
  readonly sheets: readonly { readonly stock: string }[];
  readonly placements: readonly NestPlacement[];
  readonly stockUsed: readonly { readonly id: string; readonly count: number }[];
  readonly length: number | null;
  readonly cost: number;
  readonly bound: number | null;
  readonly proven: boolean;
  readonly density: number;
  readonly unplaced: readonly { readonly id: string; readonly count: number }[];
  readonly seconds: number;
  readonly findings: readonly Problem[];
}

/** What the search has so far. */
export interface NestProgress {
  readonly cost: number;
  readonly bound: number | null;
  readonly plan: NestPlan;
}
