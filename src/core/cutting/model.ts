import type { CuttingJob, CuttingPart, CuttingStock } from './types.ts';
import { across, along } from './direction.ts';
import type { Direction, Limits } from './direction.ts';
import { findGrid, gridDown, gridUp } from './grid.ts';
import { planPieces } from './keep-out.ts';
import type { Block, SheetPieces } from './keep-out.ts';

/**
 * Parts of one size, in whole grid units with one kerf added to each extent. With the kerf added to the usable stock
 * as well, sizes add up as if the saw took nothing (cutting.md section 9).
 */
export interface Kind {
  readonly id: string;
  readonly index: number;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  readonly turn: boolean;
  readonly area: number;
}

/** A stock size in the same units, trimmed, with one kerf added. */
export interface Bin {
  readonly id: string;
  readonly index: number;
  readonly length: number;
  readonly width: number;
  readonly area: number;
  readonly cost: number;
  readonly count: number;
  /** Corner of the usable rectangle, grid units. */
  readonly x: number;
  readonly y: number;
  /** Ways to saw around the keep-outs; one single piece where there are none. */
  readonly pieces: readonly SheetPieces[];
  readonly hasKeepOut: boolean;
  /** Keep-outs from the corner of the usable rectangle. */
  readonly blocks: readonly Block[];
}

/** The job in whole numbers. */
export interface Model {
  readonly style: 'guillotine' | 'free' | 'length';
  readonly unit: number;
  readonly kerfX: number;
  readonly kerfY: number;
  readonly kinds: readonly Kind[];
  readonly bins: readonly Bin[];
  readonly limits: Limits;
  /** All costs are multiples of it; 0 when they have no common measure worth using. */
  readonly costGrid: number;
  readonly keepLength: number;
  readonly keepWidth: number;
  /** True when a size had to be taken to the 0.01 mm grid. */
  readonly rounded: boolean;
}

/** Turns a job that `checkJob` passes into whole numbers: parts up, stock down. */
export function buildModel(job: CuttingJob): Model {
  const style = job.cuts?.style ?? 'guillotine';
  const flat = style === 'length';
  const grid = findGrid(job);
  const { unit } = grid;
  const up = (value: number) => gridUp(value, unit);
  const kerfX = up(job.kerf ?? 0);
  const kerfY = flat ? 0 : kerfX;
  const limits = readLimits(job, flat, unit);
  const keep = job.keepLeftover;
  const kinds = job.parts.map((part, index) => makeKind(part, index, { job, flat, up, kerfX, kerfY }));
  const costs = fillCosts(job.stock, flat);
  const bins = job.stock.map((stock, index) =>
    makeBin(stock, index, { job, flat, unit, kerfX, kerfY, limits, cost: costs[index] ?? 0 }),
  );
  return {
    style,
    unit,
    kerfX,
    kerfY,
    kinds,
    bins,
    limits,
    costGrid: findCostGrid(costs),
    keepLength: keep ? up(keep.minLength) : Infinity,
    keepWidth: keep ? (flat ? 1 : up(keep.minWidth ?? 0)) : Infinity,
    rounded: grid.rounded,
  };
}

interface KindContext {
  readonly job: CuttingJob;
  readonly flat: boolean;
  readonly up: (value: number) => number;
  readonly kerfX: number;
  readonly kerfY: number;
}

function makeKind(part: CuttingPart, index: number, context: KindContext): Kind {
  const length = context.up(part.length) + context.kerfX;
  const width = context.flat ? 1 : context.up(part.width ?? 0) + context.kerfY;
  const turn = !context.flat && length !== width && (part.turn ?? context.job.turn ?? false);
  return { id: part.id, index, length, width, count: part.count ?? 1, turn, area: length * width };
}

interface BinContext {
  readonly job: CuttingJob;
  readonly flat: boolean;
  readonly unit: number;
  readonly kerfX: number;
  readonly kerfY: number;
  readonly limits: Limits;
  readonly cost: number;
}

function makeBin(stock: CuttingStock, index: number, context: BinContext): Bin {
  const { job, flat, unit, kerfX, kerfY } = context;
  const trim = job.trim ?? {};
  const x = gridUp(trim.left ?? 0, unit);
  const y = flat ? 0 : gridUp(trim.bottom ?? 0, unit);
  const right = gridDown(stock.length - (trim.right ?? 0), unit);
  const top = flat ? 1 : gridDown((stock.width ?? 0) - (trim.top ?? 0), unit);
  const length = Math.max(0, right - x) + kerfX;
  const width = Math.max(0, top - y) + kerfY;
  const blocks = (stock.keepOut ?? []).map((r) => ({
    x: gridDown(r.x, unit) - x,
    y: flat ? 0 : gridDown(r.y, unit) - y,
    right: gridUp(r.x + r.length, unit) - x,
    top: flat ? 1 : gridUp(r.y + r.width, unit) - y,
  }));
  const pieces = planPieces({ length, width, blocks, kerfX, kerfY, limits: context.limits });
  return {
    id: stock.id,
    index,
    length,
    width,
    area: length * width,
    cost: context.cost,
    count: stock.count ?? Infinity,
    x,
    y,
    pieces,
    hasKeepOut: blocks.length > 0,
    blocks,
  };
}

function readLimits(job: CuttingJob, flat: boolean, unit: number): Limits {
  const cuts = job.cuts ?? {};
  const sawn = (cuts.style ?? 'guillotine') === 'guillotine';
  const first = { along, across, either: null }[cuts.firstCut ?? 'either'] as Direction | null;
  const limit = (value: number | null | undefined) =>
    sawn && value != null ? Math.floor(value / unit + 1e-6) : Infinity;
  return {
    maxStages: flat ? 1 : sawn ? (cuts.maxStages ?? Infinity) : Infinity,
    exact: flat || (sawn && (cuts.exact ?? false)),
    firstCut: flat ? across : sawn ? first : null,
    maxRip: limit(cuts.maxRip),
    maxCut: limit(cuts.maxCut),
  };
}

/**
 * What each stock costs. A cost missing beside others is taken at the dearest rate by area (by length in one dimension) of
 * those given; where none is given, or all are 0, it is the area (the length) itself, so that nothing is free for want of a price.
 */
export function fillCosts(stock: readonly CuttingStock[], flat: boolean): readonly number[] {
  const size = (each: CuttingStock) => each.length * (flat ? 1 : (each.width ?? 0));
  const dearest = Math.max(0, ...stock.map((each) => (each.cost ?? 0) / size(each)));
  const rate = dearest > 0 ? dearest : 1;
  return stock.map((each) => each.cost ?? size(each) * rate);
}

/** The largest of 1, 0.1, ... 1e-6 steps' multiples that divides every cost; 0 when there is none. */
function findCostGrid(costs: readonly number[]): number {
  for (const scale of [1, 100, 10000]) {
    const whole = costs.map((cost) => Math.round(cost * scale));
    const fits = costs.every((cost, i) => Math.abs(cost * scale - (whole[i] ?? 0)) <= 1e-7 * scale);
    if (!fits || whole.some((each) => each > 2 ** 52)) continue;
    const divisor = whole.reduce((a, b) => commonDivisor(a, b), 0);
    return divisor / scale;
  }
  return 0;
}

export function commonDivisor(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
