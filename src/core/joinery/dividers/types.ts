import type { MaterialId } from '../ids.ts';

/**
 * Parameters of dividers: a grid in a locker, for bins of a standard size or in equal cells; where the two sets cross they
 * are halved into each other. mm.
 */
export interface DividersParameters {
  readonly insideWidth: number;
  readonly insideDepth: number;
  readonly height?: number;
  readonly form?: 'bins' | 'cells';
  /** Outside of the rim of a bin, its longer and its shorter side, and its height. */
  readonly binLength?: number;
  readonly binWidth?: number;
  readonly binHeight?: number;
  /** The base of a bin is smaller than its rim, each side. */
  readonly binTaper?: number;
  readonly binWay?: 'auto' | 'long-across' | 'short-across';
  readonly clearance?: number;
  /** Free above the bins, and free in front of them; what is left out is not checked. */
  readonly headroom?: number;
  readonly frontRoom?: number;
  readonly columns?: number;
  readonly rows?: number;
  /** Walls round the grid make a tray of it; how they meet at its corners. */
  readonly walls?: 'none' | 'box' | 'rebate' | 'butt';
  /** Strips round the base of each bin. */
  readonly strips?: boolean;
  readonly materials: { readonly dividers: MaterialId; readonly strips?: MaterialId };
}
