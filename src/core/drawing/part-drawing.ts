import { boxOfOutline, flattenOutline } from '#core/geometry';
import type { Outline, Point } from '#core/geometry';
import type { LengthSystem } from '#core/units';
import type { Part, PartEdge } from '#core/joinery';
import { drawDimension } from './dimension.ts';
import { boxOfMark, drawArea, drawLine, drawText, lettering, makeDrawing } from './marks.ts';
import { drawOrdinates } from './ordinates.ts';
import { listMachining } from './machining-words.ts';
import { asSeen, edgeContour, seenOnEdge, seenOnFace } from './part-view.ts';
import { viewPart } from './part-room.ts';
import type { PartSpacing } from './part-room.ts';
import { drawSection } from './part-section.ts';
import { drawFaceSigns, drawNumber } from './part-signs.ts';
import type { PartSheet } from './part-signs.ts';
import { formatScale, formatSize, unitNote } from './scales.ts';
import { drawWave } from './symbols.ts';
import { seenEdgeLines } from './scribe-edge.ts';
import { seenStaveLines } from './stave-lines.ts';
import { textWidth, wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

const roomy: PartSpacing = {
  ...{ beside: 34, between: 12, below: 9, aside: 14, section: 18 },
  lettering: lettering.usual,
  isThicknessShown: true,
};

/** Face view and edge view of a part with finished sizes, machining, grain, face marks and scribed edges. */
export function drawPart(
  part: Part,
  options: { readonly width: number; readonly units?: LengthSystem },
): Drawing {
  const { units = 'mm' } = options;
  const view = viewPart(part, { width: options.width }, roomy);
  const marks = drawPartViews({ part, units, ...view }, roomy);
  const bottom = Math.min(...marks.map((mark) => boxOfMark(mark).minY)) - 6;
  const title = `${part.id}  ${part.name}`;
  const notes = drawNotes({ part, units, ...view }, bottom, options.width - 8);
  return makeDrawing(title, view.scale, [...marks, ...notes]);
}

/** Face view from y = 0 up, edge view and sizes below and beside it. */
export function drawPartViews(sheet: PartSheet, spacing: PartSpacing): readonly Mark[] {
  const { part, scale, along, units } = sheet;
  const { length, width, thickness } = part.finished;
  const edgeTop = spacing.between === null ? 0 : -spacing.between;
  const edgeBottom = spacing.between === null ? 0 : edgeTop - thickness * scale;
  const place = (x: number, y: number): Point => ({ x: along.place(x), y: y * scale });
  const hasEdge = spacing.between !== null;
  const views = [[0, width * scale] as const, ...(hasEdge ? [[edgeBottom, edgeTop] as const] : [])];
  const aside = { offset: -spacing.aside, height: spacing.lettering };
  const hasRoom = textWidth(formatSize(thickness, units), spacing.lettering) < thickness * scale - 1;
  const thick = drawDimension(
    { x: along.place(length), y: edgeBottom },
    { x: along.place(length), y: edgeTop },
    formatSize(thickness, units),
    { ...aside, link: 'thickness' },
  );
  return [
    ...drawFace(sheet),
    ...(hasEdge ? drawEdgeView(sheet, edgeBottom) : []),
    ...drawDimension(place(0, 0), place(length, 0), formatSize(length, units), {
      ...{ offset: edgeBottom - spacing.below, link: 'length', height: spacing.lettering },
    }),
    ...drawDimension(place(length, 0), place(length, width), formatSize(width, units), {
      ...aside,
      link: 'width',
    }),
    ...(hasEdge && (spacing.isThicknessShown || hasRoom) ? thick : []),
    ...drawOrdinates(part, along, { top: width * scale, units }),
    ...along.breaks.flatMap((x) => drawBreak(x, ...views)),
    ...drawSection(part, scale, edgeBottom - spacing.section),
  ];
}

/** An outline of the part on paper; arcs stay arcs where nothing is taken out. */
function toPaper(outline: Outline, { along, scale }: PartSheet, up = 0): Outline {
  const points = along.breaks.length > 0 ? flattenOutline(outline) : outline;
  return points.map((p) => ({ ...p, x: along.place(p.x), y: p.y * scale + up }));
}

/** Staves narrower than this on paper, mm, leave no room for lettering between their joints. */
const roomBetween = 8;

function drawFace(sheet: PartSheet): readonly Mark[] {
  const { part } = sheet;
  const seen = part.machining.flatMap((machining, i) => {
    const contour = seenOnFace(machining, part);
    return contour ? [{ number: i + 1, near: contour.near, outline: toPaper(contour.outline, sheet) }] : [];
  });
  const holes = part.holes.map((hole) => toPaper(asSeen(hole, part), sheet));
  const seams = seenStaveLines(part).map((line) => toPaper(line, sheet));
  const isRoomy = (part.staves?.width ?? 0) * sheet.scale > roomBetween;
  const boxes = [...seen.map(({ outline }) => outline), ...holes, ...(isRoomy ? seams : [])].map(
    boxOfOutline,
  );
  return [
    drawArea(toPaper(asSeen(part.outline, part), sheet), 'cut', 'paper', part.id),
    ...holes.map((hole) => drawArea(hole, 'outline', 'none', part.id)),
    ...seen.map(({ outline, near }) => drawArea(outline, near ? 'thin' : 'hidden')),
    ...seams.map((line) => drawLine(line, 'hidden')),
    ...drawFaceSigns(sheet, toPaper(asSeen(part.outline, part), sheet), boxes),
    ...seen.map(({ number, outline }) => drawNumber(number, boxOfOutline(outline))),
    ...part.edges.flatMap((edge) => drawTreatment(edge, sheet)),
  ];
}

const treatments = { scribed: 'scribe', lipped: 'lipping', rounded: 'round', flushed: 'flush' };

/** A scribed edge as a wavy line outside the part, a lipped or rounded one as a second line, with its amount. */
function drawTreatment(edge: PartEdge, sheet: PartSheet): readonly Mark[] {
  if (edge.treatment === 'bare') return [];
  const { part, scale, units } = sheet;
  const off = Math.max(1.2 / scale, edge.amount ?? 0);
  const lines = seenEdgeLines(part, edge.edge, off).map((line) => toPaper(line, sheet));
  const [first] = lines;
  if (!first) return [];
  const verb = treatments[edge.treatment];
  const text = edge.amount === undefined ? verb : `${verb} ${formatSize(edge.amount, units)}`;
  const box = boxOfOutline(lines.flat());
  const upright = edge.edge === 'start' || edge.edge === 'end';
  const at = upright
    ? { x: edge.edge === 'start' ? box.minX - 1.2 : box.maxX + 3.7, y: (box.minY + box.maxY) / 2 }
    : {
        x: box.minX + (box.maxX - box.minX) * 0.2,
        y: edge.edge === 'far-edge' ? box.minY - 3.7 : box.maxY + 1.4,
      };
  const style = { height: lettering.small, align: 'middle', ...(upright && { turn: Math.PI / 2 }) } as const;
  return [
    ...lines.map((line) => (edge.treatment === 'scribed' ? drawWave(line) : drawLine(line, 'outline'))),
    drawText(at, text, style),
  ];
}

function drawEdgeView(sheet: PartSheet, bottom: number): readonly Mark[] {
  const { part } = sheet;
  return [
    drawArea(toPaper(edgeContour(part), sheet, bottom), 'cut', 'paper', part.id),
    ...part.machining.flatMap((machining) => {
      const seen = seenOnEdge(machining, part);
      return seen ? [drawArea(toPaper(seen.outline, sheet, bottom), seen.near ? 'thin' : 'hidden')] : [];
    }),
  ];
}

/** Two zigzag lines with paper between them across the views. */
function drawBreak(x: number, ...views: readonly (readonly [number, number])[]): readonly Mark[] {
  return views.flatMap(([low, high]) => {
    const [from, to] = [low - 1, high + 1];
    const zig = Math.min(1.6, (to - from) / 4);
    const middle = (from + to) / 2;
    const line = (dx: number) => [
      { x: x + dx, y: from },
      { x: x + dx, y: middle - zig },
      { x: x + dx + zig, y: middle - zig * 0.4 },
      { x: x + dx - zig, y: middle + zig * 0.4 },
      { x: x + dx, y: middle + zig },
      { x: x + dx, y: to },
    ];
    const [left, right] = [line(-1), line(1)];
    return [
      drawArea([...left, ...[...right].reverse()], 'none', 'paper'),
      drawLine(left, 'thin'),
      drawLine(right, 'thin'),
    ];
  });
}

function drawNotes(sheet: PartSheet, top: number, room: number): readonly Mark[] {
  const { part, scale, along, units } = sheet;
  const size = [part.finished.length, part.finished.width, part.finished.thickness];
  const times = part.quantity > 1 ? ` · make ${part.quantity}` : '';
  const broken = along.breaks.length > 0 ? ', length broken' : '';
  const head = `${part.id}  ${part.name} · ${size.map((value) => formatSize(value, units)).join(' × ')}${times}`;
  const rows = [
    `${formatScale(scale)}${broken} · ${part.faceSide} · below: seen from the face edge, face side down${unitNote(units)}`,
    ...listMachining(part, units),
    ...part.notes,
  ].flatMap((row) => wrapText(row, lettering.small, room));
  return [
    drawText({ x: 0, y: top }, head, { weight: 'bold', height: lettering.usual }),
    ...rows.map((row, i) => drawText({ x: 0, y: top - 5 - i * 4.2 }, row, { height: lettering.small })),
  ];
}
