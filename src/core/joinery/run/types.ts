import type { CabinetFrontParameters } from '../cabinet-front/types.ts';
import type { CarcaseParameters } from '../carcase/types.ts';
import type { CountertopParameters } from '../countertop/types.ts';
import type { DrawerParameters } from '../drawer/types.ts';
import type { MaterialId } from '../ids.ts';

type OfFront =
  | 'width'
  | 'height'
  | 'columns'
  | 'rows'
  | 'cells'
  | 'grading'
  | 'step'
  | 'ratio'
  | 'heights'
  | 'stileWidth'
  | 'topRail'
  | 'midRail'
  | 'bottomRail'
  | 'thickness'
  | 'joint'
  | 'fronts'
  | 'gap'
  | 'overlay'
  | 'notch'
  | 'continuous';
type OfCarcase = 'foot' | 'start' | 'clearance' | 'load' | 'obstacles';
type OfTop = 'overhang' | 'radius' | 'lipping' | 'cutouts' | 'cutoutRadius' | 'bodyDepth' | 'fiddleHeight';

/**
 * Parameters of a run: one front over several bays, a carcase behind each, drawers and doors in its openings, shelves and a
 * top, all sharing their sizes. The hull comes from a shape of sections, or from ordinates entered. mm.
 */
export interface RunParameters
  extends
    Pick<CabinetFrontParameters, OfFront>,
    Pick<CarcaseParameters, OfCarcase>,
    Pick<CountertopParameters, OfTop>,
    Pick<DrawerParameters, 'corner' | 'runner' | 'bottomStyle'> {
  readonly hullHeights?: readonly number[];
  readonly hullLeft?: readonly number[];
  readonly hullRight?: readonly number[];
  readonly doorShelf?: boolean;
  readonly doors?: 'lipped' | 'plain';
  readonly top?: boolean;
  /** Ends of the top that stand free. */
  readonly openEnds?: 'none' | 'left' | 'right' | 'both';
  readonly materials: {
    readonly frame: MaterialId;
    readonly fronts: MaterialId;
    readonly panel: MaterialId;
    readonly box: MaterialId;
    readonly bottom: MaterialId;
    readonly top?: MaterialId;
  };
}
