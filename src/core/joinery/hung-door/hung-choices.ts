import type { CellReference } from '../cell-reference.ts';
import type { FrontOpeningCell } from '../front-cell.ts';
import type { FrameForDoor } from './frame.ts';
import type { HungDoorParameters } from './types.ts';

type MayBeLeftOut = 'lockHeight' | 'lockBackset' | 'lockDepth';

/** What a hung door's choices hold besides its own; of two doors that meet `width` is that of both. */
export interface HungChoices
  extends
    Required<Omit<HungDoorParameters, 'frame' | MayBeLeftOut | keyof CellReference>>,
    Pick<HungDoorParameters, MayBeLeftOut> {
  readonly thickness: number;
  /** The frame it hangs in; null when its size was entered. */
  readonly frame: FrameForDoor | null;
  /** The opening of a front that it closes; null without one. */
  readonly cell: FrontOpeningCell | null;
  readonly given: ReadonlySet<string>;
}
