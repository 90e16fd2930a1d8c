import type { Point } from '#core/geometry';
import { drawLine, drawRectangle, drawText, lettering, moveMark, resizeDrawing } from './marks.ts';
import { textWidth, wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

/** One line of a printed checklist. */
export interface ChecklistRow {
  readonly text: string;
  readonly where: string;
  /** Beside the blanks, as `mm · steel tape`. */
  readonly note: string;
  /** Numbers to be written; 0: only a box to tick. */
  readonly blanks: number;
  /** Room for a second look. */
  readonly again: boolean;
  readonly isDone: boolean;
  /** What is known already, for the blanks in their order. */
  readonly values: readonly string[];
  readonly sketch: Drawing | null;
}

/** What is measured in one place. */
export interface ChecklistBlock {
  readonly title: string;
  readonly subtitle: string;
  readonly rows: readonly ChecklistRow[];
}

/** Thumb-sized, mm. */
const box = 11;
const blank = { width: 21, height: 10, gap: 1.5 } as const;
const sketchRoom = { left: 14, width: 24, height: 17 } as const;
const textLeft = 41;
const perRow = 4;
const rowGap = 3;
const line = { text: 4.6, where: 3.6 } as const;
const heading = 13;

/** A checklist to be printed and filled in: a drawing for each line, the heading of its block with the first. `width` in mm of paper. */
export function drawChecklist({ title, subtitle, rows }: ChecklistBlock, width: number): readonly Drawing[] {
  return rows.map((row, at) => {
    const { marks, height } = drawRow(row, width);
    const top = at === 0 ? height + heading : height;
    const head =
      at === 0
        ? [
            drawText({ x: 0, y: height + 6 }, title, { height: lettering.usual + 0.5, weight: 'bold' }),
            drawText({ x: 0, y: height + 1.8 }, subtitle, { height: lettering.small, tone: 'soft' }),
          ]
        : [];
    const bounds = { minX: 0, minY: -rowGap, maxX: width, maxY: top };
    return { title, bounds, scale: 1, isUnscaled: true, marks: [...head, ...marks] };
  });
}

interface Row {
  readonly marks: readonly Mark[];
  readonly height: number;
}

/** A row from its foot up: y 0 is its lower edge. */
function drawRow(row: ChecklistRow, width: number): Row {
  const blanks = blanksOf(row);
  const right = width - blanks.width;
  const room = Math.max(30, right - textLeft - 2);
  const texts = wrapText(row.text, lettering.usual, room);
  const wheres = wrapText(row.where, lettering.small, room);
  const noteRows = row.note === '' ? 0 : 1;
  const tall = texts.length * line.text + (wheres.length + noteRows) * line.where + 1;
  const height = Math.max(box + 1, tall, blanks.height, row.sketch ? sketchRoom.height + 1 : 0);
  const words = [
    ...texts.map((text) => ({ text, size: lettering.usual, step: line.text, tone: 'ink' as const })),
    ...wheres.map((text) => ({ text, size: lettering.small, step: line.where, tone: 'ink' as const })),
    ...(noteRows > 0
      ? [{ text: row.note, size: lettering.small, step: line.where, tone: 'soft' as const }]
      : []),
  ];
  let y = height;
  const lines = words.map(({ text, size, step, tone }, at): Mark => {
    y -= step;
    const weight = at < texts.length ? 'bold' : 'normal';
    return drawText({ x: textLeft, y: y + 0.6 }, text, { height: size, tone, weight });
  });
  return {
    height,
    marks: [
      drawRectangle({ minX: 0, minY: height - box, maxX: box, maxY: height }, 'outline'),
      ...(row.isDone ? [drawTick({ x: 0, y: height - box })] : []),
      ...(row.sketch ? drawSketch(row.sketch, height) : []),
      ...lines,
      ...drawBlanks(row, right, height),
      drawLine(
        [
          { x: 0, y: -rowGap / 2 },
          { x: width, y: -rowGap / 2 },
        ],
        'thin',
      ),
    ],
  };
}

function drawTick({ x, y }: Point): Mark {
  const at = (dx: number, dy: number): Point => ({ x: x + dx * box, y: y + dy * box });
  return drawLine([at(0.2, 0.5), at(0.42, 0.25), at(0.82, 0.8)], 'cut');
}

function drawSketch(sketch: Drawing, top: number): readonly Mark[] {
  const { minX, maxX, minY, maxY } = sketch.bounds;
  const factor = Math.min(1, sketchRoom.width / (maxX - minX), sketchRoom.height / (maxY - minY));
  const small = resizeDrawing(sketch, factor);
  const dx = sketchRoom.left + (sketchRoom.width - (maxX - minX) * factor) / 2 - small.bounds.minX;
  return small.marks.map((mark) => moveMark(mark, dx, top - small.bounds.maxY));
}

interface Blanks {
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
}

/** How the blanks of a line lie: one has its repeat beside it, a few below them; long lists are read once. */
function blanksOf({ blanks, again }: ChecklistRow): Blanks {
  const columns = blanks === 1 && again ? 2 : Math.min(blanks, perRow);
  const first = Math.ceil(blanks / perRow);
  const rows = blanks > 1 && blanks <= perRow && again ? 2 * first : first;
  return {
    columns,
    rows,
    width: Math.max(0, columns * (blank.width + blank.gap) - blank.gap),
    height: rows * (blank.height + blank.gap),
  };
}

function drawBlanks(row: ChecklistRow, left: number, top: number): readonly Mark[] {
  const { columns, rows } = blanksOf(row);
  const count =
    row.blanks === 1 && row.again
      ? 2
      : Math.min(row.blanks * (rows > 1 && row.blanks <= perRow ? 2 : 1), columns * rows);
  return Array.from({ length: count }, (_, at) => at).flatMap((at): readonly Mark[] => {
    const x = left + (at % columns) * (blank.width + blank.gap);
    const y = top - blank.height - Math.floor(at / columns) * (blank.height + blank.gap);
    const isAgain = at >= row.blanks;
    const value = row.values[at];
    const outline = drawRectangle(
      { minX: x, minY: y, maxX: x + blank.width, maxY: y + blank.height },
      isAgain ? 'hidden' : 'outline',
    );
    const style = { height: lettering.fine, tone: 'soft' } as const;
    const label = isAgain ? [drawText({ x: x + 1, y: y + blank.height - 2.6 }, 'again', style)] : [];
    if (value === undefined) return [outline, ...label];
    const size = Math.min(
      lettering.usual,
      (lettering.usual * (blank.width - 2)) / Math.max(1, textWidth(value, lettering.usual)),
    );
    const middle = { x: x + blank.width / 2, y: y + 2.6 };
    return [outline, ...label, drawText(middle, value, { height: size, align: 'middle', tone: 'soft' })];
  });
}
