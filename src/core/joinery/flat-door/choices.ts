import type { Problem } from '#core/problems';
import { flatDoorParameters } from './parameters.ts';
import type { CellReference } from '../cell-reference.ts';
import { doorOfCell, readCell, type FrontOpeningCell } from '../front-cell.ts';
import { readFrame, type FrameForDoor } from '../hung-door/frame.ts';
import { findMaterial } from '../parts.ts';
import type { FlatDoorParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every parameter of a flat door with its default filled in, and what follows from the choices alone. */
export type DoorChoices = Required<Omit<FlatDoorParameters, 'materials' | 'frame' | keyof CellReference>> & {
  readonly stock: { readonly core: Material; readonly lipping: Material };
  /** The frame it hangs in; null when its size was entered. */
  readonly frame: FrameForDoor | null;
  /** The opening of a front that it closes; null without one. */
  readonly cell: FrontOpeningCell | null;
  /** Corner blocks were asked for, or the radius needs them. */
  readonly blocks: boolean;
  /** Keys the user gave. */
  readonly given: ReadonlySet<string>;
};

const lockedLipping = 15; // where a lock is let in (joinery B2)
const usualThickness = 18;

/** Fills in the defaults of a flat door (joinery B2); size and gaps are those of its frame when it has one. */
export function chooseDoor(
  parameters: FlatDoorParameters,
  context: BuildContext,
): { readonly choices: DoorChoices; readonly findings: readonly Problem[] } {
  const { stock, findings } = chooseStock(parameters, context);
  const { frame, findings: unread } = readFrame(parameters.frame, context);
  const { cell, findings: unknown } = readCell(parameters, context);
  const table = Object.fromEntries(
    flatDoorParameters.filter((info) => info.default !== undefined).map((info) => [info.key, info.default]),
  );
  const given = Object.fromEntries(
    Object.entries(parameters).filter(([, value]) => value !== undefined),
  ) as FlatDoorParameters;
  const lipping = given.lipping ?? Number(table['lipping']);
  const all = {
    ...table,
    width: 0,
    height: 0,
    thickness: stock.core.kind === 'sheet' ? stock.core.thickness : usualThickness,
    hingeLipping: lipping,
    lockLipping: (given.lockDepth ?? 0) > 0 ? Math.max(lipping, lockedLipping) : lipping,
    ...(cell && doorOfCell(cell)),
    ...given,
    ...(frame && frame.sizes),
  } as unknown as Required<FlatDoorParameters>;
  const least = Math.min(all.lipping, all.hingeLipping, all.lockLipping);
  const choices = {
    ...all,
    stock,
    frame,
    cell,
    blocks: all.lipJoint === 'corner-block' || all.cornerRadius > least,
    given: new Set(Object.keys(given)),
  };
  return { choices, findings: [...findings, ...unread, ...unknown] };
}

function chooseStock({ materials }: FlatDoorParameters, context: BuildContext) {
  const core = findMaterial(context, materials.core, { for: 'the door', kind: 'sheet' });
  const lipping = findMaterial(context, materials.lipping, { for: 'the lippings', kind: 'solid' });
  return {
    stock: { core: core.material, lipping: lipping.material },
    findings: [...core.findings, ...lipping.findings],
  };
}
