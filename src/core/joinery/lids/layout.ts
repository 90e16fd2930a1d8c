import type { Point } from '#core/geometry';
import type { Aperture } from './aperture.ts';
import type { LidsParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { WorkingBook } from '../working.ts';

/** Every parameter of lids with its default filled in. */
export interface LidsChoices extends Required<
  Omit<LidsParameters, 'materials' | 'lids' | 'length' | 'width'>
> {
  readonly lids?: number;
  readonly aperture: Aperture;
  readonly measured: string | null;
  readonly given: ReadonlySet<string>;
  readonly stock: { readonly lids: Material; readonly cleats: Material };
}

/** A lid as it lies, seen from above in the frame of the piece, and its lower left. */
export interface LaidLid {
  readonly corners: readonly Point[];
  readonly left: number;
  readonly foot: number;
}

/** Lids with their sizes worked out. */
export interface LidsLayout {
  readonly choices: LidsChoices;
  readonly book: WorkingBook;
  readonly lids: readonly LaidLid[];
  /** Middles of the cross bearers along the row. */
  readonly bearers: readonly number[];
}
