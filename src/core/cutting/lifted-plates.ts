import { countKinds } from './columns.ts';
import { liftSizes } from './lift-sizes.ts';
import type { Bin, Kind, Model } from './model.ts';
import { findPositions } from './positions.ts';
import type { Positions, Repeated } from './positions.ts';
import { plateValue, plateWork, tracePlate, valuePlates } from './plate-values.ts';
import type { PlateValues, PricedSize } from './plate-values.ts';
import { fillProperly } from './proper-labels.ts';

/** A piece of stock and its parts on a coarse grid on which everything that can be cut from it still can. */
export interface LiftedBin {
  readonly bin: Bin;
  readonly lengths: LiftedSide;
  readonly widths: LiftedSide;
}

interface LiftedSide {
  readonly cells: number;
  readonly sizes: ReadonlyMap<number, number>;
  readonly places: Positions;
}

/** What a coarse pricing yields: no pattern is worth more, and what the best one there would hold. */
export interface LiftedFilling {
  readonly value: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** Lays a grid of `cells` along the longest side of the stock, or of whole units where there are few. */
export function liftBin(model: Model, bin: Bin, cells: number): LiftedBin {
  const longest = Math.max(bin.length, bin.width);
  const gridOf = (whole: number) =>
    Math.min(whole, Math.max(Math.min(20, cells), Math.round((whole * cells) / longest)));
  return {
    bin,
    lengths: liftSide(listSizes(model, 'length'), bin.length, gridOf(bin.length)),
    widths: liftSide(listSizes(model, 'width'), bin.width, gridOf(bin.width)),
  };
}

function liftSide(sizes: readonly Repeated[], whole: number, cells: number): LiftedSide {
  const lifted = liftSizes(sizes, whole, cells);
  const coarse = sizes.map(({ count }, i) => ({ size: lifted[i] as number, count }));
  return {
    cells,
    sizes: new Map(sizes.map(({ size }, i) => [size, lifted[i] as number])),
    places: findPositions(
      coarse.filter(({ size }) => size > 0),
      cells,
    ),
  };
}

/** Each size parts may lie with along one side, the largest first, with how many parts there are of it. */
function listSizes({ kinds }: Model, side: 'length' | 'width'): readonly Repeated[] {
  const across = side === 'length' ? 'width' : 'length';
  const counts = new Map<number, number>();
  const add = (size: number, count: number) => counts.set(size, (counts.get(size) ?? 0) + count);
  for (const kind of kinds) {
    if (kind.count === 0) continue;
    add(kind[side], kind.count);
    if (kind.turn) add(kind[across], kind.count);
  }
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size);
}

/** How many sums one pricing of it makes. */
export function liftedWork({ lengths, widths }: LiftedBin): number {
  return plateWork(lengths.places, widths.places);
}

/** The most valuable pattern on the grid at some prices of the parts; it need not be one that can be cut. */
export function valueLifted(lifted: LiftedBin, model: Model, prices: Float64Array): LiftedFilling {
  const { lengths, widths } = lifted;
  const { plates, specks } = valueGrid(lifted, model, prices);
  const found = countKinds([tracePlate(plates, lengths.cells, widths.cells)]);
  const kinds = [...found.keys()].sort((a, b) => a - b);
  return {
    value: plateValue(plates, lengths.cells, widths.cells) + specks,
    kinds,
    counts: kinds.map((kind) => found.get(kind) as number),
  };
}

/** What patterns must keep to. */
export interface ProperLimits {
  /** How often each kind may be in one; below 1: as often as it fits. */
  readonly limits: Int32Array;
  /** Patterns worth no more are not looked for. */
  readonly cost: number;
  /** Sums one look may make. */
  readonly work: number;
}

/** Patterns within limits that are worth more than they cost; no such pattern is worth more than `most`. */
export interface ProperPricing {
  readonly most: number;
  readonly fillings: readonly LiftedFilling[];
  /** False where it became too much work. */
  readonly isDone: boolean;
}

/** The most valuable patterns within limits on the grid, looked for from the top down as far as the work allows. */
export function valueProperly(
  lifted: LiftedBin,
  model: Model,
  prices: Float64Array,
  { limits, cost, work }: ProperLimits,
): ProperPricing {
  const { plates, specks } = valueGrid(lifted, model, prices);
  const whole = { length: lifted.lengths.cells, width: lifted.widths.cells };
  const all = plateValue(plates, whole.length, whole.width) + specks;
  let most = all;
  for (const share of shares) {
    if (most <= cost) break;
    const least = all - share * (all - cost);
    const found = fillProperly({ plates, ...whole, least: (least - specks) * (1 - 1e-9), limits, work });
    if (!found) return { most, fillings: [], isDone: false };
    const fillings = found.map((filling) => ({ ...filling, value: filling.value + specks }));
    // specks may come to more by themselves, without any part on the grid
    most = Math.max(least, specks, fillings[0]?.value ?? 0);
    if (fillings.length > 0) return { most, fillings, isDone: true };
  }
  return { most: Math.max(most, cost), fillings: [], isDone: true };
}

/** How far to look down from the value without limits to the cost: the further, the more work. */
const shares = [0.25, 0.5, 0.75, 1];

/** Best values of all plates of the grid, and what the parts that take no cell of it may come to. */
function valueGrid(
  lifted: LiftedBin,
  model: Model,
  prices: Float64Array,
): { readonly plates: PlateValues; readonly specks: number } {
  const sizes = model.kinds.flatMap((kind) => sizesOf(lifted, kind, prices[kind.index] as number));
  const inGrid = sizes.filter(({ length, width }) => length > 0 && width > 0);
  const plates = valuePlates(lifted.lengths.places, lifted.widths.places, inGrid);
  return { plates, specks: worthOfSpecks(sizes, model, prices) };
}

function sizesOf({ bin, lengths, widths }: LiftedBin, kind: Kind, value: number): readonly PricedSize[] {
  if (value <= 1e-12 || kind.count === 0) return [];
  const lie = (length: number, width: number, turned: boolean): readonly PricedSize[] =>
    length > bin.length || width > bin.width
      ? []
      : [
          {
            ...{ kind: kind.index, turned, value },
            length: lengths.sizes.get(length) as number,
            width: widths.sizes.get(width) as number,
          },
        ];
  const straight = lie(kind.length, kind.width, false);
  return kind.turn ? [...straight, ...lie(kind.width, kind.length, true)] : straight;
}

/** All parts that take no cell of the grid: they may come on top of any pattern. */
function worthOfSpecks(sizes: readonly PricedSize[], { kinds }: Model, prices: Float64Array): number {
  const specks = new Set(
    sizes.filter(({ length, width }) => length === 0 || width === 0).map(({ kind }) => kind),
  );
  let worth = 0;
  for (const kind of specks) worth += (prices[kind] as number) * (kinds[kind] as Kind).count;
  return worth;
}
