import type { Problem } from '#core/problems';

/** How a reading was taken (joinery A1); it decides sigma where none is given. */
export type Method =
  'M1' | 'M2' | 'M3' | 'M4' | 'M5' | 'M6' | 'M7' | 'M8' | 'M9' | 'M10' | 'M11' | 'M12' | 'M13' | 'M14';

interface ReadingBase {
  readonly id: string;
  /** What the tape said, mm; an angle in degrees. */
  readonly value: number;
  /** One standard deviation, mm (an angle: degrees); left out: by method. */
  readonly sigma?: number;
  readonly method?: Method;
  /** Repeats of the same reading, by a fresh look, in the same unit. */
  readonly repeats?: readonly number[];
  /** What the tape touched, when not the bare face: a layer that will come off, as `headlining`. */
  readonly toFace?: string;
  readonly note?: string;
}

/**
 * One reading. `distance`: between two points. `width`: between the points at fraction `at` of two edges, each counted
 * from its first-named point. `plumb`: x of `to` minus x of `from` against the boat's vertical; `level`: y likewise.
 * `offset`: how far `point` lies from the line, positive to the left when going from `from` to `to`. `angle`: at `at`, turned
 * counter-clockwise from the direction of `from` to that of `to`, degrees. `bow`: of an edge at mid length against the
 * straight line between its ends, positive outwards, where it makes the opening larger.
 */
export type Reading =
  | (ReadingBase & { readonly kind: 'distance'; readonly from: string; readonly to: string })
  | (ReadingBase & {
      readonly kind: 'width';
      readonly left: readonly [string, string];
      readonly right: readonly [string, string];
      readonly at: number;
    })
  | (ReadingBase & { readonly kind: 'plumb'; readonly from: string; readonly to: string })
  | (ReadingBase & { readonly kind: 'level'; readonly from: string; readonly to: string })
  | (ReadingBase & {
      readonly kind: 'offset';
      readonly point: string;
      readonly from: string;
      readonly to: string;
    })
  | (ReadingBase & {
      readonly kind: 'angle';
      readonly at: string;
      readonly from: string;
      readonly to: string;
    })
  | (ReadingBase & { readonly kind: 'bow'; readonly from: string; readonly to: string });

/** The input of `joggle measure`, as in a file. */
export interface Survey {
  /** From where one looks: distances cannot tell a shape from its mirror image. */
  readonly seenFrom: string;
  readonly readings: readonly Reading[];
}

/** A reading after the adjustment, mm; an angle in degrees. */
export interface AdjustedReading {
  readonly id: string;
  readonly value: number;
  readonly sigma: number;
  readonly adjusted: number;
  /** Reading minus adjusted. */
  readonly residual: number;
  /** Share of a slip in this reading that shows in its own residual, 0 to 1. */
  readonly redundancy: number;
  /** Residual over its own standard deviation; null when nothing checks the reading. */
  readonly normalised: number | null;
  /** Smallest slip found with 80 % probability at 0.1 % false alarm; null when none can be found. */
  readonly smallestSlip: number | null;
}

export interface Suspect {
  readonly id: string;
  /** Reading minus what the others say, mm; of an angle in degrees. */
  readonly slip: number;
  /** The likely mistake in words, with its name in joinery A5. */
  readonly cause: string;
  readonly mistake?: string;
}

/** The answer of `joggle measure`. Coordinates in mm; `tilt` in degrees as every angle in files. */
export interface Adjustment {
  readonly seenFrom: string;
  readonly points: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly sx: number;
    readonly sy: number;
  }[];
  readonly tilt: number | null;
  readonly readings: readonly AdjustedReading[];
  readonly dof: number;
  readonly chi2: number;
  readonly suspects: readonly Suspect[];
  /** What the readings leave open, in plain words. */
  readonly undetermined: readonly string[];
  /** The one extra reading that helps most, in plain words; null when the set is as good as it gets. */
  readonly advice: string | null;
  readonly findings: readonly Problem[];
}
