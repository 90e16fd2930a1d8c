import type { Box, Point, ShapeObstruction, ShapeSection } from '#core/geometry';
import type { LengthSystem } from '#core/units';
import { boxOfMark, drawLine, drawText, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { chooseScale, formatMm, formatScale, formatSize, heightFor, unitNote } from './scales.ts';
import { drawObstructions } from './survey-curves.ts';
import type { Drawing, Mark } from './types.ts';

/** A cross-section of the hull as measured. */
export interface HullSectionView {
  readonly section: ShapeSection;
  readonly seenFrom: string;
  readonly ordinates: readonly {
    readonly height: number;
    readonly depth: number;
    readonly isSuspect: boolean;
    /** Address of the ordinate. */
    readonly link?: string;
  }[];
  readonly obstructions: readonly ShapeObstruction[];
  /** mm of paper. */
  readonly width: number;
  readonly height?: number;
  readonly units?: LengthSystem;
  /** Without the lines below it, and at whatever scale fills the room: for a screen. */
  readonly isBare?: boolean;
}

const beside = 46; // mm of paper for the numbers left and right
const bevelArm = 9; // mm of paper
const beyondDepth = 13; // mm of paper, past the depth written at the same height

/**
 * One section: the plane of the fronts upright at the left, the hull line at the right, every ordinate with its height and its
 * depth, bevels as short lines with degrees, what is in the way, and suspects in the fault pen.
 */
export function drawHullSection(view: HullSectionView): Drawing {
  const { section, units } = view;
  const box = boxOf(section.line);
  const choose =
    view.isBare === true ? (size: number, room: number) => room / Math.max(size, 1) : chooseScale;
  const scale = Math.min(
    choose(box.maxX - Math.min(0, box.minX), Math.max(20, view.width - beside)),
    choose(box.maxY - box.minY, Math.max(20, heightFor(view) - beside)),
  );
  const at = (x: number, y: number): Point => ({ x: x * scale, y: y * scale });
  const marks: Mark[] = [
    drawLine([at(0, box.minY), at(0, box.maxY)], 'centre'),
    drawLine(
      section.line.map(({ x, y }) => at(x, y)),
      'cut',
      section.name,
    ),
    ...view.ordinates.flatMap((ordinate) => drawOrdinate(ordinate, at, units)),
    ...section.bevels.flatMap(({ height, angle }) => drawBevel(pointAt(section.line, height), angle, at)),
    ...drawObstructions(view.obstructions, scale),
  ];
  const frame = joinBoxes(marks.map(boxOfMark));
  const foot = [
    `Section ${section.name}, ${formatSize(section.at, units)} along · seen ${view.seenFrom} · ${formatScale(scale)}${unitNote(units)}`,
    `Left: height. Right: from the plane of the fronts to the bare hull, ±${formatMm(2 * section.sigma)} mm, 19 times in 20.`,
  ].map((row, k) =>
    drawText({ x: frame.minX, y: frame.minY - 7 - k * 4.2 }, row, { height: lettering.small, tone: 'soft' }),
  );
  const rows = view.isBare === true ? [] : foot;
  return makeDrawing(`Hull section ${section.name}`, scale, [...marks, ...rows], 3);
}

function boxOf(line: readonly Point[]): Box {
  const [xs, ys] = [line.map(({ x }) => x), line.map(({ y }) => y)];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

function drawOrdinate(
  { height, depth, isSuspect, link }: HullSectionView['ordinates'][number],
  at: (x: number, y: number) => Point,
  units: LengthSystem | undefined,
): readonly Mark[] {
  const [start, end] = [at(0, height), at(depth, height)];
  const tone = isSuspect ? 'fault' : 'ink';
  const weight = isSuspect ? 'bold' : 'normal';
  const style = { height: lettering.small, tone, weight, ...(link !== undefined && { link }) } as const;
  return [
    drawLine([start, end], isSuspect ? 'fault' : 'dimension', link),
    drawText({ x: Math.min(0, end.x) - 2, y: start.y - lettering.small / 2 }, formatSize(height, units), {
      ...style,
      align: 'end',
    }),
    drawText(
      { x: Math.max(0, end.x) + 2, y: start.y - lettering.small / 2 },
      formatSize(depth, units),
      style,
    ),
  ];
}

/** The height's place on the line, between its two nearest points; its ends beyond them. */
function pointAt(line: readonly Point[], height: number): Point {
  const after = line.findIndex(({ y }) => y >= height);
  const [a, b] = [line[after - 1], line[after]];
  if (!b) return line.at(-1) ?? { x: 0, y: height };
  if (!a || b.y === a.y) return b;
  return { x: a.x + ((b.x - a.x) * (height - a.y)) / (b.y - a.y), y: height };
}

/** The bevel turned into the plane of the drawing, with its angle. */
function drawBevel(point: Point, angle: number, at: (x: number, y: number) => Point): readonly Mark[] {
  const hull = at(point.x, point.y);
  const foot = { x: hull.x + beyondDepth, y: hull.y };
  const tip = { x: foot.x + bevelArm * Math.cos(angle), y: foot.y + bevelArm * Math.sin(angle) };
  const text = `bevel ${formatMm((angle * 180) / Math.PI)}°`;
  return [
    drawLine([foot, { x: foot.x + bevelArm, y: foot.y }], 'hidden'),
    drawLine([foot, tip], 'outline'),
    drawText({ x: foot.x + bevelArm + 1, y: foot.y + 1.6 }, text, { height: lettering.small, tone: 'soft' }),
  ];
}
