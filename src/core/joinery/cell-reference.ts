import type { PieceId } from './ids.ts';

/** Which opening of a cabinet front a drawer or door belongs to; row and column count from 1, at the top left. */
export interface CellReference {
  readonly cabinetFront?: PieceId;
  readonly row?: number;
  readonly column?: number;
}
