import type { CellReference } from '../cell-reference.ts';
import type { MaterialId } from '../ids.ts';

export type DrawerCorner =
  'box' | 'through-dovetail' | 'lapped-dovetail' | 'rebate' | 'housed-back' | 'lock-rebate' | 'butt';

/**
 * Parameters of a drawer. Opening: the smallest of three readings each, or that of a cabinet front of the project. Several
 * alike take the openings alike from there on. mm.
 */
export interface DrawerParameters extends CellReference {
  readonly openingWidth?: number;
  readonly openingHeight?: number;
  readonly clearDepth: number;
  /** Lower edge of the opening above the level that the hull behind it was measured from; with a shape of sections. */
  readonly heightAbove?: number;
  /** Largest minus smallest opening width along the depth. */
  readonly openingVariation?: number;
  readonly sideThickness?: number;
  readonly frontThickness?: number;
  readonly backThickness?: number;
  readonly bottomThickness?: number;
  readonly grooveDepth?: number;
  readonly grooveUp?: number;
  readonly runner?: 'metal' | 'side-rail' | 'bottom-notch' | 'bottom';
  readonly runnerLength?: number;
  readonly notch?: number;
  readonly railDepth?: number;
  readonly bottomStyle?: 'captured' | 'slides-under-back';
  readonly corner?: DrawerCorner;
  readonly front?: 'overlay' | 'inset' | 'none';
  readonly overlay?: number;
  readonly insetGap?: number;
  /** How far a front that another piece makes stands into the opening: the box begins behind it. */
  readonly setback?: number;
  readonly falseFrontThickness?: number;
  readonly count?: number;
  readonly materials: {
    readonly box: MaterialId;
    readonly bottom: MaterialId;
    readonly front?: MaterialId;
    readonly runners?: MaterialId;
  };
}
