import type { GlueKind } from '#core/materials';
import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import { gluedWith } from '../glue.ts';
import { fingersProud } from '../joints/fingers.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { dividersParameters } from './parameters.ts';
import type { DividersParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of dividers with its default filled in. */
export type DividersChoices = Omit<DividersParameters, 'materials'> &
  Required<Omit<DividersParameters, 'materials' | 'headroom' | 'frontRoom'>> & {
    readonly stock: { readonly dividers: Material; readonly strips: Material };
    readonly glue: GlueKind | undefined;
    readonly given: ReadonlySet<string>;
  };

/** Dividers with their sizes worked out: how many cells each way, how many dividers, and where. */
export interface DividersLayout {
  readonly choices: DividersChoices;
  readonly book: WorkingBook;
  readonly columns: number;
  readonly rows: number;
  /** Near face of each divider from the left wall, and from the front. */
  readonly atX: readonly number[];
  readonly atZ: readonly number[];
}

const rule = 'joinery B15';
const mostCells = 60; // a guard against a slip of the keys

/** Fills in the defaults of dividers. */
export function chooseDividers(
  parameters: DividersParameters,
  context: BuildContext,
): { readonly choices: DividersChoices; readonly findings: readonly Problem[] } {
  const { values, given } = fillDefaults(parameters, dividersParameters);
  const dividers = findMaterial(context, parameters.materials.dividers, {
    for: 'the dividers',
    kind: 'sheet',
  });
  const wanted = parameters.materials.strips ?? context.materials.find(({ kind }) => kind === 'solid')?.id;
  const stripped = values['strips'] === true && values['form'] === 'bins';
  const strips = stripped
    ? findMaterial(context, wanted ?? '', { for: 'the strips', kind: 'solid' })
    : { material: dividers.material, findings: [] };
  const choices = {
    ...(values as unknown as DividersChoices),
    strips: stripped,
    stock: { dividers: dividers.material, strips: strips.material },
    glue: gluedWith(context.settings),
    given,
  };
  return { choices, findings: [...dividers.findings, ...strips.findings] };
}

const usualThickness = 9;

/** Works out the grid (joinery B15); no columns or rows when a bin does not go in. */
export function workOutDividers(choices: DividersChoices): DividersLayout {
  const book = openWorkingBook();
  const { given, stock } = choices;
  const table = { infos: dividersParameters, values: choices, given };
  putParameters(book, table, { insideWidth: 'Wi', insideDepth: 'Di', height: 'h' });
  const measured = stock.dividers.kind === 'sheet';
  const t = measured ? stock.dividers.thickness : usualThickness;
  book.put('t', t, 'divider, thickness', measured ? `measured: ${stock.dividers.name}` : rule);
  book.put('fit', 1, 'smaller than the locker, in all', 'common practice, no source');
  sizeWalls(choices, book);
  const { columns, rows } = choices.form === 'bins' ? sizeBins(choices, book) : sizeCells(choices, book);
  const inX = places(book, 'x', choices.form === 'bins' ? closes(book, 'x', columns) : columns - 1);
  const inZ = places(book, 'z', choices.form === 'bins' ? closes(book, 'z', rows) : rows - 1);
  const [deep, wide] = choices.walls === 'none' ? ['Di - fit', 'Wi - fit'] : ['in_z + 2*let', 'in_x + 2*let'];
  if (inX.length > 0) book.work('L_back', deep, 'dividers front to back, length', rule);
  if (inZ.length > 0) book.work('L_across', wide, 'dividers across, length', rule);
  if (inX.length > 0 && inZ.length > 0) {
    book.work('slot_h', 'h/2 + 0.5', 'slot where they cross, depth', rule);
    book.work('slot_w', 't + 0.2', 'slot where they cross, width', rule);
  }
  if (choices.strips && columns > 0 && rows > 0) sizeStrips(choices, book);
  return { choices, book, columns, rows, atX: inX, atZ: inZ };
}

/** The room for the grid: the locker, or what the walls of a tray leave of it. */
function sizeWalls({ walls }: DividersChoices, book: WorkingBook): void {
  const less = walls === 'none' ? '' : ' - fit - 2*t';
  book.work('in_x', `Wi${less}`, 'room for the grid, across', rule);
  book.work('in_z', `Di${less}`, 'room for the grid, front to back', rule);
  if (walls === 'none') return;
  book.work('let', 'down(max(0, min(t/3, t - 5)), 0.5)', 'dividers go into the walls by', 'joinery C7, C0.2');
  book.work('wall_x', 'Wi - fit', 'walls in front and behind, length', rule);
  if (walls === 'rebate') book.work('lip', 'max(5, t/3)', 'lip over the end of a side wall', 'joinery C8');
  const inset = { box: '0', rebate: 'lip', butt: 't' }[walls];
  book.work('wall_inset', inset, 'side walls begin behind the front by', rule);
  book.work('wall_z', 'Di - fit - 2*wall_inset', 'walls left and right, length', rule);
  if (walls === 'box') {
    const [more, say] = [2 * fingersProud, `length as cut: fingers ${markSize(fingersProud)} proud`];
    book.work('wall_x_cut', `wall_x + ${more}`, `walls in front and behind, ${say}`, 'joinery C11');
    book.work('wall_z_cut', `wall_z + ${more}`, `walls left and right, ${say}`, 'joinery C11');
  }
}

function sizeBins(choices: DividersChoices, book: WorkingBook): { columns: number; rows: number } {
  const table = { infos: dividersParameters, values: choices, given: choices.given };
  putParameters(book, table, { binLength: 'bl', binWidth: 'bs', binHeight: 'bh', clearance: 'c' });
  const count = (name: string, inside: 'in_x' | 'in_z', bin: 'bl' | 'bs', label: string) =>
    book.work(name, `max(0, floor((${inside} + t)/(${bin} + c + t)))`, label, rule, 'count');
  const shortAcross = count('n_short_across', 'in_x', 'bs', 'bins across, shorter side across');
  const longDeep = count('n_long_deep', 'in_z', 'bl', 'bins front to back, longer side that way');
  const longAcross = count('n_long_across', 'in_x', 'bl', 'bins across, longer side across');
  const shortDeep = count('n_short_deep', 'in_z', 'bs', 'bins front to back, shorter side that way');
  const short =
    choices.binWay === 'short-across' ||
    (choices.binWay === 'auto' && shortAcross * longDeep >= longAcross * shortDeep);
  const columns = short ? shortAcross : longAcross;
  const rows = short ? longDeep : shortDeep;
  book.work('bx', short ? 'bs' : 'bl', 'bin, side across', rule);
  book.work('bz', short ? 'bl' : 'bs', 'bin, side front to back', rule);
  book.work('cell_x', 'bx + c', 'cell, width', rule);
  book.work('cell_z', 'bz + c', 'cell, depth', rule);
  const [n, m] = short ? ['n_short_across', 'n_long_deep'] : ['n_long_across', 'n_short_deep'];
  book.work('left_x', `in_x - ${n}*(bx + c) - (${n} - 1)*t`, 'left over across', rule);
  book.work('left_z', `in_z - ${m}*(bz + c) - (${m} - 1)*t`, 'left over front to back', rule);
  return { columns: Math.min(columns, mostCells), rows: Math.min(rows, mostCells) };
}

/** Dividers beside bins: between them, and one behind the last when what is left over has room for it. */
function closes(book: WorkingBook, axis: 'x' | 'z', cells: number): number {
  if (cells === 0) return 0;
  const room = book.value(`left_${axis}`) - book.value('t');
  return room >= 2 ? cells : cells - 1;
}

function sizeCells(choices: DividersChoices, book: WorkingBook): { columns: number; rows: number } {
  const table = { infos: dividersParameters, values: choices, given: choices.given };
  putParameters(book, table, { columns: 'n_x', rows: 'n_z' }, 'count');
  const columns = Math.max(1, choices.columns);
  const rows = Math.max(1, choices.rows);
  book.work('k_x', 'max(1, n_x) - 1', 'dividers front to back', rule, 'count');
  book.work('k_z', 'max(1, n_z) - 1', 'dividers across', rule, 'count');
  book.work('cell_x', '(in_x - k_x*t)/(k_x + 1)', 'cell, width', rule);
  book.work('cell_z', '(in_z - k_z*t)/(k_z + 1)', 'cell, depth', rule);
  return { columns, rows };
}

function places(book: WorkingBook, axis: 'x' | 'z', count: number): readonly number[] {
  const from = axis === 'x' ? 'left wall' : 'front';
  return Array.from({ length: count }, (_, i) =>
    book.work(
      `pos_${axis}_${i + 1}`,
      `cell_${axis} + ${i}*(cell_${axis} + t)`,
      `divider ${i + 1} from the ${from}`,
      rule,
    ),
  );
}

function sizeStrips(choices: DividersChoices, book: WorkingBook): void {
  putParameters(
    book,
    { infos: dividersParameters, values: choices, given: choices.given },
    { binTaper: 'taper' },
  );
  book.put('strip', 12, 'strip, width and thickness', rule);
  book.work('base_x', 'bx - 2*taper', 'base of a bin, across', rule);
  book.work('base_z', 'bz - 2*taper', 'base of a bin, front to back', rule);
  book.work('strip_room', 'taper + c/2 - 1', 'room for a strip beside the base', rule);
  book.work('strip_z', 'base_z - 2*strip', 'strips left and right, length', rule);
}
