import type { MaterialId } from '../ids.ts';

/**
 * Parameters of a free panel: anything flat that no other kind makes. It fills its shape, or the corners or the size entered,
 * less a gap at each side. Sides are counted counter-clockwise from the bottom one (of a shape: in its own order). mm.
 */
export interface FreePanelParameters {
  readonly width?: number;
  readonly height?: number;
  /** x and y of each corner in turn, counter-clockwise. */
  readonly corners?: readonly number[];
  readonly gap?: number;
  /** The gap of each side in order, where they differ. */
  readonly gaps?: readonly number[];
  readonly radius?: number;
  /** The radius of each corner in order, where they differ; the first is where the first side begins. */
  readonly radii?: readonly number[];
  /** x, y and diameter of each round hole in turn, from the lower left of the panel. */
  readonly holes?: readonly number[];
  /** x, y, width and height of each cut-out in turn, from the lower left of the panel. */
  readonly cutouts?: readonly number[];
  readonly cutoutRadius?: number;
  /** Numbers of the sides that get a solid edge, and of those scribed on site. */
  readonly lippedSides?: readonly number[];
  readonly scribedSides?: readonly number[];
  readonly lipping?: number;
  /** Left on scribed sides; of the survey when left out. */
  readonly scribe?: number;
  /** Of the sheet as measured when left out. */
  readonly thickness?: number;
  readonly grain?: 'up' | 'across' | 'any';
  /** Figure of a solid panel: as the boards come, or leaves of one board opened like a book. */
  readonly match?: 'plain' | 'book';
  readonly fixed?: 'glued' | 'screwed' | 'loose';
  readonly materials: { readonly panel: MaterialId; readonly lipping?: MaterialId };
}
