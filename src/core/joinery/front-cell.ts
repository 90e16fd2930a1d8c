import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import type { CellReference } from './cell-reference.ts';
import type { PieceId } from './ids.ts';
import type { ParameterInfo } from './piece-types.ts';
import type { BuildContext, BuiltPiece } from './types.ts';

/** An opening of a cabinet front, read from its working. mm. */
export interface FrontOpeningCell {
  readonly built: BuiltPiece;
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly height: number;
  /** Its lower left corner in the frame of the front. */
  readonly at: Point;
  /** What closes it, gap or overlay counted. */
  readonly closed: { readonly width: number; readonly height: number };
  /** Gap round what closes it; null where it overlays. */
  readonly gap: number | null;
  /** How far its front stands into it; 0 where it overlays or is open. */
  readonly inset: number;
  readonly thickness: number;
  readonly notch: number;
}

/** The rows of a parameter table that name an opening of a front. */
export const cellRows: readonly ParameterInfo[] = [
  {
    key: 'cabinetFront',
    label: 'In the front',
    help: 'A cabinet front of this project: the sizes of its opening are taken; one entered, as measured in the finished frame, goes before.',
    type: 'piece',
    group: 'Opening',
    pieceKind: 'cabinet-front',
    source: 'joinery B6',
  },
  ...(['row', 'column'] as const).map((key): ParameterInfo => ({
    key,
    label: key === 'row' ? 'Row, from the top' : 'Column, from the left',
    help: '',
    type: 'whole',
    group: 'Opening',
    default: 1,
    min: 1,
    max: 10,
    when: { key: 'cabinetFront', given: true },
    source: 'joinery B6',
  })),
];

/** The opening that a piece belongs to; null when it names no front, with a `stop` when that has no such opening. */
export function readCell(
  { cabinetFront: front, row = 1, column = 1 }: CellReference,
  context: BuildContext,
): { readonly cell: FrontOpeningCell | null; readonly findings: readonly Problem[] } {
  if (front === undefined) return { cell: null, findings: [] };
  const built = context.built?.find((one) => one.piece === front);
  if (!built) return refuse('front-missing', `The cabinet front ${front} is not there.`);
  const title = `${built.letter} ${built.name}`;
  if (built.kind !== 'cabinet-front') return refuse('front-unfit', `${title} is no cabinet front.`);
  if (built.parts.length === 0)
    return refuse('front-unbuilt', `${title} cannot be made as it stands, so it has no openings.`);
  const cell = cellOf(built, row, column);
  return cell
    ? { cell, findings: [] }
    : refuse('cell-missing', `${title} has no opening in row ${row}, column ${column}.`);
}

/** An opening of a built front by row and column from 1; null when it has none there. */
export function cellOf(built: BuiltPiece, row: number, column: number): FrontOpeningCell | null {
  const values = new Map(built.working.map((step) => [step.name, step.value]));
  const v = (name: string) => values.get(name) ?? 0;
  const whole = Number.isInteger(row) && Number.isInteger(column) && row >= 1 && column >= 1;
  if (!whole || row > v('n') || column > v('m')) return null;
  const heights = Array.from({ length: row }, (_, i) => v(`h${i + 1}`));
  const above = heights.reduce((sum, height) => sum + height, 0);
  return {
    ...{ built, row, column, width: v('wo'), height: v(`h${row}`) },
    at: {
      x: v('ws') + (column - 1) * (v('wo') + v('ws')),
      y: v('H') - v('wt') - (row - 1) * v('wm') - above,
    },
    closed: { width: v('front_w'), height: v(`f${row}`) },
    gap: values.get('g') ?? null,
    inset: values.has('g') ? v('tff') : 0,
    thickness: v('T'),
    notch: v('notch'),
  };
}

/** Size and, of an inset front, gaps of a door for an opening, as the door's own parameters. */
export function doorOfCell({ closed, gap }: FrontOpeningCell): Readonly<Record<string, number>> {
  return { ...closed, ...(gap !== null && { gapSide: gap, gapTop: gap, gapBottom: gap }) };
}

/** The givers of a door: the door frame it hangs in and the front whose opening it closes. */
export function giversOfDoor(parameters: CellReference & { readonly frame?: PieceId }): readonly PieceId[] {
  return [parameters.frame, parameters.cabinetFront].flatMap((id) => id ?? []);
}

/** Openings alike from this one on, down its column and then the next ones; at most so many. */
export function cellsAlike(first: FrontOpeningCell, count: number): readonly FrontOpeningCell[] {
  const rows = first.built.working.find(({ name }) => name === 'n')?.value ?? 0;
  const columns = first.built.working.find(({ name }) => name === 'm')?.value ?? 0;
  const found: FrontOpeningCell[] = [];
  for (let column = first.column; column <= columns; column++) {
    for (let row = column === first.column ? first.row : 1; row <= rows; row++) {
      const cell = cellOf(first.built, row, column);
      if (cell && Math.abs(cell.height - first.height) < 0.6 && found.length < count) found.push(cell);
    }
  }
  return found;
}

function refuse(
  code: string,
  message: string,
): { readonly cell: null; readonly findings: readonly Problem[] } {
  const remedy = 'Choose a cabinet front of this project and an opening it has, or enter the sizes.';
  return { cell: null, findings: [{ severity: 'stop', code, message, remedy, source: 'joinery B6' }] };
}
