import type { AskedLine } from './types.ts';

/** Readings of an opening beyond the twelve, as `openingLines` knows them. */
export type OpeningReadingKey =
  | 'wb'
  | 'w13'
  | 'wm'
  | 'w23'
  | 'wt'
  | 'hl'
  | 'hm'
  | 'hr'
  | 'd1'
  | 'd2'
  | 'pl'
  | 'pr'
  | 'ls'
  | 'lh'
  | 'bows'
  | 'twist'
  | 'thickness';

/** What a kind of piece wants to know: readings of the opening it is fitted to, and what lies beside. Joinery A10. */
export interface Topic {
  readonly opening: readonly OpeningReadingKey[];
  readonly lines: readonly AskedLine[];
}
