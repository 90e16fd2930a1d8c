import { grainOf, type Cell, type Grain } from './choices.ts';
import { frontNumbers } from './frame.ts';
import type { FrontLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { PartId } from '../types.ts';

/** A closed cell of the grid: row from 1 at the top, column from 0 at the left. */
export interface FrontCell {
  readonly row: number;
  readonly column: number;
  readonly cell: Exclude<Cell, 'open'>;
  readonly grain: Grain;
  readonly id: PartId;
}

/** The closed cells in order of their addresses: rows from the top, each from left to right. */
export function closedCells(piece: Piece, { choices }: FrontLayout): readonly FrontCell[] {
  const first = frontNumbers.inner + (choices.columns > 1 ? choices.rows : 0);
  return choices.cells.flatMap((row, r) =>
    row.flatMap((cell, c) => {
      if (cell === 'open') return [];
      const id = partAddress(piece, first + r * choices.columns + c);
      return [{ row: r + 1, column: c, cell, grain: grainOf(choices, cell), id }];
    }),
  );
}
