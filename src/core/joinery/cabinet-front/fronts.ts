import { closedCells, type FrontCell } from './cells.ts';
import { columnLeft, openingTop } from './joinery.ts';
import type { FrontLayout } from './sizes.ts';
import type { FrontSet } from './sets.ts';
import { makePart, placeAt } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part, PartSize } from '../types.ts';

/** Fronts of drawers and doors, one part each: every front is fitted to its own opening. */
export function makeFronts(piece: Piece, layout: FrontLayout, sets: readonly FrontSet[]): readonly Part[] {
  const many = layout.choices.columns > 1;
  return closedCells(piece, layout).map((cell) => {
    const set = sets.find((one) => one.cells.some((other) => other.id === cell.id));
    const index = set?.cells.findIndex((other) => other.id === cell.id) ?? 0;
    const kind = cell.cell === 'door' ? 'Door' : 'Drawer front';
    const where = many ? `row ${cell.row}, column ${cell.column + 1}` : `row ${cell.row}`;
    return makePart(piece, {
      number: Number(cell.id.slice(piece.letter.length)),
      name: `${kind}, ${where}`,
      material: layout.choices.fronted,
      flat: true,
      finished: frontSize(layout, cell),
      working: {
        length: cell.grain === 'horizontal' ? 'front_w' : `f${cell.row}`,
        width: cell.grain === 'horizontal' ? `f${cell.row}` : 'front_w',
        thickness: 'tff',
      },
      faceSide: `face side to the cabin, ${cell.grain === 'horizontal' ? 'face edge' : 'start'} up`,
      ...(set && { matched: { set: set.id, index } }),
      placements: [placeFront(layout, cell)],
      notes: notesOf(layout, cell, set),
    });
  });
}

function frontSize({ book }: FrontLayout, { row, grain }: FrontCell): PartSize {
  const [wide, high] = [book.value('front_w'), book.value(`f${row}`)];
  const thickness = book.value('tff');
  return grain === 'horizontal'
    ? { length: wide, width: high, thickness }
    : { length: high, width: wide, thickness };
}

/** Fronts with upright grain lie with X downwards, so that a stack follows its strip from the top. */
function placeFront(layout: FrontLayout, { row, column, grain }: FrontCell) {
  const { book, choices } = layout;
  const overlay = choices.fronts === 'overlay';
  const beyond = overlay ? book.value('o') : -book.value('g');
  const x = columnLeft(layout, column) - beyond;
  const y = openingTop(layout, row) + beyond;
  const z = overlay ? book.value('tff') : 0;
  return grain === 'horizontal'
    ? placeAt({ x, y, z }, { x: 1, y: 0, z: 0 }, { x: 0, y: -1, z: 0 })
    : placeAt({ x: x + book.value('front_w'), y, z }, { x: 0, y: -1, z: 0 }, { x: -1, y: 0, z: 0 });
}

function notesOf({ choices }: FrontLayout, cell: FrontCell, set: FrontSet | undefined): readonly string[] {
  return [
    `Grain ${cell.grain === 'horizontal' ? 'along the width' : 'up and down'}.`,
    'Cut to its own opening, measured in the finished frame.',
    ...(set ? [`Out of the strip of ${set.id}, in order, neither turned nor flipped.`] : []),
    ...(choices.fronted.kind === 'sheet' ? ['Its edges are seen: lip, veneer or paint them.'] : []),
  ];
}
