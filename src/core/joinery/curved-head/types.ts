import type { MaterialId } from '../ids.ts';

/** Square to the curve on the jambs' ends, let into their faces, stood in a step of their tops, or lapped over them. */
export type HeadSpringing = 'butt' | 'housed' | 'rebated' | 'halved';

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
  /** How it meets the jambs at the springings. */
  readonly springing?: HeadSpringing;
  /** From the springings to the foot of the jambs; left out: the jambs are made elsewhere. */
  readonly jambLength?: number;
  readonly jambThickness?: number;
  /** How deep it goes into the jambs; left out: as usual for its joint. */
  readonly jointDepth?: number;
  /** Jamb left above the head where it is housed. */
  readonly horn?: number;
  readonly materials: { readonly head: MaterialId; readonly mould: MaterialId };
}
