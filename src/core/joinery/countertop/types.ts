import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a countertop (joinery B9): over an outline in plan whose first side is the front, corners entered, or a
 * rectangle. Sides count counter-clockwise from above, 1 the front. mm.
 */
export interface CountertopParameters {
  readonly width?: number;
  readonly depth?: number;
  /** x and y of each corner of what it covers, the front first. */
  readonly corners?: readonly number[];
  readonly overhang?: number;
  /** Sides that are open and overhang; the others stand against walls, less the gap. */
  readonly openSides?: readonly number[];
  readonly wallGap?: number;
  /** Radius of outer corners between two open sides; or of each corner in order, the first where side 1 begins. */
  readonly radius?: number;
  readonly radii?: readonly number[];
  readonly thickness?: number;
  /** Solid edge of the open sides; 0 for none. */
  readonly lipping?: number;
  /** Middle x and y from the lower left, body width and depth, flange width and depth of each appliance, in turn. */
  readonly cutouts?: readonly number[];
  readonly cutoutRadius?: number;
  readonly cutoutClearance?: number;
  /** How far bodies hang below the top. */
  readonly bodyDepth?: number;
  readonly doubler?: number;
  readonly fiddleSides?: readonly number[];
  readonly fiddleHeight?: number;
  readonly fiddleThickness?: number;
  readonly cornerOpen?: number;
  /** Where it is held from below: places along the front from its lower left. */
  readonly supports?: readonly number[];
  /** Rails under its front and its back edge carry it along. */
  readonly railed?: boolean;
  readonly laminate?: boolean;
  readonly materials: {
    readonly top: MaterialId;
    readonly lipping?: MaterialId;
    readonly doubler?: MaterialId;
  };
}
