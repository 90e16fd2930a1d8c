import type { Problem } from '#core/problems';
import { flatDoorParameters } from './parameters.ts';
import { doorOfCell, readCell } from '../front-cell.ts';
import type { HungChoices } from '../hung-door/hung-choices.ts';
import { readFrame } from '../hung-door/frame.ts';
import type { HungDoorParameters } from '../hung-door/types.ts';
import { findMaterial } from '../parts.ts';
import type { FlatDoorParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

type Own = Required<Omit<FlatDoorParameters, 'materials' | keyof HungDoorParameters>>;

/** Every parameter of a flat door with its default filled in, and what follows from the choices alone. */
export type DoorChoices = HungChoices &
  Own & {
    readonly stock: { readonly core: Material; readonly lipping: Material };
    /** Corner blocks were asked for, or the radius needs them. */
    readonly blocks: boolean;
  };

const lockedLipping = 15; // where a lock is let in (joinery B2)
const usualThickness = 18;

/** Fills in the defaults of a flat door (joinery B2); size and gaps are those of its frame when it has one. */
export function chooseDoor(
  parameters: FlatDoorParameters,
  context: BuildContext,
): { readonly choices: DoorChoices; readonly findings: readonly Problem[] } {
  const { stock, findings } = chooseStock(parameters, context);
  const { cell, findings: unknown } = readCell(parameters, context);
  const table = Object.fromEntries(
    flatDoorParameters.filter((info) => info.default !== undefined).map((info) => [info.key, info.default]),
  );
  const given = Object.fromEntries(
    Object.entries(parameters).filter(([, value]) => value !== undefined),
  ) as FlatDoorParameters;
  const { frame, findings: unread } = readFrame(parameters.frame, context, { ...table, ...given });
  const lipping = given.lipping ?? Number(table['lipping']);
  // files from before there was a choice of locks say only how deep theirs goes in
  const lock = given.lock ?? ((given.lockDepth ?? 0) > 0 ? 'mortise-lock' : 'face-latch');
  const letIn = lock === 'mortise-lock' && given.leaf !== 'second';
  const all = {
    ...table,
    width: 0,
    height: 0,
    thickness: stock.core.kind === 'sheet' ? stock.core.thickness : usualThickness,
    hingeLipping: lipping,
    lockLipping: letIn ? Math.max(lipping, lockedLipping) : lipping,
    ...(cell && doorOfCell(cell)),
    ...given,
    ...(frame && frame.sizes),
    lock,
  } as unknown as HungChoices & Own;
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
