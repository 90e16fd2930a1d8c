import type { Box, Point } from '#core/geometry';
import { drawLine, drawText, lettering } from './marks.ts';
import { paperMargin, paperSize } from './paper.ts';
import type { Paper } from './paper.ts';
import { drawStamp } from './stamp.ts';
import { drawArrow, drawEdgeMark, drawFaceMark, drawGrainArrow } from './symbols.ts';
import { shortenText, textWidth, wrapText } from './text-width.ts';
import type { Mark, Page } from './types.ts';

/** What one label says (joinery E8). Empty texts leave their line out. */
export interface LabelText {
  readonly job: string;
  readonly address: string;
  readonly name: string;
  /** Finished length × width × thickness. */
  readonly size: string;
  /** Which side is the face, as `face side to the saloon`. */
  readonly faceSide: string;
  readonly seenFrom: string;
  /**
   * Where up in the boat is, on the part lying face side up with its start end at the left (its y runs down then);
   * null when the part lies flat.
   */
  readonly up: 'up' | 'down' | 'left' | 'right' | null;
  readonly grain: 'along' | 'across' | 'any';
  /** Edges to be scribed with their amounts, as `far edge 12`. */
  readonly scribes: readonly string[];
  /** Joint at each end or edge, as `start: housing 7 deep`. */
  readonly joints: readonly string[];
  /** Where it comes from, as `ply-1 · strip B, 3rd`. */
  readonly stock: string;
  readonly next: string;
}

export interface LabelOptions {
  /** Printed across every label, as `DO NOT CUT`. */
  readonly stamp?: string;
}

const columns = 2;
const rows = 7;

/** Sheets of labels, two by seven, with cut lines between; no page when there is no label. */
export function drawLabels(
  labels: readonly LabelText[],
  paper: Paper,
  options: LabelOptions = {},
): readonly Page[] {
  const { width, height } = paperSize(paper);
  const perPage = columns * rows;
  const count = Math.ceil(labels.length / perPage);
  return Array.from({ length: count }, (_, page) => {
    const here = labels.slice(page * perPage, (page + 1) * perPage);
    const cells = here.map((label, i) => drawLabel(label, cellBox(i, paper), options));
    const bounds = { minX: 0, minY: 0, maxX: width, maxY: height };
    const foot = drawText({ x: width / 2, y: 4.5 }, `Labels, page ${page + 1} of ${count}`, {
      height: lettering.fine,
      align: 'middle',
      tone: 'soft',
    });
    const marks = [...cells.flat(), ...drawCutLines(paper), foot];
    const title = `Labels, page ${page + 1} of ${count}`;
    return {
      title,
      width,
      height,
      items: [{ drawing: { title, bounds, scale: 1, marks }, at: { x: 0, y: 0 } }],
    };
  });
}

function cellBox(index: number, paper: Paper): Box {
  const { width, height } = paperSize(paper);
  const [w, h] = [(width - 2 * paperMargin) / columns, (height - 2 * paperMargin) / rows];
  const [column, row] = [index % columns, Math.floor(index / columns)];
  const [minX, maxY] = [paperMargin + column * w, height - paperMargin - row * h];
  return { minX, maxX: minX + w, minY: maxY - h, maxY };
}

function drawCutLines(paper: Paper): readonly Mark[] {
  const { width, height } = paperSize(paper);
  const [w, h] = [(width - 2 * paperMargin) / columns, (height - 2 * paperMargin) / rows];
  const upright = Array.from({ length: columns + 1 }, (_, i) => paperMargin + i * w).map((x) =>
    drawLine(
      [
        { x, y: paperMargin },
        { x, y: height - paperMargin },
      ],
      'guide',
    ),
  );
  const level = Array.from({ length: rows + 1 }, (_, i) => paperMargin + i * h).map((y) =>
    drawLine(
      [
        { x: paperMargin, y },
        { x: width - paperMargin, y },
      ],
      'guide',
    ),
  );
  return [...upright, ...level];
}

