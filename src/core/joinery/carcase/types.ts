import type { MaterialId } from '../ids.ts';
import type { EndOnFace } from '../joints/joint-kinds.ts';

/**
 * Parameters of a carcase against the hull: two ends shaped to it, shelves, cleats and top rails behind a front (joinery B7).
 * The hull comes from a shape of sections, or from ordinates entered; heights count from the same level. mm.
 */
export interface CarcaseParameters {
  /** Over the outside of both ends; of the sections measured when left out. */
  readonly width?: number;
  readonly height?: number;
  /** The foot of the ends above the level that the hull was measured from. */
  readonly foot?: number;
  /** Where the left end stands, from the first section. */
  readonly start?: number;
  readonly heights?: readonly number[];
  readonly left?: readonly number[];
  readonly right?: readonly number[];
  readonly clearance?: number;
  /** Of the front that stands before it; 0 for none. */
  readonly frontThickness?: number;
  readonly thickness?: number;
  readonly shelfThickness?: number;
  /** Undersides of the shelves, from the same level as the hull. */
  readonly shelves?: readonly number[];
  /** How the shelves stand on the ends. */
  readonly joint?: EndOnFace;
  /** How deep housed shelves go into the ends. */
  readonly housing?: number;
  readonly cleats?: boolean;
  readonly cleat?: number;
  readonly railWidth?: number;
  /** How the top rails meet the ends. */
  readonly railJoint?: 'rebate' | Exclude<EndOnFace, 'housing'>;
  readonly shelfBack?: 'square' | 'bevelled';
  readonly endBack?: 'square' | 'bevelled';
  /** Depth from and to, height from and to of each thing in the way, in turn. */
  readonly obstacles?: readonly number[];
  readonly vents?: number;
  readonly ventDiameter?: number;
  /** On each shelf, kg. */
  readonly load?: number;
  readonly materials: {
    readonly panel: MaterialId;
    readonly shelf?: MaterialId;
    readonly cleats?: MaterialId;
  };
}
