import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a shelf with a fiddle (joinery B8): to a size entered, to the hull at a height of measured sections, or
 * to an outline in plan whose first side is the front. mm.
 */
export interface ShelfParameters {
  readonly length?: number;
  /** Overall, a fiddle on its front edge included. */
  readonly depth?: number;
  /** Of its underside, from the level that the hull was measured from. */
  readonly height?: number;
  /** Where its left end is, from the first section. */
  readonly start?: number;
  /** Clear of the hull, or of the walls of an outline. */
  readonly clearance?: number;
  readonly thickness?: number;
  /** On the front edge, over it in a rebate of the fiddle, or on top. */
  readonly fiddle?: 'edge' | 'rebate' | 'top' | 'none';
  readonly fiddleHeight?: number;
  readonly fiddleThickness?: number;
  readonly cornerOpen?: number;
  readonly endFiddles?: 'none' | 'left' | 'right' | 'both';
  readonly backHeld?: 'cleat' | 'tabs' | 'no';
  readonly cleat?: number;
  /** On the whole shelf, kg. */
  readonly load?: number;
  /** What stands on it: its width across the fiddle, its centre of gravity and its height. */
  readonly itemWidth?: number;
  readonly itemCentre?: number;
  readonly itemHeight?: number;
  /** Heel and roll together, degrees. */
  readonly angle?: number;
  /** Clear height above the shelf. */
  readonly room?: number;
  readonly materials: {
    readonly shelf: MaterialId;
    readonly fiddle?: MaterialId;
    readonly cleats?: MaterialId;
  };
}
