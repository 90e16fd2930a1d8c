import { boxOfOutline, flattenOutline } from '#core/geometry';
import type { Outline, Point } from '#core/geometry';
import type { Part, PartEdge } from '#core/joinery';
import { breakLength, wholeLength } from './broken-length.ts';
import type { BrokenLength } from './broken-length.ts';
import { drawDimension } from './dimension.ts';
import { boxOfMark, drawArea, drawLine, drawRectangle, drawText, lettering, makeDrawing } from './marks.ts';
import { drawOrdinates } from './ordinates.ts';
import { describeMachining, seenOnEdge, seenOnFace } from './part-view.ts';
import type { SeenContour } from './part-view.ts';
import { chooseScale, formatMm, formatScale } from './scales.ts';
import { drawEdgeMark, drawFaceMark, drawGrainArrow, drawWave } from './symbols.ts';
import { wrapText } from './text-width.ts';
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
  const { part, scale, along } = sheet;
  const { length, width } = part.finished;
  const contour = (seen: SeenContour | null) =>
    seen ? [drawArea(toPaper(seen.outline, sheet), seen.near ? 'thin' : 'hidden')] : [];
  const right = along.place(length);
  const grainAngle = part.grain === 'along-width' ? Math.PI / 2 : 0;
  const tall = width * scale;
  const grain =
    part.grain === 'any'
      ? []
      : drawGrainArrow(
          { x: right * 0.3, y: tall / 2 },
          Math.min(22, (grainAngle ? tall : right) * 0.4),
          grainAngle,
        );
  const size = Math.min(7, Math.max(3, tall * 0.3));
  return [
    drawArea(toPaper(part.outline, sheet), 'cut', 'paper', part.id),
    ...part.holes.map((hole) => drawArea(toPaper(hole, sheet), 'outline', 'none', part.id)),
    ...part.machining.flatMap((m) => contour(seenOnFace(m, part))),
    ...grain,
    ...drawFaceMark({ x: right * 0.5, y: Math.min(tall * 0.35, 4) }, size),
    ...drawEdgeMark({ x: right * 0.5 + size * 0.35, y: 0.3 }, Math.min(3, tall * 0.2)),
    drawText({ x: right * 0.62, y: tall / 2 - 1.7 }, part.id, {
      weight: 'bold',
      height: lettering.usual,
      link: part.id,
    }),
    ...part.edges.flatMap((edge) => drawTreatment(edge, sheet)),
  ];
}

/** A scribed edge as a wavy line outside the part, a lipped or rounded one as a second line, with its amount. */
function drawTreatment(edge: PartEdge, { part, scale, along }: Sheet): readonly Mark[] {
  if (edge.treatment === 'bare') return [];
  const { length, width } = part.finished;
  const [right, top] = [along.place(length), width * scale];
  const off = Math.max(1.2, (edge.amount ?? 0) * scale);
  const ends: Record<PartEdge['edge'], readonly [Point, Point]> = {
    'face-edge': [
      { x: 0, y: -off },
      { x: right, y: -off },
    ],
    'far-edge': [
      { x: 0, y: top + off },
      { x: right, y: top + off },
    ],
    start: [
      { x: -off, y: 0 },
      { x: -off, y: top },
    ],
    end: [
      { x: right + off, y: 0 },
      { x: right + off, y: top },
    ],
  };
  const [a, b] = ends[edge.edge];
  const verb = { scribed: 'scribe', lipped: 'lipping', rounded: 'round' }[edge.treatment];
  const text = edge.amount === undefined ? verb : `${verb} ${formatMm(edge.amount)}`;
  const upright = edge.edge === 'start' || edge.edge === 'end';
  const at = upright
    ? { x: edge.edge === 'start' ? a.x - 1.2 : a.x + 3, y: top / 2 }
    : { x: right * 0.2, y: edge.edge === 'face-edge' ? a.y - 3.2 : a.y + 1.2 };
  const mark = edge.treatment === 'scribed' ? drawWave(a, b, 'outline') : drawLine([a, b], 'outline');
  return [
    mark,
    drawText(at, text, { height: lettering.small, align: 'middle', ...(upright && { turn: Math.PI / 2 }) }),
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
    `${formatScale(scale)}${broken} · seen from the face side: ${part.faceSide} · below: seen from the face edge`,
    ...part.machining.map((m, i) => `${i + 1}  ${describeMachining(m, part)}`),
    ...part.notes,
  ].flatMap((row) => wrapText(row, lettering.small, room));
  return [
    drawText({ x: 0, y: top }, head, { weight: 'bold', height: lettering.usual }),
    ...rows.map((row, i) => drawText({ x: 0, y: top - 5 - i * 4.2 }, row, { height: lettering.small })),
  ];
}
