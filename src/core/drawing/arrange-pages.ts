import type { Box } from '#core/geometry';
import { drawRectangle, drawText, lettering, resizeDrawing } from './marks.ts';
import { paperMargin, paperSize } from './paper.ts';
import type { Paper, PaperSize } from './paper.ts';
import { formatScale } from './scales.ts';
import { drawStamp } from './stamp.ts';
import { shortenText } from './text-width.ts';
import type { Drawing, Mark, Page } from './types.ts';

export interface PageOptions {
  /** Printed across every page, as `DO NOT CUT`. */
  readonly stamp?: string;
}

const titleBlock = 12; // mm high, along the foot of the page
const between = 6; // mm between two drawings on one page

/** Room for a drawing on a page with its title block, mm: give it to the functions that draw. */
export function roomOnPage(paper: Paper, landscape: boolean): PaperSize {
  const { width, height } = paperSize(paper, landscape);
  return { width: width - 2 * paperMargin - 4, height: height - 2 * paperMargin - titleBlock - 4 };
}

/**
 * Drawings on as many pages as they need, in order, lying ones on lying pages, each page with a frame and title block. A drawing
 * larger than the page is made smaller, lettering included, and the title block then says so.
 */
export function arrangePages(
  drawings: readonly Drawing[],
  paper: Paper,
  title: string,
  options: PageOptions = {},
): readonly Page[] {
  const sheets = groupDrawings(drawings, paper);
  return sheets.map(({ landscape, drawings: own }, i) => {
    const size = paperSize(paper, landscape);
    let top = size.height - paperMargin - 2;
    const items = own.map((drawing) => {
      const { minX, maxX, minY, maxY } = drawing.bounds;
      const at = { x: (size.width - (maxX - minX)) / 2, y: top - (maxY - minY) };
      top = at.y - between;
      return { drawing, at };
    });
    const frame = drawPageFrame(size, { title, drawings: own, number: i + 1, count: sheets.length, options });
    return {
      title: `${title}, page ${i + 1} of ${sheets.length}`,
      ...size,
      items: [...items, { drawing: frame, at: { x: 0, y: 0 } }],
    };
  });
}

interface SheetGroup {
  readonly landscape: boolean;
  readonly drawings: readonly Drawing[];
}

function groupDrawings(drawings: readonly Drawing[], paper: Paper): readonly SheetGroup[] {
  const groups: { landscape: boolean; drawings: Drawing[]; used: number }[] = [];
  for (const drawing of drawings) {
    const { minX, maxX, minY, maxY } = drawing.bounds;
    const [w, h] = [maxX - minX, maxY - minY];
    const shrink = (landscape: boolean) => {
      const room = roomOnPage(paper, landscape);
      return Math.min(1, room.width / w, room.height / h);
    };
    const landscape = shrink(true) > shrink(false);
    const room = roomOnPage(paper, landscape);
    const factor = shrink(landscape);
    const fitted = factor < 1 - 1e-9 ? resizeDrawing(drawing, factor) : drawing;
    const tall = h * factor;
    const last = groups.at(-1);
    if (last && last.landscape === landscape && last.used + between + tall <= room.height) {
      last.drawings.push(fitted);
      last.used += between + tall;
    } else groups.push({ landscape, drawings: [fitted], used: tall });
  }
  return groups;
}

interface PageContents {
  readonly title: string;
  readonly drawings: readonly Drawing[];
  readonly number: number;
  readonly count: number;
  readonly options: PageOptions;
}

function drawPageFrame(size: PaperSize, page: PageContents): Drawing {
  const { stamp } = page.options;
  const frame = {
    minX: paperMargin,
    minY: paperMargin,
    maxX: size.width - paperMargin,
    maxY: size.height - paperMargin,
  };
  const marks: Mark[] = [
    drawRectangle(frame, 'outline'),
    ...drawTitleBlock(frame, page),
    ...(stamp === undefined ? [] : drawStamp(stamp, { ...frame, minY: frame.minY + titleBlock })),
  ];
  return {
    title: 'frame',
    bounds: { minX: 0, minY: 0, maxX: size.width, maxY: size.height },
    scale: 1,
    marks,
  };
}

function drawTitleBlock(frame: Box, { title, drawings, number, count }: PageContents): readonly Mark[] {
  const { minX: left, maxX: right, minY: foot } = frame;
  const head = foot + titleBlock;
  const split = right - 56;
  const scales = [...new Set(drawings.map((drawing) => formatScale(drawing.scale)))].join(', ');
  const names = [...new Set(drawings.map((drawing) => drawing.title))].join(' · ');
  const room = split - left - 6;
  const { small, usual } = lettering;
  return [
    drawRectangle({ ...frame, maxY: head }, 'outline'),
    drawRectangle({ ...frame, minX: split, maxY: head }, 'thin'),
    drawText({ x: left + 3, y: foot + 6.4 }, shortenText(title, usual, room, 'bold'), { weight: 'bold' }),
    drawText({ x: left + 3, y: foot + 2.2 }, shortenText(names, small, room), {
      height: small,
      tone: 'soft',
    }),
    drawText({ x: split + 3, y: foot + 6.8 }, shortenText(`Scale ${scales}`, small, 30), { height: small }),
    drawText({ x: split + 3, y: foot + 2.2 }, 'sizes in mm', { height: small, tone: 'soft' }),
    drawText({ x: right - 3, y: foot + 4.2 }, `${number} of ${count}`, { align: 'end', weight: 'bold' }),
  ];
}
