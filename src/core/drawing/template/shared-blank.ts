import type { Outline, Point } from '#core/geometry';
import type { Part } from '#core/joinery';

/** A blank that two shapes come out of head to tail: x along its grain, face sides up, mm from its lower left corner. */
export interface SharedBlank {
  /** As `A1/A2`. */
  readonly id: string;
  readonly length: number;
  readonly width: number;
  /** How many such blanks are sawn. */
  readonly count: number;
  readonly kerf: number;
  readonly laid: readonly { readonly part: Part; readonly outline: Outline }[];
  /** Where it is parted, from edge to edge; straight for the saw, else for the jigsaw; null when each follows its own outline. */
  readonly between: { readonly points: readonly Point[]; readonly isStraight: boolean } | null;
}

/** How the two are parted, in a few words. */
export function partingWords({ between }: SharedBlank): string {
  if (!between) return 'part them along their own outlines';
  return between.isStraight ? 'saw between them, straight' : 'jigsaw between them';
}
