import type { Box, Point } from '#core/geometry';
import { drawLine, drawRectangle, drawText, lettering } from '../marks.ts';
import type { Paper } from '../paper.ts';
import { paperMargin } from '../paper.ts';
import { drawStamp } from '../stamp.ts';
import { drawCheckBar, drawCross } from '../symbols.ts';
import { shortenText } from '../text-width.ts';
import type { Drawing, Mark, Page } from '../types.ts';
import { bottomStrip, leftStrip, listTiles, tileSheet } from './tiles.ts';
import type { Tile, Tiling } from './tiles.ts';

/** Something drawn at full size, and what its pages say. */
export interface FullSize {
  /** What the template is of, as `C4`. */
  readonly of: string;
  readonly drawing: Drawing;
  /** Lettering for the part of the drawing that one page shows. */
  readonly letter: (shows: Box) => readonly Mark[];
  /** The legend below each page: the first row is continued by the number of the page. */
  readonly rows: readonly string[];
  /** Printed across every page. */
  readonly stamp?: string;
}

/**
 * A full-size drawing spread over pages that overlap by 10 mm, with crosses to join them by, a 100 mm bar each way on every
 * page, and a plan of the pages.
 */
export function drawFullSize(full: FullSize, paper: Paper): readonly Page[] {
  const { drawing } = full;
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const tiling = tileSheet({ width: maxX - minX, height: maxY - minY }, paper);
  const tiles = listTiles(tiling, drawing.bounds);
  return tiles.map((tile, i) => {
    const { window, page } = tiling;
    const at = { x: window.minX + minX - tile.shows.minX, y: window.minY + minY - tile.shows.minY };
    const frame = drawFrame({ full, tiling, tile, number: i + 1, tiles });
    return {
      title: `${full.of} template, page ${i + 1} of ${tiles.length}`,
      width: page.width,
      height: page.height,
      items: [
        { drawing: { ...drawing, marks: [...drawing.marks, ...full.letter(tile.shows)] }, at, clip: window },
        { drawing: frame, at: { x: 0, y: 0 } },
      ],
    };
  });
}

interface PageContext {
  readonly full: FullSize;
  readonly tiling: Tiling;
  readonly tile: Tile;
  readonly number: number;
  readonly tiles: readonly Tile[];
}

function drawFrame(context: PageContext): Drawing {
  const { tiling, full } = context;
  const { page, window } = tiling;
  const marks: Mark[] = [
    drawRectangle(window, 'thin'),
    ...drawJoins(context),
    ...drawCheckBar({ x: window.minX, y: paperMargin + bottomStrip - 5 }, 'across', '100 mm'),
    ...drawCheckBar({ x: paperMargin + leftStrip - 4, y: window.minY + 2 }, 'up', '100 mm'),
    ...drawLegend(context),
    ...drawPlan(context),
    ...(full.stamp === undefined ? [] : drawStamp(full.stamp, window)),
  ];
  return {
    title: 'frame',
    bounds: { minX: 0, minY: 0, maxX: page.width, maxY: page.height },
    scale: 1,
    marks,
  };
}

function drawLegend({ full, tiling, tile, number, tiles }: PageContext): readonly Mark[] {
  const at = (row: number): Point => ({ x: paperMargin, y: paperMargin + 8.6 - row * 4.1 });
  const room = tiling.page.width - 2 * paperMargin - planRoom - 4;
  const place = tiles.length > 1 ? ` · row ${tile.row}, col ${tile.column}` : '';
  const [first = '', ...rest] = full.rows;
  const rows = [`${first} · page ${number} of ${tiles.length}${place}`, ...rest];
  return rows.map((row, i) =>
    drawText(at(i), shortenText(row, i === 0 ? lettering.small : lettering.fine, room), {
      height: i === 0 ? lettering.small : lettering.fine,
      weight: i === 0 ? 'bold' : 'normal',
    }),
  );
}

const planRoom = 34; // mm of paper for the plan of the pages

