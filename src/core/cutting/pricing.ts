import { across, along } from './direction.ts';
import type { Direction } from './direction.ts';
import type { Bin, Kind, Model } from './model.ts';
import { findPositions, thinPositions } from './positions.ts';
import type { Positions } from './positions.ts';
import { plateValue, plateWork, tracePlate, valuePlates } from './plate-values.ts';
import type { PlateValues, PricedSize } from './plate-values.ts';
import { valueStrips } from './strip-values.ts';
import { makeFree, other } from './tree.ts';
import type { Node } from './tree.ts';
import { fillBoard } from './board-values.ts';

/** A way to fill a piece of stock that pricing proposes, with the value of its parts at the given prices. */
export interface Proposal {
  readonly bin: Bin;
  readonly way: number;
  readonly roots: readonly Node[];
  readonly value: number;
}

/** What one exact or rounded pricing yields: for each stock no pattern is worth more than `most`. */
export interface Pricing {
  readonly most: Float64Array;
  readonly proposals: readonly Proposal[];
}

/** Sets of positions prepared once for a job; rounded so that one pricing stays within the work allowed. */
export interface Pricer {
  readonly model: Model;
  /** Grid units per step; 1: exact, and its patterns can be cut. */
  readonly step: number;
  readonly xs: Positions;
  readonly ys: Positions;
  /** Places for patterns that can be cut, where those above are rounded; null when they are exact. */
  readonly thin: { readonly xs: Positions; readonly ys: Positions } | null;
}

const steps = [
  1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 128, 160, 200, 256, 400, 800, 1600,
];

/** Prepares pricing for a job; `work` bounds the sums of one pricing. */
export function makePricer(model: Model, work: number): Pricer {
  for (const step of steps) {
    if (longest(model) / step > 60000) continue;
    const pricer = pricerAt(model, step);
    if (plateWork(pricer.xs, pricer.ys) <= work || step === steps.at(-1)) {
      return step === 1 ? pricer : { ...pricer, thin: thinPlaces(model, work / 2) };
    }
  }
  return pricerAt(model, longest(model) / 100);
}

function longest(model: Model): number {
  return Math.max(...model.bins.map((bin) => Math.max(bin.length, bin.width)));
}

function pricerAt(model: Model, step: number): Pricer {
  const down = (size: number) => Math.floor(size / step + 1e-9);
  const kinds = model.kinds.filter((kind) => kind.count > 0 && !isTiny(kind, step));
  const limitX = down(Math.max(...model.bins.map((bin) => bin.length)));
  const limitY = down(Math.max(...model.bins.map((bin) => bin.width)));
  const xs = findPositions(repeated(kinds, down, 'length'), limitX);
  const ys = findPositions(repeated(kinds, down, 'width'), limitY);
  return { model, step, xs, ys, thin: null };
}

/** So many places on each side that one pricing stays within the work; null on a grid too fine to list. */
function thinPlaces(model: Model, work: number): Pricer['thin'] {
  if (longest(model) > 60_000) return null;
  const most = Math.floor(Math.cbrt(2 * work));
  const kinds = model.kinds.filter((kind) => kind.count > 0);
  const sides = (side: 'length' | 'width', across: 'length' | 'width') =>
    kinds.flatMap((kind) => (kind.turn ? [kind[side], kind[across]] : [kind[side]]));
  const limitX = Math.max(...model.bins.map((bin) => bin.length));
  const limitY = Math.max(...model.bins.map((bin) => bin.width));
  return {
    xs: thinPositions(sides('length', 'width'), limitX, most),
    ys: thinPositions(sides('width', 'length'), limitY, most),
  };
}

function repeated(kinds: readonly Kind[], down: (size: number) => number, side: 'length' | 'width') {
  const across = side === 'length' ? 'width' : 'length';
  return kinds.flatMap((kind) => [
    { size: down(kind[side]), count: kind.count },
    ...(kind.turn ? [{ size: down(kind[across]), count: kind.count }] : []),
  ]);
}

/** Prices with the full dynamic program: a valid upper limit for every stock, and patterns when nothing was rounded. */
export function priceFully(pricer: Pricer, prices: Float64Array): Pricing {
  const { model, step } = pricer;
  const down = (size: number) => Math.floor(size / step + 1e-9);
  const sizes = pricedSizes(model, prices)
    .filter((size) => !isTiny(size, step))
    .map((size) => ({ ...size, length: down(size.length), width: down(size.width) }));
  const plates = valuePlates(pricer.xs, pricer.ys, sizes);
  const most = Float64Array.from(
    model.bins,
    (bin) => plateValue(plates, down(bin.length), down(bin.width)) + tinyValue(pricer, prices, bin),
  );
  const proposals = step === 1 ? model.bins.flatMap((bin) => proposeBest(plates, bin)) : [];
  return { most, proposals };
}

