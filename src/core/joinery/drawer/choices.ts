import { drawerParameters } from './parameters.ts';
import type { CellReference } from '../cell-reference.ts';
import { cellsAlike, readCell, type FrontOpeningCell } from '../front-cell.ts';
import { findMaterial } from '../parts.ts';
import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { gluedWith } from '../glue.ts';
import type { DrawerParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Materials of a drawer. */
export interface DrawerStock {
  readonly box: Material;
  readonly bottom: Material;
  readonly front: Material;
  readonly runners: Material;
}

/** Every parameter of a drawer with its default filled in. */
export type DrawerChoices = Required<
  Omit<DrawerParameters, 'materials' | 'runnerLength' | 'grooveUp' | keyof CellReference>
> & {
  /** The openings of a front that it and its like are in, the first its own; empty without a front. */
  readonly cells: readonly FrontOpeningCell[];
  readonly runnerLength: number | null;
  readonly grooveUp: number | null;
  readonly stock: DrawerStock;
  /** Keys the user gave. */
  readonly given: ReadonlySet<string>;
  readonly glue: GlueKind | undefined;
};

const sheetOr = (material: Material, other: number) =>
  material.kind === 'sheet' ? material.thickness : other;

/** Fills in the defaults of a drawer (joinery B5); thicknesses of sheet are those measured. */
export function chooseDrawer(
  parameters: DrawerParameters,
  context: BuildContext,
): { readonly choices: DrawerChoices; readonly findings: readonly Problem[] } {
  const { stock, findings } = chooseStock(parameters, context);
  const table = Object.fromEntries(
    drawerParameters.filter((info) => info.default !== undefined).map((info) => [info.key, info.default]),
  );
  const given = Object.fromEntries(Object.entries(parameters).filter(([, value]) => value !== undefined));
  const side = parameters.sideThickness ?? sheetOr(stock.box, 12);
  const usual = {
    ...table,
    sideThickness: side,
    frontThickness: sheetOr(stock.box, 12),
    backThickness: sheetOr(stock.box, 12),
    bottomThickness: sheetOr(stock.bottom, 6),
    falseFrontThickness: sheetOr(stock.front, 18),
    // half the side at most, and 5 of it left (joinery B5, C0.2)
    grooveDepth: Math.max(1, Math.min(6, side / 2, side - 5)),
  };
  const { cell, findings: unread } = readCell(parameters, context);
  const cells = cell ? cellsAlike(cell, parameters.count ?? 1) : [];
  const choices = {
    ...usual,
    ...(cell && ofCell(cell)),
    runnerLength: null,
    grooveUp: null,
    ...given,
    stock,
    cells,
    given: new Set(Object.keys(given)),
    glue: gluedWith(context.settings),
  } as unknown as DrawerChoices;
  return { choices, findings: [...findings, ...unread] };
}

/** What a drawer takes from its opening; the front makes its false front. */
function ofCell({ width, height, thickness, notch, inset }: FrontOpeningCell) {
  return {
    openingWidth: width,
    openingHeight: height,
    railDepth: thickness,
    front: 'none',
    ...(notch > 0 && { notch }),
    ...(inset > 0 && { setback: inset }),
  };
}

function chooseStock(parameters: DrawerParameters, context: BuildContext) {
  const { materials } = parameters;
  const box = findMaterial(context, materials.box, { for: 'the box', kind: 'either' });
  const bottom = findMaterial(context, materials.bottom, { for: 'the bottom', kind: 'sheet' });
  const front = findMaterial(context, materials.front ?? materials.box, {
    for: 'the false front',
    kind: 'either',
  });
  const runners = findMaterial(context, materials.runners ?? materials.box, {
    for: 'the runners',
    kind: 'solid',
  });
  const wantsRunners = parameters.runner !== 'metal';
  return {
    stock: {
      box: box.material,
      bottom: bottom.material,
      front: front.material,
      runners: runners.material,
    },
    findings: [
      ...box.findings,
      ...bottom.findings,
      ...(materials.front && parameters.front !== 'none' ? front.findings : []),
      ...(wantsRunners && (materials.runners || runners.material.kind === 'sheet') ? runners.findings : []),
    ],
  };
}
