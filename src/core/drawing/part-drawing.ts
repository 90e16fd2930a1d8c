import { boxOfOutline, flattenOutline } from '#core/geometry';
import type { Box, Outline, Point } from '#core/geometry';
import type { Part, PartEdge } from '#core/joinery';
import { breakLength, wholeLength } from './broken-length.ts';
import type { BrokenLength } from './broken-length.ts';
import { drawDimension } from './dimension.ts';
import { boxAround, findRoom } from './find-room.ts';
import { boxOfMark, drawArea, drawLine, drawRectangle, drawText, lettering, makeDrawing } from './marks.ts';
import { drawOrdinates } from './ordinates.ts';
import { asSeen, describeMachining, seenOnEdge, seenOnFace } from './part-view.ts';
import { chooseScale, formatMm, formatScale } from './scales.ts';
import { drawEdgeMark, drawFaceMark, drawGrainArrow, drawWave } from './symbols.ts';
import { seenEdgeLines } from './scribe-edge.ts';
import { textWidth, wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

const besidePart = 34; // mm of paper for dimensions and texts left and right together
const legibleWidth = 22; // mm of paper; narrower parts are drawn larger and broken
const betweenViews = 16; // mm of paper

interface Sheet {
  readonly part: Part;
  readonly along: BrokenLength;
  /** mm of paper for one mm across. */
  readonly scale: number;
}

/** Face view and edge view of a part with finished sizes, machining, grain, face marks and scribed edges. */
export function drawPart(part: Part, options: { readonly width: number }): Drawing {
  const room = Math.max(options.width - besidePart, 30);
  const sheet = { part, ...chooseView(part, room) };
  const { scale, along } = sheet;
  const { length, width, thickness } = part.finished;
  const edgeTop = -betweenViews;
  const edgeBottom = edgeTop - thickness * scale;
  const place = (x: number, y: number): Point => ({ x: along.place(x), y: y * scale });
  const marks: Mark[] = [
    ...drawFace(sheet),
    ...drawEdgeView(sheet, edgeBottom),
    ...drawDimension(place(0, 0), place(length, 0), formatMm(length), {
      offset: edgeBottom - 9,
      link: 'length',
    }),
    ...drawDimension(place(length, 0), place(length, width), formatMm(width), { offset: -14, link: 'width' }),
    ...drawDimension(
      { x: along.place(length), y: edgeBottom },
      { x: along.place(length), y: edgeTop },
      formatMm(thickness),
      { offset: -14, link: 'thickness' },
    ),
    ...drawOrdinates(part, along, width * scale),
    ...along.breaks.flatMap((x) => drawBreak(x, [0, width * scale], [edgeBottom, edgeTop])),
  ];
  const bottom = Math.min(...marks.map((mark) => boxOfMark(mark).minY)) - 6;
  const title = `${part.id}  ${part.name}`;
  return makeDrawing(title, scale, [...marks, ...drawNotes(sheet, bottom, options.width - 8)]);
}

/** The scale to draw a part at, and whether long plain stretches are taken out of it. */
function chooseView(part: Part, room: number): { scale: number; along: BrokenLength } {
  const { length, width } = part.finished;
  const whole = chooseScale(length, room);
  if (width * whole >= legibleWidth) return { scale: whole, along: wholeLength(whole) };
  const stations = [
    0,
    length,
    ...boxStations(part.outline),
    ...part.holes.flatMap(boxStations),
    ...part.machining.flatMap((m) => boxStations(seenOnFace(m, part)?.outline ?? [])),
  ];
  const wanted = chooseScale(width, 30);
  const tries = [1, 1 / 2, 1 / 2.5, 1 / 3, 1 / 4, 1 / 5].filter((s) => s <= wanted && s > whole);
  for (const scale of tries) {
    const along = breakLength(stations, scale, room);
    if (along) return { scale, along };
  }
  return { scale: whole, along: wholeLength(whole) };
}

function boxStations(outline: Outline): readonly number[] {
  return outline.length === 0 ? [] : [boxOfOutline(outline).minX, boxOfOutline(outline).maxX];
}

/** An outline of the part on paper; arcs stay arcs where nothing is taken out. */
function toPaper(outline: Outline, { along, scale }: Sheet, up = 0): Outline {
  const points = along.breaks.length > 0 ? flattenOutline(outline) : outline;
  return points.map((p) => ({ ...p, x: along.place(p.x), y: p.y * scale + up }));
}

function drawFace(sheet: Sheet): readonly Mark[] {
  const { part } = sheet;
  const seen = part.machining.flatMap((machining, i) => {
    const contour = seenOnFace(machining, part);
    return contour ? [{ number: i + 1, near: contour.near, outline: toPaper(contour.outline, sheet) }] : [];
  });
  const holes = part.holes.map((hole) => toPaper(asSeen(hole, part), sheet));
  const boxes = [...seen.map(({ outline }) => outline), ...holes].map(boxOfOutline);
  return [
    drawArea(toPaper(asSeen(part.outline, part), sheet), 'cut', 'paper', part.id),
    ...holes.map((hole) => drawArea(hole, 'outline', 'none', part.id)),
    ...seen.map(({ outline, near }) => drawArea(outline, near ? 'thin' : 'hidden')),
    ...drawFaceSigns(sheet, boxes),
    ...seen.map(({ number, outline }) => drawNumber(number, boxOfOutline(outline))),
    ...part.edges.flatMap((edge) => drawTreatment(edge, sheet)),
  ];
}

/** Address, grain arrow and face mark where no machining is in the way (left out when there is no room), edge mark on the face edge. */
function drawFaceSigns({ part, along, scale }: Sheet, machined: readonly Box[]): readonly Mark[] {
  const tall = part.finished.width * scale;
  const right = along.place(part.finished.length);
  const breaks = along.breaks.map((x) => ({ minX: x - 4, maxX: x + 4, minY: -2, maxY: tall + 2 }));
  const taken: Box[] = [...machined, ...breaks];
  const place = (width: number, height: number, wanted: Point): Point | null => {
    const at = findRoom(
      { width: width + 2, height: height + 1 },
      { minX: 0, maxX: right, minY: 0, maxY: tall },
      taken,
      wanted,
    );
    if (at) taken.push(boxAround(at, width + 2, height + 1));
    return at;
  };
  const middle = tall / 2;
  const { usual } = lettering;
  const address = place(textWidth(part.id, usual, 'bold'), usual, { x: right * 0.62, y: middle });
  const across = part.grain === 'along-width';
  const run = Math.min(20, (across ? tall : right) * 0.4);
  const grain =
    part.grain === 'any' ? null : place(across ? 3 : run, across ? run : 3, { x: right * 0.3, y: middle });
  const size = Math.min(7, Math.max(3, tall * 0.3));
  const face = place(size * 0.5, size, { x: right * 0.48, y: tall - size * 0.5 - 0.6 });
  return [
    ...(address
      ? [
          drawText({ x: address.x, y: address.y - usual / 2 }, part.id, {
            weight: 'bold',
            align: 'middle',
            link: part.id,
          }),
        ]
      : []),
    ...(grain ? drawGrainArrow(grain, run, across ? Math.PI / 2 : 0) : []),
    ...(face ? drawFaceMark({ x: face.x + size * 0.2, y: face.y + size / 2 }, -size) : []),
    ...drawEdgeMark({ x: clearOfStations(right * 0.48, machined), y: tall + 0.4 }, 3),
  ];
}

/** A place along the part at least 3 mm of paper from where any machining begins or ends. */
function clearOfStations(wanted: number, machined: readonly Box[]): number {
  const stations = machined.flatMap((box) => [box.minX, box.maxX]);
  const tries = Array.from({ length: 40 }, (_, i) => wanted + (i % 2 ? -1 : 1) * i);
  return tries.find((x) => stations.every((station) => Math.abs(station - x) > 3)) ?? wanted;
}

/** The number under which a machining is described, in its contour or just beside a small one. */
function drawNumber(number: number, box: Box): Mark {
  const { fine } = lettering;
  const roomy = box.maxX - box.minX > 3 && box.maxY - box.minY > 3;
  const at = roomy
    ? { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - fine / 2 }
    : { x: box.maxX + 1.2, y: (box.minY + box.maxY) / 2 - fine / 2 };
  return drawText(at, String(number), { height: fine, align: 'middle' });
}

const treatments = { scribed: 'scribe', lipped: 'lipping', rounded: 'round' };

/** A scribed edge as a wavy line outside the part, a lipped or rounded one as a second line, with its amount. */
function drawTreatment(edge: PartEdge, sheet: Sheet): readonly Mark[] {
  if (edge.treatment === 'bare') return [];
  const { part, scale } = sheet;
  const off = Math.max(1.2 / scale, edge.amount ?? 0);
  const lines = seenEdgeLines(part, edge.edge, off).map((line) => toPaper(line, sheet));
  const [first] = lines;
  if (!first) return [];
  const verb = treatments[edge.treatment];
  const text = edge.amount === undefined ? verb : `${verb} ${formatMm(edge.amount)}`;
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

function drawEdgeView(sheet: Sheet, bottom: number): readonly Mark[] {
  const { part, scale, along } = sheet;
  const { length, thickness } = part.finished;
  const box = { minX: 0, minY: bottom, maxX: along.place(length), maxY: bottom + thickness * scale };
  return [
    drawRectangle(box, 'cut', 'paper', part.id),
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

function drawNotes(sheet: Sheet, top: number, room: number): readonly Mark[] {
  const { part, scale, along } = sheet;
  const { length, width, thickness } = part.finished;
  const times = part.quantity > 1 ? ` · make ${part.quantity}` : '';
  const broken = along.breaks.length > 0 ? ', length broken' : '';
  const head = `${part.id}  ${part.name} · ${formatMm(length)} × ${formatMm(width)} × ${formatMm(thickness)}${times}`;
  const rows = [
    `${formatScale(scale)}${broken} · seen from the face side: ${part.faceSide} · below: seen from the face edge, face side down`,
    ...part.machining.map((m, i) => `${i + 1}  ${describeMachining(m, part)}`),
    ...part.notes,
  ].flatMap((row) => wrapText(row, lettering.small, room));
  return [
    drawText({ x: 0, y: top }, head, { weight: 'bold', height: lettering.usual }),
    ...rows.map((row, i) => drawText({ x: 0, y: top - 5 - i * 4.2 }, row, { height: lettering.small })),
  ];
}
