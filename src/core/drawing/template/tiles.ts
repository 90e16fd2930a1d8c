import type { Box } from '#core/geometry';
import { paperMargin, paperSize } from '../paper.ts';
import type { Paper } from '../paper.ts';

/** How a full-size sheet is spread over pages. All in mm of paper. */
export interface Tiling {
  readonly page: { readonly width: number; readonly height: number };
  /** The part of each page that shows the sheet. */
  readonly window: Box;
  readonly rows: number;
  readonly columns: number;
  readonly overlap: number;
}

export interface Tile {
  /** Counted from 1; row 1 at the top, column 1 at the left. */
  readonly row: number;
  readonly column: number;
  /** What of the sheet lies in the window. */
  readonly shows: Box;
}

const overlap = 10; // mm, room for glue and two crosses at each join
export const leftStrip = 8; // mm inside the margin, for the upright check bar
export const bottomStrip = 20; // mm inside the margin, for the level check bar and the lettering

/** Pages needed for a sheet of this size, lying or standing, whichever takes fewer; standing when equal. */
export function tileSheet(size: { readonly width: number; readonly height: number }, paper: Paper): Tiling {
  const [standing, lying] = [false, true].map((landscape) => spread(size, paper, landscape)) as [
    Tiling,
    Tiling,
  ];
  return lying.rows * lying.columns < standing.rows * standing.columns ? lying : standing;
}

function spread(
  size: { readonly width: number; readonly height: number },
  paper: Paper,
  landscape: boolean,
): Tiling {
  const page = paperSize(paper, landscape);
  const window = {
    minX: paperMargin + leftStrip,
    minY: paperMargin + bottomStrip,
    maxX: page.width - paperMargin,
    maxY: page.height - paperMargin,
  };
  const count = (length: number, room: number) =>
    Math.max(1, Math.ceil((length - overlap) / (room - overlap) - 1e-9));
  return {
    page,
    window,
    rows: count(size.height, window.maxY - window.minY),
    columns: count(size.width, window.maxX - window.minX),
    overlap,
  };
}

/** The tiles row by row, for a sheet with these bounds; the sheet is centred on the grid. */
export function listTiles(tiling: Tiling, bounds: Box): readonly Tile[] {
  const { window, rows, columns } = tiling;
  const [w, h] = [window.maxX - window.minX, window.maxY - window.minY];
  const total = { w: columns * (w - overlap) + overlap, h: rows * (h - overlap) + overlap };
  const left = (bounds.minX + bounds.maxX) / 2 - total.w / 2;
  const top = (bounds.minY + bounds.maxY) / 2 + total.h / 2;
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const minX = left + column * (w - overlap);
    const maxY = top - row * (h - overlap);
    return { row: row + 1, column: column + 1, shows: { minX, minY: maxY - h, maxX: minX + w, maxY } };
  });
}
