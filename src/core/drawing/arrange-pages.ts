import type { Box, Point } from '#core/geometry';
import { drawRectangle, drawText, lettering, resizeDrawing } from './marks.ts';
import { paperMargin, paperSize } from './paper.ts';
import type { Paper, PaperSize } from './paper.ts';
import type { LengthSystem } from '#core/units';
import { formatScale } from './scales.ts';
import { drawStamp } from './stamp.ts';
import { shortenText, textWidth, wrapText } from './text-width.ts';
import type { Drawing, Mark, Page } from './types.ts';

export interface PageOptions {
  /** Printed across every page, as `DO NOT CUT`. */
  readonly stamp?: string;
  /** Only these are stamped, on pages of their own in the order of all; left out: every page is. */
  readonly stamped?: readonly Drawing[];
  /** Unit of the sizes on the drawings; mm when left out. */
  readonly units?: LengthSystem;
  /** Holds words only: no scale and no unit are told. */
  readonly isUnscaled?: boolean;
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
  const { stamp, stamped = drawings, ...plain } = options;
  const sheets = groupDrawings(drawings, paper, stamped);
  return sheets.map(({ landscape, drawings: own, isStamped }, i) => {
    const size = paperSize(paper, landscape);
    let top = size.height - paperMargin - 2;
    const items = own.map((drawing) => {
      const { minX, maxX, minY, maxY } = drawing.bounds;
      const at = { x: (size.width - (maxX - minX)) / 2, y: top - (maxY - minY) };
      top = at.y - between;
      return { drawing, at };
    });
    const frame = framePage(size, {
      title,
      drawings: own,
      number: i + 1,
      count: sheets.length,
      options: isStamped && stamp !== undefined ? { ...plain, stamp } : plain,
    });
    return {
      title: `${title}, page ${i + 1} of ${sheets.length}`,
      ...size,
      items: [...items, { drawing: frame, at: { x: 0, y: 0 } }],
    };
  });
}

interface SheetGroup {
  readonly landscape: boolean;
  readonly isStamped: boolean;
  readonly drawings: readonly Drawing[];
}

function groupDrawings(
  drawings: readonly Drawing[],
  paper: Paper,
  stamped: readonly Drawing[],
): readonly SheetGroup[] {
  const groups: { landscape: boolean; isStamped: boolean; drawings: Drawing[]; used: number }[] = [];
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
    const isStamped = stamped.includes(drawing);
    const last = groups.at(-1);
    const isAlike = last?.landscape === landscape && last.isStamped === isStamped;
    if (last && isAlike && last.used + between + tall <= room.height) {
      last.drawings.push(fitted);
      last.used += between + tall;
    } else groups.push({ landscape, isStamped, drawings: [fitted], used: tall });
  }
  return groups;
}

/** What the frame of a page tells. */
export interface PageContents {
  readonly title: string;
  readonly drawings: readonly Drawing[];
  readonly number: number;
  readonly count: number;
  readonly options: PageOptions;
  /** Stands small under the names of the drawings. */
  readonly remark?: string;
}

/** Frame, title block and stamp of a page. */
export function framePage(size: PaperSize, page: PageContents): Drawing {
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

function drawTitleBlock(frame: Box, page: PageContents): readonly Mark[] {
  const { drawings, number, count, options } = page;
  const { minX: left, maxX: right, minY: foot } = frame;
  const head = foot + titleBlock;
  const split = right - 56;
  const sized = options.isUnscaled ? [] : drawings.filter(({ pictures }) => pictures === undefined);
  return [
    drawRectangle({ ...frame, maxY: head }, 'outline'),
    drawRectangle({ ...frame, minX: split, maxY: head }, 'thin'),
    ...drawTitle({ x: left + 3, y: foot }, split - left - 6, page),
    ...(sized.length === 0 ? [] : drawScale({ x: split + 3, y: foot }, sized, options.units)),
    drawText({ x: right - 3, y: foot + 4.2 }, `${number} of ${count}`, { align: 'end', weight: 'bold' }),
  ];
}

/** Scale and unit; photos have neither, lists of words have no scale. */
function drawScale(at: Point, drawings: readonly Drawing[], units: LengthSystem = 'mm'): readonly Mark[] {
  const { small } = lettering;
  const scaled = drawings.filter(({ isUnscaled }) => isUnscaled !== true).map(({ scale }) => scale);
  const scales = [...new Set(scaled)].sort((a, b) => b - a).map(formatScale);
  const shown = scales.length > 2 ? `${scales[0]} to ${scales.at(-1)}` : scales.join(', ');
  const scale = drawText({ x: at.x, y: at.y + 6.8 }, shortenText(`Scale ${shown}`, small, 32), {
    height: small,
  });
  return [
    ...(scales.length === 0 ? [] : [scale]),
    drawText(
      { x: at.x, y: at.y + (scales.length === 0 ? 4.5 : 2.2) },
      `sizes in ${units === 'inch' ? 'inches' : 'mm'}`,
      {
        ...{ height: small, tone: 'soft' },
      },
    ),
  ];
}

/** Title, names of the drawings and remark on up to three lines: the title smaller and broken where it is long. */
function drawTitle(at: Point, room: number, { title, drawings, remark }: PageContents): readonly Mark[] {
  const { small, usual, fine } = lettering;
  const names = [...new Set(drawings.map((drawing) => drawing.title))].join(' · ');
  const isLong = textWidth(title, usual, 'bold') > room;
  const line = (y: number, text: string, height: number, weight: 'bold' | 'normal' = 'normal'): Mark =>
    drawText({ x: at.x, y: at.y + y }, shortenText(text, height, room, weight), {
      ...{ height, weight, ...(weight === 'normal' && { tone: 'soft' as const }) },
    });
  const rows = isLong ? wrapText(title, small, room / 1.11) : [title];
  const titles = isLong
    ? rows.slice(0, 2).map((text, i) => line(8.4 - i * 3.4, rest(rows, i, text), small, 'bold'))
    : [line(remark === undefined ? 6.4 : 7.6, title, usual, 'bold')];
  if (remark === undefined && !isLong) return [...titles, line(2.2, names, small)];
  const tail = isLong && rows.length > 1 ? [names] : [names, ...(remark === undefined ? [] : [remark])];
  return [...titles, ...tail.map((text, i) => line(tail.length > 1 ? 4.2 - i * 2.8 : 1.6, text, fine))];
}

/** The last line that there is room for takes all that is left, to be shortened. */
function rest(rows: readonly string[], index: number, text: string): string {
  return index === 1 ? rows.slice(1).join(' ') : text;
}
