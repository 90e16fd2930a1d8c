import { textWidth, wrapText, type Drawing, type Mark } from '#core/drawing';
import {
  listAfterSaw,
  listSawOrder,
  type PlannedGroup,
  type SawLine,
  type Understanding,
} from '#core/pipeline';
import type { LengthSystem } from '#core/units';

/** Heights of the lettering of a list, mm, the first that there is room for: it is read at arm's length at the saw. */
export const orderHeights = [4.5, 4, 3.5, 3] as const;

/** Lines, heading and the room between columns, in heights of the lettering. */
const leading = 1.75;
const heading = 3.4;
const gap = 3;
const smallest = 3;
const foot = 2; // mm

/** The paper a list is for: its width and height in mm, the height of the lettering, and the unit of the figures. */
export interface OrderPaper {
  readonly room: { readonly width: number; readonly height: number };
  readonly height: number;
  readonly units: LengthSystem;
}

/** What the order of cuts of a diagram is called. */
export function orderTitle(index: number): string {
  return `order of cuts, diagram ${index + 1}`;
}

/**
 * The passes of the saw of one diagram, numbered as they follow each other, in columns down the room given, and what is done
 * after them; on as many drawings as it takes, none where nothing is sawn piece by piece. The figure is where the fence stands.
 */
export function drawSawOrder(
  understanding: Understanding,
  { group, plan }: PlannedGroup,
  index: number,
  paper: OrderPaper,
): readonly Drawing[] {
  const layout = plan.layouts[index];
  const lines = layout ? listSawOrder(group, layout, paper.units) : [];
  if (!layout || lines.length === 0) return [];
  const { room, height } = paper;
  const widths = widthsOf(lines, height);
  const column = widths.number + widths.label + widths.words + widths.fence + gap * height;
  const columns = Math.max(1, Math.floor((room.width + gap * height) / column));
  const after = listAfterSaw(understanding, group, layout).flatMap((words) =>
    wrapText(`Then ${words.replace(/ {2}/, ', ')}.`, height, room.width),
  );
  const most = Math.floor((room.height - foot) / (leading * height) - heading / leading) - after.length - 1;
  const perDrawing = Math.max(1, most) * columns;
  const count = Math.ceil(lines.length / perDrawing);
  return Array.from({ length: count }, (_, at) =>
    drawColumns({
      title: `Saw in this order: ${group.title}, diagram ${index + 1}${at > 0 ? ', continued' : ''}`,
      name: orderTitle(index),
      lines: lines.slice(at * perDrawing, (at + 1) * perDrawing),
      first: at * perDrawing + 1,
      after: at === count - 1 ? after : [],
      ...{ widths, column, columns, width: room.width, height },
    }),
  );
}

/** One drawing of a list: its lines in columns, the first with this number. */
interface Columns {
  readonly title: string;
  readonly name: string;
  readonly lines: readonly SawLine[];
  readonly first: number;
  readonly after: readonly string[];
  readonly widths: Widths;
  readonly column: number;
  readonly columns: number;
  readonly width: number;
  readonly height: number;
}

function drawColumns(list: Columns): Drawing {
  const { lines, after, widths, height } = list;
  const rows = Math.ceil(lines.length / list.columns);
  const lineHeight = leading * height;
  const top = -heading * height;
  const marks = lines.flatMap((line, at) => {
    const x = Math.floor(at / rows) * list.column;
    const y = top - ((at % rows) + 1) * lineHeight;
    return drawLine(line, list.first + at, { x, y, widths, height });
  });
  const notes = after.map((words, at) =>
    text({ x: 0, y: top - (rows + at + 1.4) * lineHeight }, words, height),
  );
  const fence = 'the fence: from the low edge in hand to the near side of the kerf';
  const head: readonly Mark[] = [
    { ...text({ x: 0, y: -1.5 * height }, list.title, height), weight: 'bold' },
    { ...text({ x: 0, y: -3.2 * height }, fence, smallest), tone: 'soft' },
  ];
  const minY = top - (rows + after.length + (after.length > 0 ? 0.4 : 0)) * lineHeight - foot;
  return {
    ...{ title: list.name, scale: 1, isUnscaled: true },
    bounds: { minX: 0, minY, maxX: list.width, maxY: 0 },
    marks: [...head, ...marks, ...notes],
  };
}

interface Widths {
  readonly number: number;
  readonly label: number;
  readonly words: number;
  readonly fence: number;
}

function widthsOf(lines: readonly SawLine[], height: number): Widths {
  const widest = (of: (line: SawLine) => string, weight: 'bold' | 'normal'): number =>
    Math.max(...lines.map((line) => textWidth(of(line), height, weight))) + 0.7 * height;
  return {
    number: textWidth(`${lines.length}.`, height) + 0.7 * height,
    label: widest(({ label }) => label, 'bold'),
    words: widest(({ words }) => words, 'normal'),
    fence: widest(({ fence }) => fence, 'bold'),
  };
}

function drawLine(
  { label, words, fence }: SawLine,
  number: number,
  {
    x,
    y,
    widths,
    height,
  }: { readonly x: number; readonly y: number; readonly widths: Widths; readonly height: number },
): readonly Mark[] {
  const from = x + widths.number;
  const end = from + widths.label + widths.words + widths.fence;
  return [
    { ...text({ x, y }, `${number}.`, height), tone: 'soft' },
    { ...text({ x: from, y }, label, height), weight: 'bold' },
    text({ x: from + widths.label, y }, words, height),
    { ...text({ x: end, y }, fence, height), weight: 'bold', align: 'end' },
  ];
}

function text(
  at: { readonly x: number; readonly y: number },
  words: string,
  height: number,
): Extract<Mark, { kind: 'text' }> {
  return { kind: 'text', at, text: words, height, align: 'start' };
}
