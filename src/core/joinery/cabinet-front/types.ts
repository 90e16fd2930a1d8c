import type { MaterialId } from '../ids.ts';

/** Parameters of a cabinet front: a face frame with a grid of openings, and what closes each. mm. */
export interface CabinetFrontParameters {
  readonly width?: number;
  readonly height?: number;
  /** Gap all round in the opening it is fitted to; or wood left on the outer stiles for scribing. */
  readonly fittingGap?: number;
  readonly scribe?: number;
  readonly columns?: number;
  readonly rows?: number;
  readonly stileWidth?: number;
  readonly topRail?: number;
  readonly midRail?: number;
  readonly bottomRail?: number;
  readonly thickness?: number;
  readonly grading?: 'equal' | 'arithmetic' | 'geometric' | 'given';
  readonly step?: number;
  readonly ratio?: number;
  readonly heights?: readonly number[];
  readonly joint?: 'loose-tenon' | 'stub-tenon' | 'half-lap' | 'dowel' | 'butt';
  readonly jointLength?: number;
  readonly fronts?: 'inset' | 'overlay';
  readonly gap?: number;
  readonly overlay?: number;
  readonly frontThickness?: number;
  /** What closes the openings: rows from top to bottom, each with its columns from left to right. */
  readonly cells?: readonly (readonly ('drawer' | 'door' | 'open')[])[];
  readonly grain?: 'vertical' | 'horizontal';
  readonly continuous?: 'none' | 'tight' | 'true';
  readonly kerf?: number;
  readonly notch?: number;
  readonly materials: { readonly frame: MaterialId; readonly fronts: MaterialId };
}
