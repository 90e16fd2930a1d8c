import type { Part } from '#core/joinery';
import { framePage, roomOnPage, type PageOptions } from './arrange-pages.ts';
import { resizeDrawing } from './marks.ts';
import { paperMargin, paperSize, type Paper, type PaperSize } from './paper.ts';
import { drawPartCell, type CellOptions, type CellShape, type PartCell } from './part-cell.ts';
import { groupSameParts, type PartGroup } from './same-parts.ts';
import type { Drawing, Page } from './types.ts';

/** What part sheets are printed on and say. */
export interface PartPages extends Omit<PageOptions, 'units'>, CellOptions {
  readonly paper: Paper;
  readonly title: string;
  /** Come before the parts, as the piece assembled and pulled apart; those that are narrow enough side by side. */
  readonly first?: readonly Drawing[];
}

const columns = 6; // the grid; a cell takes 2, 3 or all of them
const between = 5; // mm between cells side by side
const under = 3; // mm between cells one above the other

/** In the title block of each sheet, so that no part has to say it again. */
const howToRead =
  'Upper view: the face side, its loop on it, the face edge up. Lower view: from the face edge, face side down.';

/**
 * All parts on as few pages as they can be read on: those made alike in one drawing, plain ones small and side by side, worked
 * ones as large as their work needs.
 */
export function arrangePartPages(parts: readonly Part[], options: PartPages): readonly Page[] {
  const room = roomOnPage(options.paper, false);
  const cells = groupSameParts(parts).map((group) => chooseCell(group, room, options));
  const widthOf = (span: number): number => (room.width + between) * (span / columns) - between;
  const first = (options.first ?? []).map((given) => {
    const drawing = fitToRoom(given, room);
    const wide = drawing.bounds.maxX - drawing.bounds.minX;
    return { drawing, span: wide <= widthOf(3) + 0.01 ? (3 as const) : (6 as const) };
  });
  const sheets = packCells([...first, ...cells], room);
  const size = paperSize(options.paper);
  return sheets.map((sheet, i) => {
    const items = sheet.map(({ drawing, x, top }) => ({
      drawing,
      at: {
        x: paperMargin + 2 + x,
        y: size.height - paperMargin - 2 - top - (drawing.bounds.maxY - drawing.bounds.minY),
      },
    }));
    const drawings = items.map(({ drawing }) => drawing);
    const frame = framePage(size, {
      ...{ title: options.title, drawings, number: i + 1, count: sheets.length, options },
      remark: howToRead,
    });
    return {
      title: `${options.title}, parts, page ${i + 1} of ${sheets.length}`,
      ...size,
      items: [...items, { drawing: frame, at: { x: 0, y: 0 } }],
    };
  });
}

/** The cell that takes least paper of those in which everything can be read; a whole width when there is none. */
function chooseCell(group: PartGroup, room: PaperSize, options: CellOptions): PartCell {
  const widthOf = (span: number): number => (room.width + between) * (span / columns) - between;
  const shapes: readonly CellShape[] = [
    { span: 2, width: widthOf(2), notes: 'below', tall: 34 },
    { span: 3, width: widthOf(3), notes: 'below', tall: 75 },
    { span: 6, width: widthOf(6), notes: 'beside', tall: 80 },
    { span: 6, width: widthOf(6), notes: 'below', tall: 100 },
  ];
  const cells = shapes.map((shape) => drawPartCell(group, shape, options));
  const whole = cells.slice(2).sort((a, b) => heightOf(a.drawing) - heightOf(b.drawing));
  const fitting = cells.filter((cell) => cell.isLegible && heightOf(cell.drawing) <= room.height);
  const area = (cell: PartCell): number => cell.span * (heightOf(cell.drawing) + under);
  const [first] = [...fitting].sort((a, b) => area(a) - area(b));
  if (first) return first;
  const largest = whole[0] ?? (cells[0] as PartCell);
  return { ...largest, drawing: fitToRoom(largest.drawing, room) };
}

function heightOf({ bounds }: Drawing): number {
  return bounds.maxY - bounds.minY;
}

/** What is too large for a page, as a part with more to say than it holds, made smaller, lettering included. */
function fitToRoom(drawing: Drawing, room: PaperSize): Drawing {
  const wide = drawing.bounds.maxX - drawing.bounds.minX;
  const factor = Math.min(1, room.width / wide, room.height / heightOf(drawing));
  return factor < 1 ? resizeDrawing(drawing, factor) : drawing;
}

interface Placed {
  readonly drawing: Drawing;
  /** From the left and from the top of the room, mm. */
  readonly x: number;
  readonly top: number;
}

interface Sheet {
  readonly placed: Placed[];
  /** How far down each column is taken, mm. */
  readonly used: number[];
}

/** Each cell as high as it can go on the first page that has room for it. */
function packCells(
  cells: readonly Pick<PartCell, 'span' | 'drawing'>[],
  room: PaperSize,
): readonly (readonly Placed[])[] {
  const sheets: Sheet[] = [];
  const step = (room.width + between) / columns;
  for (const { span, drawing } of cells) {
    const high = heightOf(drawing);
    const fits = (sheet: Sheet) => {
      const { column, top } = highestPlace(sheet, span);
      return top + high <= room.height + 0.01 ? { sheet, column, top } : null;
    };
    const fresh: Sheet = { placed: [], used: Array.from({ length: columns }, () => 0) };
    const place = sheets.map(fits).find((each) => each !== null) ?? { sheet: fresh, column: 0, top: 0 };
    if (place.sheet === fresh) sheets.push(fresh);
    const spare = span * step - between - (drawing.bounds.maxX - drawing.bounds.minX);
    place.sheet.placed.push({ drawing, x: place.column * step + Math.max(0, spare / 2), top: place.top });
    place.sheet.used.fill(place.top + high + under, place.column, place.column + span);
  }
  return sheets.map(({ placed }) => placed);
}

function highestPlace(sheet: Sheet, span: number): { readonly column: number; readonly top: number } {
  const places = Array.from({ length: columns / span }, (_, i) => {
    const column = i * span;
    return { column, top: Math.max(...sheet.used.slice(column, column + span)) };
  });
  return places.reduce((best, place) => (place.top < best.top - 0.01 ? place : best));
}
