import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { gluedWith } from '../glue.ts';
import { cabinetFrontParameters } from './parameters.ts';
import { findMaterial } from '../parts.ts';
import type { CabinetFrontParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

export type Cell = 'drawer' | 'door' | 'open';
export type Grain = 'vertical' | 'horizontal';

type Optional = 'materials' | 'width' | 'height' | 'jointLength' | 'grain' | 'heights' | 'cells';

/** Every parameter of a cabinet front with its default filled in. */
export type FrontChoices = Required<Omit<CabinetFrontParameters, Optional>> & {
  readonly width: number | null;
  readonly height: number | null;
  readonly jointLength: number | null;
  readonly grain: Grain | null;
  readonly heights: readonly number[];
  /** Rows from the top, each from left to right; always as many as the grid has. */
  readonly cells: readonly (readonly Cell[])[];
  readonly frame: Material;
  readonly fronted: Material;
  /** Keys the user gave. */
  readonly given: ReadonlySet<string>;
  readonly glue: GlueKind | undefined;
};

/** Fills in the defaults of a cabinet front (joinery B6). */
export function chooseFront(
  parameters: CabinetFrontParameters,
  context: BuildContext,
): { readonly choices: FrontChoices; readonly findings: readonly Problem[] } {
  const { materials } = parameters;
  const frame = findMaterial(context, materials.frame, { for: 'the frame', kind: 'solid' });
  const fronted = findMaterial(context, materials.fronts, { for: 'the fronts', kind: 'either' });
  const table = Object.fromEntries(
    cabinetFrontParameters
      .filter((info) => info.default !== undefined)
      .map((info) => [info.key, info.default]),
  );
  const given = Object.fromEntries(Object.entries(parameters).filter(([, value]) => value !== undefined));
  const rows = parameters.rows ?? (table.rows as number);
  const columns = parameters.columns ?? (table.columns as number);
  const choices = {
    ...table,
    width: null,
    height: null,
    jointLength: null,
    grain: null,
    heights: [],
    frontThickness: fronted.material.kind === 'sheet' ? fronted.material.thickness : 18,
    notch: (parameters.fronts ?? 'overlay') === 'overlay' ? 10 : 0,
    ...given,
    cells: fillCells(parameters.cells ?? [], rows, columns),
    frame: frame.material,
    fronted: fronted.material,
    given: new Set(Object.keys(given)),
    glue: gluedWith(context.settings),
  } as unknown as FrontChoices;
  return { choices, findings: [...frame.findings, ...fronted.findings] };
}

/** Cells not said are drawers. */
function fillCells(cells: readonly (readonly Cell[])[], rows: number, columns: number) {
  const count = (value: number) => (Number.isInteger(value) && value > 0 && value <= 100 ? value : 0);
  return Array.from({ length: count(rows) }, (_, r) =>
    Array.from({ length: count(columns) }, (_, c): Cell => cells[r]?.[c] ?? 'drawer'),
  );
}

/** Grain of what closes a cell: as chosen; else doors up and down and drawers across, all alike when figure runs through. */
export function grainOf(choices: FrontChoices, cell: Cell): Grain {
  if (choices.grain) return choices.grain;
  if (choices.continuous === 'none') return cell === 'door' ? 'vertical' : 'horizontal';
  return choices.cells.some((row) => row.includes('drawer')) ? 'horizontal' : 'vertical';
}
