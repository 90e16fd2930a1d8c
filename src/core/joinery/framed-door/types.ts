import type { HungDoorParameters } from '../hung-door/types.ts';
import type { MaterialId } from '../ids.ts';

/** How rails and stiles of a framed door meet (joinery B3, C3 to C5, C18). */
export type FramedDoorJoint =
  | 'haunched-tenon'
  | 'through-tenon'
  | 'stub-tenon'
  | 'groove-tongue'
  | 'bridle'
  | 'scribed-moulding'
  | 'loose-tenon'
  | 'dowel'
  | 'half-lap';

/** Parameters of a framed door: stiles and rails with panels loose in a groove (joinery B3). mm. */
export interface FramedDoorParameters extends HungDoorParameters {
  readonly thickness?: number;
  readonly stile?: number;
  readonly topRail?: number;
  readonly bottomRail?: number;
  readonly midRails?: number;
  /** Width of mid rails and mid stiles. */
  readonly midRail?: number;
  readonly midStile?: 'auto' | 'none' | 'one';
  /** By the size of the door when left out. */
  readonly joint?: FramedDoorJoint;
  readonly tenon?: number;
  readonly grooveDepth?: number;
  /** Of a solid panel; a sheet is as measured. */
  readonly panelThickness?: number;
  /** Thickness left where a solid panel enters the groove, and how far in from its edge it is reduced. */
  readonly panelEdge?: number;
  readonly panelMargin?: number;
  /** Room to swell left at each side; worked out when left out. */
  readonly panelGap?: number;
  readonly panelGlued?: boolean;
  /** Figure of a solid panel: as the boards come, or leaves of one board opened like a book. */
  readonly panelMatch?: 'plain' | 'book';
  readonly materials: { readonly frame: MaterialId; readonly panel: MaterialId };
}
