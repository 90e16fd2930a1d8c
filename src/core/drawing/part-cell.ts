import { boxOfOutline, type Box } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { LengthSystem } from '#core/units';
import { isRectangle } from './is-rectangle.ts';
import { boxOfMark, drawLine, drawText, joinBoxes, lettering, moveMark } from './marks.ts';
import { listMachining } from './machining-words.ts';
import { drawPartViews } from './part-drawing.ts';
import { viewPart, type PartSpacing } from './part-room.ts';
import { seenOnFace } from './part-view.ts';
import type { PartGroup } from './same-parts.ts';
import { formatScale, formatSize, type PaperRoom } from './scales.ts';
import { wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

/** How parts are lettered on sheets that hold many of them. */
export interface CellOptions {
  readonly units: LengthSystem;
  /** The name of a material, to stand beside the sizes. */
  readonly nameMaterial: (material: Part['material']) => string;
}

/** A cell's place in the grid of a sheet: its share of the width, and where the notes stand. */
export interface CellShape {
  /** Sixths of the width of the page. */
  readonly span: 2 | 3 | 6;
  /** mm of paper. */
  readonly width: number;
  readonly notes: 'below' | 'beside';
  /** Height that the face view may take, mm of paper. */
  readonly tall: number;
}

/** A cell with the scale of its views, and whether everything in it can be read. */
export interface PartCell {
  readonly span: CellShape['span'];
  readonly drawing: Drawing;
  readonly isLegible: boolean;
}

const close = {
  beside: 22,
  below: 6.5,
  aside: 8.5,
  section: 11.5,
  lettering: lettering.small,
  isThicknessShown: false,
};
const machined: PartSpacing = { ...close, between: 7 };
const plain: PartSpacing = { ...close, between: null };

const textHeight = 2; // mm; 7.8 pt
const linePitch = 3.3;
const headPitch = 3.9;
const shareOfViews = 0.58; // of a cell with its notes beside
const gutter = 4; // mm of paper between views and notes
const smallestSeen = 1; // mm of paper of the smallest thing worked on the face
const narrowest = 10; // mm of paper that a worked part is wide
const numberPitch = 4; // mm of paper a running dimension takes

/** A part, or several alike, with heading, views and notes in a cell of a sheet. */
export function drawPartCell(group: PartGroup, shape: CellShape, options: CellOptions): PartCell {
  const [part] = group;
  const spacing = isPlain(part) ? plain : machined;
  const isBeside = shape.notes === 'beside';
  const room: PaperRoom = { width: shape.width * (isBeside ? shareOfViews : 1), height: shape.tall };
  const view = viewPart(part, room, spacing);
  const views = drawPartViews({ part, units: options.units, ...view }, spacing);
  const box = joinBoxes(views.map(boxOfMark));
  const head = headRows(group, shape.width, options);
  const top = -1.6 - head.length * headPitch - 1;
  const seen = views.map((mark) => moveMark(mark, -box.minX, top - box.maxY));
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const at = isBeside ? { x: wide + gutter, y: top } : { x: 0, y: top - high - 1 };
  const broken = view.along.breaks.length > 0;
  const rows = noteRows(part, { scale: view.scale, broken, units: options.units }).flatMap((row) =>
    wrapText(row, textHeight, shape.width - at.x),
  );
  const notes = rows.map((row, i) =>
    drawText({ x: at.x, y: at.y - textHeight - i * linePitch }, row, { height: textHeight }),
  );
  const foot = Math.min(top - high, at.y - rows.length * linePitch) - 1.5;
  const bounds: Box = { minX: 0, maxX: shape.width, minY: foot, maxY: 0.5 };
  const rule = drawLine([{ x: 0, y: 0 }, { x: shape.width, y: 0 }], 'thin'); // prettier-ignore
  const marks: readonly Mark[] = [rule, ...drawHead(head), ...seen, ...notes];
  return {
    span: shape.span,
    drawing: { title: group.map(({ id }) => id).join(', '), scale: view.scale, bounds, marks },
    isLegible: wide <= shape.width + 0.01 && canRead(part, view.scale, box),
  };
}

/** A rectangle with nothing worked on it: its sizes say all. */
function isPlain(part: Part): boolean {
  return part.machining.length === 0 && part.holes.length === 0 && isRectangle(part);
}

/** True when the smallest thing worked on the face is large enough and the running dimensions have room. */
function canRead(part: Part, scale: number, views: Box): boolean {
  const boxes = part.machining.flatMap((machining) => {
    const outline = seenOnFace(machining, part)?.outline;
    return outline ? [boxOfOutline(outline)] : [];
  });
  const sizes = boxes.flatMap(({ minX, maxX, minY, maxY }) => [maxX - minX, maxY - minY]);
  const least = Math.min(...sizes.filter((size) => size > 0.3));
  const stations = new Set(boxes.flatMap(({ minX, maxX }) => [Math.round(minX), Math.round(maxX)]));
  const numbers = stations.size <= 24 ? stations.size * numberPitch : 0;
  const { length, width } = part.finished;
  const isNarrow = boxes.length > 0 && Math.min(length, width) * scale < narrowest;
  return !isNarrow && least * scale >= smallestSeen && numbers <= views.maxX - views.minX;
}

interface HeadRow {
  readonly text: string;
  readonly weight: 'bold' | 'normal';
}

function headRows(group: PartGroup, width: number, { units, nameMaterial }: CellOptions): readonly HeadRow[] {
  const [part] = group;
  const total = group.reduce((sum, { quantity }) => sum + quantity, 0);
  const isMany = group.length > 1;
  const ids = group.map(({ id, quantity }) => (isMany && quantity > 1 ? `${id} (${quantity})` : id));
  const names = [...new Set(group.map(({ name }) => name))].join('; ');
  const { length, width: across, thickness } = part.finished;
  const size = [length, across, thickness].map((value) => formatSize(value, units)).join(' × ');
  const make = total > 1 ? ` · make ${total}` : '';
  const bold = wrapText(`${ids.join(', ')}  ${names}`, lettering.small, width / 1.11);
  const normal = wrapText(`${size}${make} · ${nameMaterial(part.material)}`, lettering.small, width);
  return [
    ...bold.map((text): HeadRow => ({ text, weight: 'bold' })),
    ...normal.map((text): HeadRow => ({ text, weight: 'normal' })),
  ];
}

function drawHead(rows: readonly HeadRow[]): readonly Mark[] {
  return rows.map(({ text, weight }, i) =>
    drawText({ x: 0, y: -1.6 - lettering.small - i * headPitch }, text, { height: lettering.small, weight }),
  );
}

function noteRows(
  part: Part,
  view: { readonly scale: number; readonly broken: boolean; readonly units: LengthSystem },
): readonly string[] {
  const broken = view.broken ? ', length broken' : '';
  return [
    `${formatScale(view.scale)}${broken} · ${part.faceSide}`,
    ...listMachining(part, view.units),
    ...part.notes,
  ];
}
