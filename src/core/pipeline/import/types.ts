import type { Outline, PathPoint } from '#core/geometry';
import type { Problem } from '#core/problems';

/** A line drawn in a file, in the file's own unit, y up. */
export interface DrawnPath {
  readonly layer: string;
  readonly points: readonly PathPoint[];
  /** It leads back to its first point. */
  readonly closed: boolean;
}

/** What a drawing file holds that can be an outline. */
export interface DrawnFile {
  readonly paths: readonly DrawnPath[];
  /** mm for one unit of the file; null when the file does not say. */
  readonly unit: number | null;
  readonly findings: readonly Problem[];
}

/** A closed contour of a drawing, in mm, counter-clockwise. */
export interface OutlineCandidate {
  /** From 0, the largest first. */
  readonly number: number;
  readonly layer: string;
  readonly outline: Outline;
  readonly width: number;
  readonly height: number;
  /** mm². */
  readonly area: number;
  /** Other closed contours within it, which are left out of the outline. */
  readonly inside: number;
  /** The widest gap between its lines that was closed, mm. */
  readonly gap: number;
}

/** The closed contours of a drawing to choose from, and what is to be said of it. */
export interface OutlineChoice {
  readonly candidates: readonly OutlineCandidate[];
  readonly findings: readonly Problem[];
}
