import type { Piece } from '#core/joinery';

type Cells = readonly (readonly string[])[];
const kinds = ['drawer', 'door', 'open'];

/** The grid of a front as given, grown or cut to its rows and columns; what is missing is a drawer. */
export function cellsOf(piece: Piece, cells: Cells | undefined): Cells {
  const front = piece.kind === 'cabinet-front' ? piece.parameters : null;
  const rows = front?.rows ?? cells?.length ?? 1;
  const columns = front?.columns ?? cells?.[0]?.length ?? 1;
  return Array.from({ length: rows }, (_, y) =>
    Array.from({ length: columns }, (__, x) => cells?.[y]?.[x] ?? 'drawer'),
  );
}

/** The grid with one cell turned to the next kind. */
export function turnCell(cells: Cells, row: number, column: number): Cells {
  return cells.map((line, y) =>
    line.map((cell, x) =>
      y === row && x === column ? (kinds[(kinds.indexOf(cell) + 1) % kinds.length] ?? cell) : cell,
    ),
  );
}
