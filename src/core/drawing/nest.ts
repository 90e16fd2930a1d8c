import { boxOfOutline, boxOfPoints, type Box, type Outline, type Point } from '#core/geometry';
import type { LengthSystem } from '#core/units';
import { drawDimension } from './dimension.ts';
import {
  boxesOverlap,
  boxOfMark,
  drawArea,
  drawRectangle,
  drawText,
  joinBoxes,
  growBox,
  lettering,
  makeDrawing,
} from './marks.ts';
import { innerPoint } from './part-view.ts';
import { chooseScale, formatScale, formatSize, unitNote } from './scales.ts';
import { textWidth } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

/** A part where it lies on a sheet, by its outline in mm of the sheet. */
export interface NestedPart {
  readonly address: string;
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

/** All that a router's sheet shows, in mm of the sheet. */
export interface NestView {
  readonly title: string;
  readonly stock: { readonly length: number; readonly width: number };
  readonly margin: number;
  readonly gap: number;
  readonly keepOut: readonly Box[];
  readonly parts: readonly NestedPart[];
  /** Beyond this length nothing lies: one straight offcut; null where a part reaches the end. */
  readonly offcutFrom: number | null;
  /** Width of the paper to fill, mm. */
  readonly width: number;
  readonly height?: number;
  readonly units?: LengthSystem;
}

const beside = 22; // mm of paper for dimensions left and right together
const above = 34; // mm of paper for title and dimensions together

/** A sheet for the router, true to scale: outlines as they lie, addresses, margin, and the straight offcut. */
export function drawNest(view: NestView): Drawing {
  const byWidth = chooseScale(view.stock.length, Math.max(view.width - beside, 20));
  const byHeight =
    view.height === undefined ? byWidth : chooseScale(view.stock.width, Math.max(view.height - above, 10));
  const scale = Math.min(byWidth, byHeight);
  const sheet: Box = { minX: 0, minY: 0, maxX: view.stock.length * scale, maxY: view.stock.width * scale };
  const marks: Mark[] = [
    drawRectangle(sheet, 'none', 'waste'),
    drawRectangle(growBox(sheet, -view.margin * scale), 'thin'),
    ...drawOffcut(view, scale),
    ...view.parts.flatMap((part) => drawShape(part, scale)),
    ...view.keepOut.map((box) => drawRectangle(scaleBox(box, scale), 'thin', 'keep-out')),
    drawRectangle(sheet, 'outline'),
    ...drawAddresses(view, scale),
    ...drawSizes(view, scale),
  ];
  const drawing = makeDrawing(view.title, scale, marks);
  return { ...drawing, bounds: joinBoxes([drawing.bounds, growBox(sheet, 2)]) };
}

const scalePoint = ({ x, y }: Point, scale: number): Point => ({ x: x * scale, y: y * scale });

function scaleBox(box: Box, scale: number): Box {
  return { minX: box.minX * scale, minY: box.minY * scale, maxX: box.maxX * scale, maxY: box.maxY * scale };
}

function scaleOutline(outline: Outline, scale: number): Outline {
  return outline.map((point) => ({ ...point, ...scalePoint(point, scale) }));
}

function drawShape({ address, outline, holes }: NestedPart, scale: number): readonly Mark[] {
  return [
    drawArea(scaleOutline(outline, scale), 'outline', 'paper', address),
    ...holes.map((hole) => drawArea(scaleOutline(hole, scale), 'thin', 'waste', address)),
  ];
}

/** The address in each part, as large as it goes, clear of what is cut out of it; beside it where another part's would be covered. */
function drawAddresses(view: NestView, scale: number): readonly Mark[] {
  const taken: Box[] = [];
  return view.parts.flatMap((part) => {
    const { address, outline } = part;
    const box = boxOfOutline(outline);
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const at = scalePoint(innerPoint(outline, middle), scale);
    const room = Math.min(box.maxX - box.minX, box.maxY - box.minY) * scale;
    const { large, usual, small, fine } = lettering;
    const height =
      [large, usual, small].find((size) => size + 1 < room && textWidth(address, size, 'bold') + 1 < room) ??
      fine;
    const write = (y: number) =>
      drawText({ x: at.x, y }, address, { height, align: 'middle', weight: 'bold', link: address });
    const first = write(at.y - height / 2);
    const isTaken = taken.some((other) => boxesOverlap(other, boxOfMark(first)));
    const mark = isTaken ? write(at.y + height) : first;
    taken.push(boxOfMark(mark));
    return [...drawPlate(part, boxOfMark(mark), scale), mark];
  });
}

/** A clear ground for an address that would be written over openings. */
function drawPlate({ address, holes }: NestedPart, written: Box, scale: number): readonly Mark[] {
  const plate = growBox(written, 0.8);
  const isOver = holes.some((hole) => boxesOverlap(plate, scaleBox(boxOfOutline(hole), scale)));
  return isOver ? [drawRectangle(plate, 'none', 'paper', address)] : [];
}

function drawOffcut({ offcutFrom, stock, units }: NestView, scale: number): readonly Mark[] {
  if (offcutFrom === null || stock.length - offcutFrom <= 0) return [];
  const box = scaleBox({ minX: offcutFrom, minY: 0, maxX: stock.length, maxY: stock.width }, scale);
  const text = `keep ${formatSize(stock.length - offcutFrom, units)} × ${formatSize(stock.width, units)}`;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const room = box.maxX - box.minX;
  const lies = textWidth(text, lettering.small) + 3 < room;
  const half = lettering.small / 2;
  const at = lies ? { ...middle, y: middle.y - half } : { ...middle, x: middle.x + half };
  return [
    drawRectangle(box, 'hidden', 'leftover'),
    ...(room > lettering.small * 2
      ? [
          drawText(at, text, {
            height: lettering.small,
            align: 'middle',
            ...(!lies && { turn: Math.PI / 2 }),
          }),
        ]
      : []),
  ];
}

function drawSizes(view: NestView, scale: number): readonly Mark[] {
  const [length, width] = [view.stock.length * scale, view.stock.width * scale];
  const size = (value: number) => formatSize(value, view.units);
  const detail = `${formatScale(scale)} · ${size(view.gap)} between parts, ${size(view.margin)} free along the edges · good face up${unitNote(view.units)}`;
  return [
    ...drawDimension({ x: 0, y: 0 }, { x: length, y: 0 }, size(view.stock.length), { offset: -9 }),
    ...drawDimension({ x: length, y: 0 }, { x: length, y: width }, size(view.stock.width), { offset: -9 }),
    drawText({ x: 0, y: width + 16 }, view.title, { height: lettering.usual, weight: 'bold' }),
    drawText({ x: 0, y: width + 11 }, detail, { height: lettering.small, tone: 'soft' }),
  ];
}

/** The box round parts as they lie, mm of the sheet; null for none. */
export function boxOfNested(parts: readonly NestedPart[]): Box | null {
  const points = parts.flatMap(({ outline }) => outline);
  return points.length === 0 ? null : boxOfPoints(points);
}
