import type { Problem } from '#core/problems';

/** What is known on the way down through the groups of a picture. */
export interface Walk {
  /** How far chords may stray, in user units. */
  readonly tolerance: number;
  readonly findings: Problem[];
  /** The nearest group with a name. */
  readonly layer: string;
  /** As the attribute says it, from the outermost group in. */
  readonly transform: string;
}
