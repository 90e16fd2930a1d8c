import type { Problem } from '#core/problems';

/** A rectangle, mm: x along the length (the grain), y along the width, origin at the lower left of the untrimmed stock. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * A stock size to cut from. `count` null: as many as wanted. In one dimension `width` is left out. `cost` left out: the dearest
 * rate by area of the others, or its area where none costs anything (its length in one dimension).
 */
export interface CuttingStock {
  readonly id: string;
  readonly length: number;
  readonly width?: number;
  readonly cost?: number;
  readonly count?: number | null;
  readonly keepOut?: readonly Rectangle[];
}

export interface CuttingPart {
  readonly id: string;
  readonly length: number;
  readonly width?: number;
  readonly count?: number;
  /** May lie across the grain. */
  readonly turn?: boolean;
}

export interface Trim {
  readonly left?: number;
  readonly right?: number;
  readonly bottom?: number;
  readonly top?: number;
}

export interface CutRules {
  readonly style?: 'guillotine' | 'free' | 'length';
  readonly maxStages?: number | null;
  readonly exact?: boolean;
  readonly firstCut?: 'along' | 'across' | 'either';
  readonly maxRip?: number | null;
  readonly maxCut?: number | null;
}

/** What to cut from what: the input of `joggle cut`, as in a file. Sizes in mm, costs in the project's currency. */
export interface CuttingJob {
  readonly kerf?: number;
  readonly trim?: Trim;
  readonly turn?: boolean;
  readonly cuts?: CutRules;
  readonly stock: readonly CuttingStock[];
  readonly parts: readonly CuttingPart[];
  readonly keepLeftover?: { readonly minLength: number; readonly minWidth?: number };
}

export interface PlacedPart {
  readonly id: string;
  readonly x: number;
  readonly y?: number;
  /** Extents along x and y as placed. */
  readonly length: number;
  readonly width?: number;
  readonly turned: boolean;
}

/** A node of the tree of cuts; pre-order is the order of sawing. `at` is the low edge of the kerf. */
export type CutNode = Rectangle &
  (
    | {
        readonly cut: 'along' | 'across';
        readonly at: number;
        readonly children: readonly [CutNode, CutNode];
      }
    | { readonly part: string }
    | { readonly leftover: true }
    | { readonly waste: true }
  );

/** One way to cut one piece of stock, to be done `times` times. `cuts` is null for `free` and `length`. */
export interface Layout {
  readonly stock: string;
  readonly times: number;
  readonly placed: readonly PlacedPart[];
  readonly cuts: CutNode | null;
  /** In one dimension with `y` 0 and no width worth naming. */
  readonly leftovers: readonly {
    readonly x: number;
    readonly y?: number;
    readonly length: number;
    readonly width?: number;
  }[];
}

/** The answer of `joggle cut`. `bound`: no plan can cost less; null when something could not be placed. */
export interface CuttingPlan {
  readonly cost: number;
  readonly bound: number | null;
  readonly proven: boolean;
  readonly seconds: number;
  readonly stockUsed: readonly { readonly id: string; readonly count: number }[];
  readonly unplaced: readonly { readonly id: string; readonly count: number }[];
  readonly findings: readonly Problem[];
  readonly layouts: readonly Layout[];
}

/** What tells plans of one cost apart, as weights; each left out has its usual one (`usualAim`). */
export interface PlanAim {
  /** Of the squares of the leftovers worth keeping, as shares of a sheet. */
  readonly leftovers?: number;
  /** Against each different setting of the fence. */
  readonly settings?: number;
  /** Against each cut. */
  readonly cuts?: number;
  /** Against turning a whole sheet for its next cut; smaller pieces by their share of it. */
  readonly turns?: number;
}

/** What the search has so far. */
export interface CuttingProgress {
  readonly cost: number;
  readonly bound: number;
  readonly phase: string;
  readonly plan?: CuttingPlan;
}
