import type { Part } from '#core/joinery';

import type { Blank } from './types.ts';

/** A rectangle asked from the stock: x along the grain, whatever the part calls its length. */
export interface Need {
  /** Its id in the cutting job. */
  readonly id: string;
  readonly count: number;
  readonly length: number;
  readonly width: number;
  /** What the blank needs, and what is left of it when planed. */
  readonly thickness: number;
  readonly finished: { readonly width: number; readonly thickness: number };
  readonly turn: boolean;
  readonly set?: string;
  /** Two of a pair side by side: wanted from one board, but cut singly where none is wide enough. */
  readonly isPair?: boolean;
  /** Two shapes head to tail: cut singly where that fits nothing. */
  readonly isInterlocked?: boolean;
  readonly parts: Blank['parts'];
  /** What it is called in a sentence, as `B3 Box front`. */
  readonly title: string;
}

/** Shown beside a set that has to be given up, and the single blanks in its place. */
export interface NeedSet {
  readonly together: Need;
  readonly apart: readonly Need[];
  /** What is wanted beside it as long as it is not given up. */
  readonly rest?: readonly Need[];
}

/** How many blanks one copy of a part takes: more than one when it is glued up. */
export function blanksOf({ staves }: Part): number {
  return staves ? staves.count / (staves.leaves ?? 1) : 1;
}

/** A part on its own as a blank, or each stave of one that is glued up; across the grain its length and width change places. */
export function singleNeed(part: Part): Need {
  const { length, width } = alongGrain(part, part.rough);
  const staves = blanksOf(part);
  return {
    id: part.id,
    count: Math.round(part.quantity * staves),
    length,
    width,
    thickness: part.rough.thickness,
    finished: {
      width: part.staves?.width ?? alongGrain(part, part.cut).width,
      thickness: part.cut.thickness,
    },
    turn: part.turn || part.grain === 'any',
    parts: [{ part: part.id, x: 0, y: 0, length, width }],
    title: `${part.id} ${part.name}${part.staves ? ', stave' : ''}`,
  };
}

/** A size with its length along the grain of the stock. */
export function alongGrain(
  part: Part,
  size: { readonly length: number; readonly width: number },
): { readonly length: number; readonly width: number } {
  return part.grain === 'along-width'
    ? { length: size.width, width: size.length }
    : { length: size.length, width: size.width };
}