/** A small plan of all pages with this one dark. */
function drawPlan({ tiling, tile, tiles }: PageContext): readonly Mark[] {
  if (tiles.length === 1) return [];
  const { page, rows, columns, window } = tiling;
  const shape = (window.maxX - window.minX) / (window.maxY - window.minY);
  const high = Math.min((bottomStrip - 4) / rows, planRoom / columns / shape);
  const wide = high * shape;
  const right = page.width - paperMargin;
  const top = paperMargin + bottomStrip - 3;
  return tiles.map((t) => {
    const maxX = right - (columns - t.column) * wide;
    const maxY = top - (t.row - 1) * high;
    const box = { minX: maxX - wide, maxX, minY: maxY - high, maxY };
    return drawRectangle(box, 'thin', t === tile ? 'ink' : 'none');
  });
}

/** Where this page meets its neighbours: a join line in the middle of the overlap, crosses on it, and the neighbour's name. */
function drawJoins({ tiling, tile }: PageContext): readonly Mark[] {
  const { window, rows, columns, overlap } = tiling;
  const half = overlap / 2;
  const name = (row: number, column: number) => `join to row ${row}, col ${column}`;
  const joins: Mark[] = [];
  const key = (row: number, column: number, way: string) => `${row}.${column}${way}`;
  if (tile.column > 1)
    joins.push(
      ...uprightJoin(window, window.minX + half, {
        text: name(tile.row, tile.column - 1),
        key: key(tile.row, tile.column - 1, 'r'),
        inward: 1,
      }),
    );
  if (tile.column < columns)
    joins.push(
      ...uprightJoin(window, window.maxX - half, {
        text: name(tile.row, tile.column + 1),
        key: key(tile.row, tile.column, 'r'),
        inward: -1,
      }),
    );
  if (tile.row > 1)
    joins.push(
      ...levelJoin(window, window.maxY - half, {
        text: name(tile.row - 1, tile.column),
        key: key(tile.row - 1, tile.column, 'b'),
        inward: -1,
      }),
    );
  if (tile.row < rows)
    joins.push(
      ...levelJoin(window, window.minY + half, {
        text: name(tile.row + 1, tile.column),
        key: key(tile.row, tile.column, 'b'),
        inward: 1,
      }),
    );
  return joins;
}

interface JoinText {
  readonly text: string;
  readonly key: string;
  /** Direction from the join into the page: 1 or -1. */
  readonly inward: 1 | -1;
}

const shares = [0.15, 0.85]; // of the window, where the crosses of a join stand

function uprightJoin(window: Box, x: number, { text, key, inward }: JoinText): readonly Mark[] {
  const [low, high] = [window.minY, window.maxY];
  const crosses = shares.map((share, i) => ({
    at: { x, y: low + (high - low) * share },
    name: `${key}${i + 1}`,
  }));
  return [
    drawLine(
      [
        { x, y: low },
        { x, y: high },
      ],
      'guide',
    ),
    ...crosses.flatMap(({ at, name }) => [
      ...drawCross(at, 4, 'outline'),
      drawText({ x: at.x + inward * 1.2, y: at.y + 1.2 }, name, {
        height: lettering.fine,
        align: inward > 0 ? 'start' : 'end',
      }),
    ]),
    drawText({ x: x + (inward > 0 ? 3.2 : -1.4), y: (low + high) / 2 }, text, {
      height: lettering.fine,
      align: 'middle',
      turn: Math.PI / 2,
      tone: 'soft',
    }),
  ];
}

function levelJoin(window: Box, y: number, { text, key, inward }: JoinText): readonly Mark[] {
  const [low, high] = [window.minX, window.maxX];
  const crosses = shares.map((share, i) => ({
    at: { x: low + (high - low) * share, y },
    name: `${key}${i + 1}`,
  }));
  return [
    drawLine(
      [
        { x: low, y },
        { x: high, y },
      ],
      'guide',
    ),
    ...crosses.flatMap(({ at, name }) => [
      ...drawCross(at, 4, 'outline'),
      drawText({ x: at.x + 1.2, y: at.y + (inward > 0 ? 1.2 : -1.2 - lettering.fine) }, name, {
        height: lettering.fine,
      }),
    ]),
    drawText({ x: (low + high) / 2, y: y + (inward > 0 ? 1.4 : -1.4 - lettering.fine) }, text, {
      height: lettering.fine,
      align: 'middle',
      tone: 'soft',
    }),
  ];
}
