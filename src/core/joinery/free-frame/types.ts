import type { MaterialId } from '../ids.ts';

/** How the members of a free frame meet. */
export type FreeCorner = 'mitre' | 'spline' | 'butt' | 'loose-tenon' | 'half-lap' | 'bridle';

/**
 * Parameters of a free frame: members round any outline without a dent. It fills its shape, or the corners or size entered,
 * less a gap at each side. Members are counted counter-clockwise from the bottom one (of a shape: in its order). mm.
 */
export interface FreeFrameParameters {
  readonly width?: number;
  readonly height?: number;
  /** x and y of each corner in turn, counter-clockwise. */
  readonly corners?: readonly number[];
  readonly gap?: number;
  readonly gaps?: readonly number[];
  readonly memberWidth?: number;
  /** The width of each member in order, where they differ. */
  readonly widths?: readonly number[];
  readonly thickness?: number;
  readonly joint?: FreeCorner;
  /** Which member runs through at a corner that is not mitred. */
  readonly through?: 'upright' | 'level' | 'round';
  /** How far a spline or tenon goes into each member. */
  readonly jointDepth?: number;
  readonly jointThickness?: number;
  readonly materials: { readonly frame: MaterialId };
}
