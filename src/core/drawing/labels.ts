import type { Box } from '#core/geometry';
import { drawLine, drawText, lettering } from './marks.ts';
import { paperMargin, paperSize } from './paper.ts';
import type { Paper } from './paper.ts';
import { drawStamp } from './stamp.ts';
import { drawArrow, drawEdgeMark, drawFaceMark, drawGrainArrow, drawWave } from './symbols.ts';
import { shortenText, textWidth } from './text-width.ts';
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
  /** Where up is on the label lying as the part: `right`, `up`, or null when the part lies flat. */
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

const symbolRoom = 22; // mm at the right of a label for its arrows and marks

function drawLabel(label: LabelText, cell: Box, options: LabelOptions): readonly Mark[] {
  const left = cell.minX + 4;
  const room = cell.maxX - left - 4;
  const top = cell.maxY - 4;
  const narrow = room - symbolRoom;
  const afterAddress = left + textWidth(label.address, lettering.huge, 'bold') + 3;
  const line = (row: number, text: string, width: number) =>
    text === ''
      ? []
      : [
          drawText({ x: left, y: top - 15.6 - row * 3.7 }, shortenText(text, lettering.fine, width), {
            height: lettering.fine,
          }),
        ];
  const scribes = label.scribes.length > 0 ? `Scribe: ${label.scribes.join('; ')}` : '';
  const marks: Mark[] = [
    drawText({ x: left, y: top - lettering.huge }, label.address, {
      height: lettering.huge,
      weight: 'bold',
      link: label.address,
    }),
    drawText(
      { x: afterAddress, y: top - 3 },
      shortenText(label.name, lettering.small, left + narrow - afterAddress),
      { height: lettering.small, weight: 'bold' },
    ),
    drawText(
      { x: afterAddress, y: top - lettering.huge },
      shortenText(label.job, lettering.fine, left + narrow - afterAddress),
      { height: lettering.fine, tone: 'soft' },
    ),
    drawText({ x: left, y: top - 12 }, label.size, { height: lettering.usual, weight: 'bold' }),
    ...line(0, `${label.faceSide} · seen ${label.seenFrom}`, room - (label.scribes.length > 0 ? 0 : 0)),
    ...line(1, label.joints.join(' · '), room),
    ...line(2, scribes, room),
    ...line(3, label.stock === '' ? '' : `From ${label.stock}`, room),
    ...line(4, label.next === '' ? '' : `Next: ${label.next}`, room),
    ...drawSymbols(label, { x: cell.maxX - 4 - symbolRoom, y: top - 12 }),
  ];
  const centre = { x: (cell.minX + cell.maxX) / 2, y: (cell.minY + cell.maxY) / 2 };
  return options.stamp === undefined ? marks : [...marks, ...drawStamp(options.stamp, centre, room * 0.9)];
}

/** Grain, face mark, edge mark, UP and the scribe wave in a strip beside the address. */
function drawSymbols(label: LabelText, corner: { readonly x: number; readonly y: number }): readonly Mark[] {
  const { x, y } = corner;
  const turn = { up: Math.PI / 2, down: -Math.PI / 2, left: Math.PI, right: 0 };
  const centre = { x: x + 17, y: y + 5.5 };
  const up =
    label.up === null
      ? []
      : [
          ...drawArrow(
            { x: centre.x - 3.5 * Math.cos(turn[label.up]), y: centre.y - 3.5 * Math.sin(turn[label.up]) },
            { x: centre.x + 3.5 * Math.cos(turn[label.up]), y: centre.y + 3.5 * Math.sin(turn[label.up]) },
          ),
          drawText({ x: centre.x + 3, y: y - 1 }, 'UP', {
            height: lettering.fine,
            weight: 'bold',
            align: 'middle',
          }),
        ];
  const grain =
    label.grain === 'any'
      ? []
      : drawGrainArrow(
          { x: x + 5, y: y + 9 },
          label.grain === 'along' ? 10 : 6,
          label.grain === 'along' ? 0 : Math.PI / 2,
        );
  const scribe =
    label.scribes.length > 0 ? [drawWave({ x, y: y - 1.5 }, { x: x + 10, y: y - 1.5 }, 'outline', 3)] : [];
  return [
    ...grain,
    ...drawFaceMark({ x: x + 3, y: y + 1 }, 5),
    ...drawEdgeMark({ x: x + 9, y: y + 0.5 }, 3),
    ...up,
    ...scribe,
  ];
}
