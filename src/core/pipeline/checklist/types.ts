import type { SketchRing } from '#core/drawing';
import type { Method, Reading } from '#core/measuring';

type Unread<R> = R extends Reading ? Omit<R, 'value' | 'repeats' | 'sigma' | 'toFace' | 'note'> : never;

/** A reading that is still to be taken: everything but its value. */
export type ReadingToTake = Unread<Reading>;

/** When in one visit something is done (joinery A11b). */
export type VisitStage =
  | 'clear'
  | 'photo'
  | 'datum'
  | 'readings'
  | 'strings'
  | 'templates'
  | 'bevels'
  | 'route'
  | 'moisture'
  | 'solve';

export const visitStages: readonly VisitStage[] = [
  'clear',
  'photo',
  'datum',
  'readings',
  'strings',
  'templates',
  'bevels',
  'route',
  'moisture',
  'solve',
];

/** What a line of a checklist asks for. */
export interface AskedLine {
  /** Its own within its block. */
  readonly key: string;
  readonly stage: VisitStage;
  readonly text: string;
  /** Where the tape goes, or what to look at. */
  readonly where: string;
  /** How many numbers are written down; 0: it is only ticked off. */
  readonly blanks: number;
  readonly unit: 'mm' | '°' | '%' | '';
  readonly method?: Method;
  /** The reading that answers it. */
  readonly reading?: ReadingToTake;
  /** Parameters of the piece that answer it. */
  readonly parameters?: readonly string[];
}

/** A line with what is known of it so far. */
export interface VisitLine extends AskedLine {
  /** The mark that `set-done` ticks it off with. */
  readonly mark: string;
  /** `once`: read, but not yet a second time by a fresh look. */
  readonly status: 'open' | 'once' | 'done';
  /** What was read, in the line's unit, the first look first. */
  readonly values: readonly number[];
}

/** What is measured in one place: before all, at one shape, for one piece, or before leaving. */
export interface VisitBlock {
  readonly title: string;
  readonly kind: 'begin' | 'shape' | 'piece' | 'leave';
  /** Of the shape or the piece. */
  readonly id?: string;
  readonly seenFrom?: string;
  /** Its points, for the sketches. */
  readonly ring?: SketchRing;
  readonly lines: readonly VisitLine[];
}

/** Everything to be measured and looked at in one visit, in its order. */
export interface VisitChecklist {
  readonly blocks: readonly VisitBlock[];
  readonly lines: number;
  readonly open: number;
}