/** Patterns of any number of stages, cut at some of the places only: no limit on what is possible. */
export function priceThinly({ model, thin }: Pricer, prices: Float64Array): readonly Proposal[] {
  if (!thin) return [];
  const plates = valuePlates(thin.xs, thin.ys, pricedSizes(model, prices));
  return model.bins.flatMap((bin) => proposeBest(plates, bin));
}

/** Less than one step long or wide: rounded down it would take no room at all. */
function isTiny(size: { readonly length: number; readonly width: number }, step: number): boolean {
  return Math.min(size.length, size.width) < step;
}

/** What all parts too tiny for the steps may add to a pattern at most. */
function tinyValue({ model, step }: Pricer, prices: Float64Array, bin: Bin): number {
  return model.kinds
    .filter((kind) => isTiny(kind, step))
    .reduce((sum, kind) => {
      const most = Math.min(kind.count, Math.floor(bin.area / kind.area));
      return sum + (prices[kind.index] as number) * most;
    }, 0);
}

function proposeBest(plates: PlateValues, bin: Bin): readonly Proposal[] {
  let best = -1;
  let bestWay = 0;
  bin.pieces.forEach((way, at) => {
    const value = way.pieces.reduce((sum, piece) => sum + plateValue(plates, piece.length, piece.width), 0);
    if (value > best) [best, bestWay] = [value, at];
  });
  const pieces = bin.pieces[bestWay]?.pieces ?? [];
  if (best <= 0) return [];
  const roots = pieces.map((piece) => tracePlate(plates, piece.length, piece.width));
  return [{ bin, way: bestWay, roots, value: best }];
}

/** The sizes parts may lie in, priced; only what is worth something. */
export function pricedSizes(model: Model, prices: Float64Array): readonly PricedSize[] {
  return model.kinds.flatMap((kind) => {
    const value = prices[kind.index] as number;
    if (value <= 1e-12 || kind.count === 0) return [];
    const straight = { kind: kind.index, length: kind.length, width: kind.width, turned: false, value };
    return kind.turn
      ? [straight, { ...straight, length: kind.width, width: kind.length, turned: true }]
      : [straight];
  });
}

/** Prices with two-stage patterns only: quick, cuttable, no limit on what is possible. */
export function priceStrips(model: Model, prices: Float64Array): readonly Proposal[] {
  const sizes = pricedSizes(model, prices);
  const { firstCut } = model.limits;
  const directions: readonly Direction[] = firstCut === null ? [along, across] : [firstCut];
  return model.bins.flatMap((bin) =>
    directions.flatMap((direction) => {
      const proposals = bin.pieces.map((_, at) => proposeStrips(sizes, bin, at, direction));
      return proposals
        .filter((each) => each.value > 0)
        .sort((a, b) => b.value - a.value)
        .slice(0, 1);
    }),
  );
}

function proposeStrips(sizes: readonly PricedSize[], bin: Bin, way: number, direction: Direction): Proposal {
  let value = 0;
  const roots = (bin.pieces[way]?.pieces ?? []).map((piece) => {
    const best = valueStrips(
      sizes,
      piece,
      piece.direction === direction ? direction : piece.direction ? other(piece.direction) : direction,
    );
    value += best.value;
    return best.tree;
  });
  return { bin, way, roots, value };
}

/** Prices boards: the best row of parts along the length, no kind more often than wanted. Exact. */
export function priceBoards(model: Model, prices: Float64Array): Pricing {
  const most = new Float64Array(model.bins.length);
  const proposals: Proposal[] = [];
  for (const bin of model.bins) {
    const whole = fillBoard(model, prices, bin.length);
    most[bin.index] = whole.value;
    if (!bin.hasKeepOut) {
      proposals.push({ bin, way: 0, roots: [rowOf(model, whole.kinds)], value: whole.value });
    }
  }
  return { most, proposals };
}

/** A board's parts end to end, as a tree of cuts. */
export function rowOf(model: Model, kinds: readonly number[]): Node {
  const root = makeFree(0, 1, 0, 0);
  root.direction = across;
  root.kids = kinds.map((index) => {
    const node = makeFree((model.kinds[index] as Kind).length, 1, across, 1);
    node.kind = index;
    return node;
  });
  return root;
}
