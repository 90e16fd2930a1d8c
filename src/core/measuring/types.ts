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
  /** What the other readings say it should be; until it is confirmed on site the reading counts for nothing. */
  readonly toConfirm?: number;
}

/**
 * One reading. `distance`: between two points. `width`: between the points at fraction `at` of two edges, each counted
 * from its first-named point. `plumb`: x of `to` minus x of `from` against the boat's vertical; `level`: y likewise.
 * `offset`: how far `point` lies from the line, positive to the left when going from `from` to `to`. `angle`: at `at`, turned
 * counter-clockwise from the direction of `from` to that of `to`, degrees. `bow`: of an edge at mid length against the
 * straight line between its ends, positive outwards, where it makes the opening larger. `ordinate`: of `point` square to a
 * batten from `from` to `to`, positive to its left, at `station` from `from` along it (joinery M9). `tick`: `point` as a stick
 * brought it to the board named `board`, `station` along the lower edge and the value up from it; all ticks of one board
 * share its place, which is sought (joinery A7). `twist`: gap of two strings, each from corner to corner, at their crossing
 * (joinery M8). `thickness`: of what the piece is fixed to, at a place. Twist and thickness say nothing of points.
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
  | (ReadingBase & { readonly kind: 'bow'; readonly from: string; readonly to: string })
  | (ReadingBase & {
      readonly kind: 'ordinate';
      readonly point: string;
      readonly from: string;
      readonly to: string;
      readonly station: number;
    })
  | (ReadingBase & {
      readonly kind: 'tick';
      readonly board: string;
      readonly point: string;
      readonly station: number;
      /** How far the tip lay beyond the traced edge of the stick, as a share of the traced length; it decides sigma. */
      readonly reach?: number;
    })
  | (ReadingBase & {
      readonly kind: 'twist';
      readonly first: readonly [string, string];
      readonly second: readonly [string, string];
    })
  | (ReadingBase & { readonly kind: 'thickness'; readonly place: string });

/** A point whose place is known beforehand, mm. */
export interface KnownPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

/** The input of `joggle measure`, as in a file. */
export interface Survey {
  /** From where one looks: distances cannot tell a shape from its mirror image. */
  readonly seenFrom: string;
  readonly readings: readonly Reading[];
  /** Corners of an outline counter-clockwise as seen: they tell left from right, and which of several shapes is meant. */
  readonly corners?: readonly string[];
  /** Points held where they are, two at least: all coordinates are then counted from theirs. */
  readonly fixed?: readonly KnownPoint[];
  /** `free`: sx and sy against the shape as a whole (inner constraints), not against the first line. */
  readonly datum?: 'first' | 'free';
}

/** What the adjustment says of one number of a reading, mm; of an angle degrees. */
export interface AdjustedNumber {
  readonly value: number;
  readonly sigma: number;
  readonly adjusted: number;
  /** Reading minus adjusted. */
  readonly residual: number;
  /** Share of a slip in this number that shows in its own residual, 0 to 1. */
  readonly redundancy: number;
  /** Residual over its own standard deviation; null when nothing checks the number. */
  readonly normalised: number | null;
  /** Smallest slip found with 80 % probability at 0.1 % false alarm; null when none can be found. */
  readonly smallestSlip: number | null;
}

/** A reading after the adjustment, mm; an angle in degrees. */
export interface AdjustedReading extends AdjustedNumber {
  readonly id: string;
  /** The station, of an ordinate or a tick. */
  readonly station?: AdjustedNumber;
}

export interface Suspect {
  readonly id: string;
  /** Reading minus what the others say, mm; of an angle in degrees. */
  readonly slip: number;
  /** The likely mistake in words; its name in joinery A5 is `mistake`. */
  readonly cause: string;
  readonly mistake?: string;
  /** The slip lies in the station, not in the value. */
  readonly part?: 'station';
}

/** Twist of an opening, mm: how far its fourth corner stands out of the plane of the others, with 95 %. Joinery A4. */
export interface Twist {
  readonly value: number;
  readonly u95: number;
}

/** Thickness of what the piece is fixed to, from readings at `count` places, mm. */
export interface Thickness {
  readonly count: number;
  readonly least: number;
  readonly most: number;
  readonly mean: number;
  /** Of the mean, 95 %. */
  readonly u95: number;
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
  /** The largest twist read; left out without such a reading. */
  readonly twist?: Twist;
  /** Left out without such a reading. */
  readonly thickness?: Thickness;
}