const symbolRoom = 24; // mm at the right of a label for its arrows and marks
const plain = 2.2; // mm, height of the smaller lines
const lineStep = 3.5;

function drawLabel(label: LabelText, cell: Box, options: LabelOptions): readonly Mark[] {
  const left = cell.minX + 4;
  const room = cell.maxX - left - 4;
  const top = cell.maxY - 4;
  const { huge, small, usual } = lettering;
  const afterAddress = left + textWidth(label.address, huge, 'bold') + 3;
  const beside = left + room - symbolRoom - 2 - afterAddress;
  const scribes = label.scribes.length > 0 ? `Scribe: ${label.scribes.join('; ')}` : '';
  const rows = [
    `${label.faceSide} · seen ${label.seenFrom}`,
    label.joints.join(' · '),
    scribes,
    label.stock === '' ? '' : `From ${label.stock}`,
    label.next === '' ? '' : `Next: ${label.next}`,
  ].filter((row) => row !== '');
  const shown = wrapRows(rows, room);
  const name = shortenText(label.name, small, beside, 'bold');
  const marks: Mark[] = [
    drawText({ x: left, y: top - huge }, label.address, {
      height: huge,
      weight: 'bold',
      link: label.address,
    }),
    drawText({ x: afterAddress, y: top - 2.6 }, name, { height: small, weight: 'bold' }),
    drawText({ x: afterAddress, y: top - huge }, shortenText(label.job, plain, beside), {
      height: plain,
      tone: 'soft',
    }),
    drawText({ x: left, y: top - 13 }, label.size, { height: usual, weight: 'bold' }),
    ...shown.map((row, i) => drawRow(row, { x: left, y: top - 17.2 - i * lineStep }, room)),
    ...drawSymbols(label, { x: cell.maxX - 4 - symbolRoom, y: top - 13 }),
  ];
  return options.stamp === undefined ? marks : [...marks, ...drawStamp(options.stamp, cell)];
}

const mostRows = 5;

/** Long lines broken in two as far as there are rows left. */
function wrapRows(rows: readonly string[], room: number): readonly string[] {
  let free = mostRows - rows.length;
  return rows.flatMap((row) => {
    const [first = '', ...rest] = wrapText(row, plain, room);
    if (rest.length === 0 || free <= 0) return [row];
    free -= 1;
    return [first, rest.join(' ')];
  });
}

/** A line of a label, set a little smaller when it is long, shortened when that is not enough. */
function drawRow(row: string, at: Point, room: number): Mark {
  const height = [plain, 2, lettering.fine].find((h) => textWidth(row, h) <= room) ?? lettering.fine;
  return drawText(at, shortenText(row, height, room), { height });
}

/** Grain, face mark, edge mark and UP in a patch beside the address. */
function drawSymbols(label: LabelText, corner: Point): readonly Mark[] {
  const { x, y } = corner;
  const along = label.grain === 'along';
  const grain =
    label.grain === 'any'
      ? []
      : drawGrainArrow({ x: x + 6, y: y + 11.5 }, along ? 12 : 4, along ? 0 : Math.PI / 2);
  return [
    ...grain,
    ...drawFaceMark({ x: x + 5, y: y + 8 }, -7),
    ...drawEdgeMark({ x: x + 9, y: y + 8 }, -3.5),
    ...drawUpArrow(label.up, { x: x + 19, y: y + 8 }),
  ];
}

const turns = { up: Math.PI / 2, down: -Math.PI / 2, left: Math.PI, right: 0 };

function drawUpArrow(up: LabelText['up'], centre: Point): readonly Mark[] {
  if (up === null) return [];
  const reach = 4.5;
  const [dx, dy] = [reach * Math.cos(turns[up]), reach * Math.sin(turns[up])];
  const text = drawText({ x: centre.x, y: centre.y - reach - 3.4 }, 'UP', {
    height: plain,
    weight: 'bold',
    align: 'middle',
  });
  return [...drawArrow({ x: centre.x - dx, y: centre.y - dy }, { x: centre.x + dx, y: centre.y + dy }), text];
}
