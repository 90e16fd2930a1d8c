import { isStrip } from './check-nest-job.ts';
import { makeClash } from './clash.ts';
import type { Clash } from './clash.ts';
import { growFigure, growInHurry } from './grow.ts';
import { figureArea, makeRing } from './rings.ts';
import type { Figure } from './rings.ts';
import { layOutShapes } from './shapes.ts';
import type { ShapeSource, Shapes } from './shapes.ts';
import type { NestJob, NestPart, NestSheet } from './types.ts';

/** Parts of one outline. */
export interface Kind {
  readonly id: string;
  readonly index: number;
  readonly figure: Figure;
  /** Net of holes, mm². */
  readonly area: number;
  readonly count: number;
}

/**
 * A sheet size inside its margin, or the strip, which has no end and no cost. `zones` are its keep-outs as sources of
 * shapes, with their corner inside the margin.
 */
export interface Bin {
  readonly id: string;
  readonly index: number;
  readonly length: number;
  readonly width: number;
  /** Of the whole sheet. */
  readonly area: number;
  readonly cost: number;
  readonly count: number;
  readonly zones: readonly { readonly source: number; readonly x: number; readonly y: number }[];
}

/** The job as the search has it. `strip`: width of the strip, null on sheets. */
export interface Model {
  readonly gap: number;
  readonly margin: number;
  readonly strip: number | null;
  readonly kinds: readonly Kind[];
  readonly bins: readonly Bin[];
  /** Sources are the kinds, then the keep-outs. */
  readonly shapes: Shapes;
  /** Remembers what it was asked, so that one serves all nests of the job. */
  readonly clash: Clash;
}

/**
 * Turns a job that `checkNestJob` passes into shapes, poses and bins. Once `isHurried` the figures of the rest are
 * coarse; poses are numbered the same.
 */
export function buildNestModel(job: NestJob, isHurried: () => boolean = () => false): Model {
  const gap = job.gap ?? 0;
  const first = job.stock[0];
  const strip = first && isStrip(first) ? first.strip : null;
  const sheets = strip === null ? (job.stock as readonly NestSheet[]) : [];
  const margin = strip === null ? (job.margin ?? 0) : 0;
  const kinds = job.parts.map(makeKind);
  const sources: ShapeSource[] = job.parts.map((part, i) => {
    const { figure } = kinds[i]!;
    return makeSource(figure, gap, part.angles ?? [0], isHurried());
  });
  const costs = fillCosts(sheets);
  const bins = sheets.map((sheet, index): Bin => {
    const zones = (sheet.keepOut ?? []).map((zone) => {
      const figure = rectangleFigure(zone.length, zone.width);
      sources.push(makeSource(figure, gap, [0], false));
      return { source: sources.length - 1, x: zone.x - margin, y: zone.y - margin };
    });
    return {
      id: sheet.id,
      index,
      length: sheet.length - 2 * margin,
      width: sheet.width - 2 * margin,
      area: sheet.length * sheet.width,
      cost: costs[index]!,
      count: sheet.count ?? Infinity,
      zones,
    };
  });
  const strips = strip === null ? [] : [stripBin(strip)];
  const shapes = layOutShapes(sources);
  return { gap, margin, strip, kinds, bins: [...bins, ...strips], shapes, clash: makeClash(shapes) };
}

/** What the one strip of a job is called in its plan. */
export const stripId = 'strip';

function stripBin(width: number): Bin {
  return { id: stripId, index: 0, length: Infinity, width, area: Infinity, cost: 0, count: 1, zones: [] };
}

function makeKind(part: NestPart, index: number): Kind {
  const figure = { outer: makeRing(part.outline), holes: (part.holes ?? []).map(makeRing) };
  return { id: part.id, index, figure, area: figureArea(figure), count: part.count ?? 1 };
}

/** Outlines of no more corners are grown well even in a hurry. */
const mostKept = 24;

function makeSource(figure: Figure, gap: number, angles: readonly number[], isHurried: boolean): ShapeSource {
  const isCoarse = isHurried && figure.outer.length / 2 > mostKept;
  const grown = isCoarse ? growInHurry(figure, gap) : growFigure(figure, gap);
  return { figure, grown, matched: gap > 0 ? grown.outer : figure.outer, angles };
}

function rectangleFigure(length: number, width: number): Figure {
  return {
    outer: makeRing([
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ]),
    holes: [],
  };
}

/** A sheet without a price costs what the dearest rate per area of the others makes of it; its area when none costs anything. */
function fillCosts(sheets: readonly NestSheet[]): readonly number[] {
  const area = (sheet: NestSheet) => sheet.length * sheet.width;
  const dearest = Math.max(0, ...sheets.map((sheet) => (sheet.cost ?? 0) / area(sheet)));
  const rate = dearest > 0 ? dearest : 1;
  return sheets.map((sheet) => sheet.cost ?? area(sheet) * rate);
}

/** Whether a kind, turned some way, fits a rectangle. */
export function fitsRectangle({ shapes }: Model, kind: number, length: number, width: number): boolean {
  for (let p = shapes.firstPose[kind]!; p < shapes.firstPose[kind + 1]!; p++) {
    if (shapes.width[p]! <= length && shapes.height[p]! <= width) return true;
  }
  return false;
}

/** Whether a kind fits some stock that exists, its keep-outs not asked. */
export function fitsStock(model: Model, kind: number): boolean {
  return model.bins.some((bin) => bin.count > 0 && fitsRectangle(model, kind, bin.length, bin.width));
}
