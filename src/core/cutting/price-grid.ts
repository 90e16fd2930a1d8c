import { roundBound } from './bounds.ts';
import { valueOf } from './boards/board-lp.ts';
import type { Pattern } from './boards/board-lp.ts';
import { addPattern } from './boards/board-rows.ts';
import { settle } from './boards/generate-rows.ts';
import { capPattern, mostPivots, usualLean } from './grid-program.ts';
import type { GridProgram, KindPattern } from './grid-program.ts';
import { valueLifted, valueProperly } from './lifted-plates.ts';
import { dualBound } from './master.ts';
import type { Bin, Model } from './model.ts';

/** The best bound by any program of grids, and the prices that gave it. */
export interface BestBound {
  readonly model: Model;
  /** Sums that one pricing may make at most. */
  readonly work: number;
  /** Whether patterns shall hold no kind more often than wanted. */
  readonly counts: boolean;
  /** Not yet a total that sheets can come to. */
  bound: number;
  /** At these no pattern is worth more than it costs. */
  centre: Float64Array | null;
}

/**
 * Prices between the best so far and those of the program, nearer to the latter where that yields nothing and nearer to
 * the former where it is too much work.
 */
export function priceGridProgram(best: BestBound, level: GridProgram): 'more' | 'settled' | 'stuck' {
  const { model, centre } = best;
  const { program, lp } = level;
  settle(program, lp, mostPivots);
  if (isHopeless(best, valueOf(lp))) return 'settled';
  const own = new Float64Array(model.kinds.length);
  program.kinds.forEach((kind, row) => (own[kind] = Math.max(0, lp.prices[row] as number)));
  let lean = centre ? level.lean : 0;
  let [least, most] = [-1, 1];
  for (let tries = 0; tries < mostTries; tries++) {
    const prices = centre ? own.map((price, i) => price + lean * ((centre[i] as number) - price)) : own;
    const yields = priceGrid(best, level, prices);
    if (yields === true) {
      level.lean = Math.max(usualLean, lean);
      return 'more';
    }
    if (yields === false) {
      if (lean === 0) return 'settled';
      most = lean;
      lean = least < 0 ? 0 : (least + most) / 2;
    } else {
      if (!centre) return 'stuck';
      least = lean;
      lean = most < 1 ? (least + most) / 2 : 1 - (1 - lean) / 4;
    }
  }
  return 'stuck';
}

/** After so many the prices at which something can be done are too near to those known. */
const mostTries = 6;

/** Whether the program as it stands cannot lift the bound; before kinds are counted it must be known better than that. */
function isHopeless({ model, bound, counts }: BestBound, value: number): boolean {
  return counts ? bound > value * (1 - 1e-4) : roundBound(model, bound) >= roundBound(model, value);
}

/** Takes the bound at some prices; answers whether it rose or patterns were new, null when it is too much work. */
function priceGrid(best: BestBound, level: GridProgram, prices: Float64Array): boolean | null {
  const { model } = best;
  const { program } = level;
  const most = new Float64Array(model.bins.length);
  const before = best.bound;
  let from = program.patterns.length;
  const isCounted = level.limits.some((limit) => limit > 0);
  const isDone = isCounted ? addProper(best, level, prices, most) : addBest(level, model, prices, most);
  const bound = dualBound(model, countsOf(model), prices, most);
  if (bound > before) {
    best.bound = bound;
    // so that near these prices no pattern is worth much more than it costs
    const scale = mostOver(model, most);
    best.centre = prices.map((price) => price / scale);
  }
  const added = program.patterns.length > from;
  const cheaper = prices.slice();
  for (let i = 0; i < variations && program.patterns.length > from; i++) {
    from = program.patterns.length;
    const { rows } = program.patterns[from - 1] as Pattern;
    for (const row of rows) {
      const kind = program.kinds[row];
      if (kind !== undefined) cheaper[kind] = (cheaper[kind] as number) * 0.7;
    }
    addBest(level, model, cheaper, null);
  }
  if (added || best.bound > before * (1 + 1e-6)) return true;
  return isDone ? false : null;
}

/** How many times its cost a pattern is worth at most, no less than 1. */
function mostOver({ bins }: Model, most: Float64Array): number {
  const free = bins.filter((bin) => bin.count === Infinity && bin.cost > 0);
  return Math.max(1, ...free.map((bin) => (most[bin.index] as number) / bin.cost));
}

/** More patterns a round, unlike the best: fewer rounds are needed. */
const variations = 2;

/** Adds the best pattern of each stock on the grid, as far as limits allow, where it lowers the program. */
function addBest(level: GridProgram, model: Model, prices: Float64Array, most: Float64Array | null): true {
  for (const each of level.lifted) {
    const filling = valueLifted(each, model, prices);
    if (most) most[each.bin.index] = filling.value;
    addFilling(level, capPattern({ bin: each.bin, ...filling }, level.limits));
  }
  return true;
}

/** The same with patterns that keep the limits; false when it is too much work. */
function addProper(
  { model, work }: BestBound,
  level: GridProgram,
  prices: Float64Array,
  most: Float64Array,
): boolean {
  const { lp, program, limits } = level;
  let isDone = true;
  for (const each of level.lifted) {
    const { bin } = each;
    const counted = program.countRows[bin.index] as number;
    const cost = bin.cost - (counted < 0 ? 0 : Math.min(0, lp.prices[counted] as number));
    const pricing = valueProperly(each, model, prices, { limits, cost, work: work * shareOfLabels });
    most[bin.index] = pricing.most;
    isDone &&= pricing.isDone;
    for (const filling of pricing.fillings) addFilling(level, { bin, ...filling });
  }
  return isDone;
}

/** Sums of labels take longer than sums of plates. */
const shareOfLabels = 0.03;

function addFilling(level: GridProgram, { bin, kinds, counts }: KindPattern): void {
  const { program } = level;
  const rows = kinds.map((kind) => program.kinds.indexOf(kind));
  if (gains(level, bin, rows, counts)) addPattern(program, bin, rows, counts);
}

function gains(
  { program, lp }: GridProgram,
  bin: Bin,
  rows: readonly number[],
  counts: readonly number[],
): boolean {
  const counted = program.countRows[bin.index] as number;
  let cost = bin.cost - (counted < 0 ? 0 : (lp.prices[counted] as number));
  rows.forEach((row, k) => (cost -= (lp.prices[row] as number) * (counts[k] as number)));
  return cost < -1e-9 * Math.max(1, bin.cost);
}

function countsOf({ kinds }: Model): Float64Array {
  return Float64Array.from(kinds, (kind) => kind.count);
}
