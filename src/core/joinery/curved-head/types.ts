import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a curved door head: laminated over a mould, or sawn from a wide board (joinery B17). Span and rise are of
 * its inner face between the springings; both come from a measured opening with a bowed head when it has one. mm.
 */
export interface CurvedHeadParameters {
  readonly span?: number;
  readonly rise?: number;
  /** From the face to the back, as the lining of the door. */
  readonly depth?: number;
  readonly method?: 'laminated' | 'sawn';
  readonly plies?: number;
  readonly plyThickness?: number;
  /** Of a sawn head, seen from the front. */
  readonly faceWidth?: number;
  readonly segments?: 'auto' | 'one' | 'two';
  readonly materials: { readonly head: MaterialId; readonly mould: MaterialId };
}
