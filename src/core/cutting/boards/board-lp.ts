/** A way to cut one board: how often each row of the program is in it. Rows are kinds of parts, then stocks with a count. */
export interface Pattern {
  readonly bin: number;
  readonly rows: Int32Array;
  readonly counts: Float64Array;
  readonly cost: number;
  /** What the program takes it to cost: a trifle more, so that no two ways come to the same and it never goes in circles. */
  readonly price: number;
}

/**
 * The relaxed master of boards with its basis, solved by the revised simplex method: patterns come and go while the
 * basis stays, which a program handed to a solver afresh cannot offer. The inverse lies column by column.
 */
export interface BoardLp {
  /** Rows that are kinds of parts; those after them are stocks with a count. */
  readonly kinds: number;
  readonly rows: number;
  readonly demand: Float64Array;
  readonly inverse: Float64Array;
  /** For each row what is basic there: a pattern, or below zero the row's own slack or the part bought for a penalty. */
  readonly basis: Int32Array;
  readonly amounts: Float64Array;
  readonly prices: Float64Array;
  readonly patterns: readonly Pattern[];
  readonly inBasis: Set<number>;
  readonly penalty: number;
  pivots: number;
}

export const surplusOf = (row: number): number => -(2 * row + 1);
export const boughtOf = (row: number): number => -(2 * row + 2);
const rowOfSlack = (entry: number): number => (-entry - 1) >> 1;
const isSurplus = (entry: number): boolean => entry < 0 && (-entry & 1) === 1;

/** Below it a number of a pivot column counts as nothing. */
const nothing = 1e-9;

export function startBoardLp(
  kinds: number,
  demand: Float64Array,
  patterns: readonly Pattern[],
  penalty: number,
): BoardLp {
  const rows = demand.length;
  const inverse = new Float64Array(rows * rows);
  const prices = new Float64Array(rows);
  const basis = new Int32Array(rows);
  for (let row = 0; row < rows; row++) {
    inverse[row * rows + row] = 1;
    prices[row] = row < kinds ? penalty : 0;
    basis[row] = boughtOf(row);
  }
  const amounts = demand.slice();
  return {
    ...{ kinds, rows, demand: demand.slice(), inverse, basis, amounts, prices, patterns },
    ...{ inBasis: new Set(), penalty, pivots: 0 },
  };
}

/** A copy to dive with; the patterns are shared. */
export function copyBoardLp(lp: BoardLp): BoardLp {
  return {
    ...lp,
    demand: lp.demand.slice(),
    inverse: lp.inverse.slice(),
    basis: lp.basis.slice(),
    amounts: lp.amounts.slice(),
    prices: lp.prices.slice(),
    inBasis: new Set(lp.inBasis),
  };
}

export function costOfEntry(lp: BoardLp, entry: number): number {
  if (entry >= 0) return (lp.patterns[entry] as Pattern).price;
  const row = rowOfSlack(entry);
  const trifle = ((row * 7919) % 1009) * 1e-12;
  return isSurplus(entry) || row >= lp.kinds ? trifle : lp.penalty;
}

/** What the relaxed program costs as the basis stands. */
export function valueOf(lp: BoardLp): number {
  let value = 0;
  for (let row = 0; row < lp.rows; row++) {
    value += costOfEntry(lp, lp.basis[row] as number) * (lp.amounts[row] as number);
  }
  return value;
}

/** What a pattern costs beyond the prices of its parts. */
export function reducedCostOf({ prices }: BoardLp, { rows, counts, price }: Pattern): number {
  let reduced = price;
  for (let k = 0; k < rows.length; k++) {
    reduced -= (prices[rows[k] as number] as number) * (counts[k] as number);
  }
  return reduced;
}

/** The column of an entry in terms of the basis. */
export function expand({ inverse, rows, patterns }: BoardLp, entry: number): Float64Array {
  const column = new Float64Array(rows);
  const add = (row: number, times: number) => {
    const from = row * rows;
    for (let i = 0; i < rows; i++) column[i] = (column[i] as number) + times * (inverse[from + i] as number);
  };
  if (entry < 0) add(rowOfSlack(entry), isSurplus(entry) ? -1 : 1);
  else {
    const pattern = patterns[entry] as Pattern;
    for (let k = 0; k < pattern.rows.length; k++) add(pattern.rows[k] as number, pattern.counts[k] as number);
  }
  return column;
}

/** Brings an entry into the basis by the ratio test; false when nothing bounds it. */
export function enter(lp: BoardLp, entry: number): boolean {
  const column = expand(lp, entry);
  let leaving = -1;
  let ratio = Infinity;
  for (let i = 0; i < lp.rows; i++) {
    const step = column[i] as number;
    if (step <= nothing) continue;
    const at = Math.max(0, lp.amounts[i] as number) / step;
    const isBetter = at < ratio - 1e-12 || (at < ratio + 1e-12 && step > (column[leaving] ?? 0));
    if (isBetter) [leaving, ratio] = [i, at];
  }
  if (leaving < 0) return false;
  exchange(lp, { entry, leaving, column });
  return true;
}

/** Swaps what is basic in a row; inverse, amounts and prices follow. */
export function exchange(
  lp: BoardLp,
  { entry, leaving, column }: { entry: number; leaving: number; column: Float64Array },
): void {
  const { rows, inverse, amounts, prices, basis } = lp;
  const pivot = column[leaving] as number;
  const touched: number[] = [];
  for (let i = 0; i < rows; i++) {
    if (i !== leaving && Math.abs(column[i] as number) > 1e-12) touched.push(i);
  }
  const reduced = reducedCostOfEntry(lp, entry);
  const amount = (amounts[leaving] as number) / pivot;
  for (const i of touched) amounts[i] = (amounts[i] as number) - (column[i] as number) * amount;
  amounts[leaving] = amount;
  for (let row = 0; row < rows; row++) {
    const from = row * rows;
    const share = (inverse[from + leaving] as number) / pivot;
    if (share === 0) continue;
    for (const i of touched)
      inverse[from + i] = (inverse[from + i] as number) - (column[i] as number) * share;
    inverse[from + leaving] = share;
    prices[row] = (prices[row] as number) + reduced * share;
  }
  lp.inBasis.delete(basis[leaving] as number);
  lp.inBasis.add(entry);
  basis[leaving] = entry;
  lp.pivots++;
  if (lp.pivots % refreshAfter === 0) refresh(lp);
}

/** Pivots after which amounts and prices are worked out afresh from the inverse. */
const refreshAfter = 60;

function reducedCostOfEntry(lp: BoardLp, entry: number): number {
  if (entry >= 0) return reducedCostOf(lp, lp.patterns[entry] as Pattern);
  const price = lp.prices[rowOfSlack(entry)] as number;
  return costOfEntry(lp, entry) + (isSurplus(entry) ? price : -price);
}

/** Amounts and prices anew from the inverse, against errors that add up. */
function refresh(lp: BoardLp): void {
  const { rows, inverse, amounts, prices, demand, basis } = lp;
  const costs = Float64Array.from(basis, (entry) => costOfEntry(lp, entry));
  amounts.fill(0);
  for (let row = 0; row < rows; row++) {
    const from = row * rows;
    const wanted = demand[row] as number;
    let price = 0;
    for (let i = 0; i < rows; i++) {
      const share = inverse[from + i] as number;
      if (share === 0) continue;
      price += (costs[i] as number) * share;
      amounts[i] = (amounts[i] as number) + share * wanted;
    }
    prices[row] = price;
  }
}

/** Changes a demand; amounts follow and may fall below zero until `restore` mends them. */
export function changeDemand(lp: BoardLp, row: number, by: number): void {
  const { rows, inverse, amounts, demand } = lp;
  demand[row] = (demand[row] as number) + by;
  for (let i = 0; i < rows; i++) {
    amounts[i] = (amounts[i] as number) + by * (inverse[row * rows + i] as number);
  }
}

/** Dual simplex steps until no amount is below zero, with the patterns known; false when that cannot be. */
export function restore(lp: BoardLp, mostSteps: number): boolean {
  for (let step = 0; step < mostSteps; step++) {
    let leaving = -1;
    let least = -1e-9;
    for (let i = 0; i < lp.rows; i++) {
      if ((lp.amounts[i] as number) < least) [leaving, least] = [i, lp.amounts[i] as number];
    }
    if (leaving < 0) return true;
    const entry = findReplacement(lp, leaving);
    if (entry === null) return false;
    exchange(lp, { entry, leaving, column: expand(lp, entry) });
  }
  return false;
}

/** What may be basic in a row instead: at nearly the least loss of price, the one with the largest step (Harris 1973). */
function findReplacement(lp: BoardLp, leaving: number): number | null {
  const { rows, inverse, patterns, inBasis, kinds } = lp;
  const shares = new Float64Array(rows);
  for (let row = 0; row < rows; row++) shares[row] = inverse[row * rows + leaving] as number;
  const offers: { readonly entry: number; readonly step: number; readonly reduced: number }[] = [];
  let limit = Infinity;
  const offer = (entry: number, step: number) => {
    if (step <= 1e-7 || inBasis.has(entry)) return;
    const reduced = Math.max(0, reducedCostOfEntry(lp, entry));
    if (reduced / step > limit) return;
    offers.push({ entry, step, reduced });
    limit = Math.min(limit, (reduced + harris) / step);
  };
  for (let p = 0; p < patterns.length; p++) {
    const pattern = patterns[p] as Pattern;
    let step = 0;
    for (let k = 0; k < pattern.rows.length; k++) {
      step -= (shares[pattern.rows[k] as number] as number) * (pattern.counts[k] as number);
    }
    offer(p, step);
  }
  for (let row = 0; row < rows; row++) {
    if (row < kinds) offer(surplusOf(row), shares[row] as number);
    offer(boughtOf(row), -(shares[row] as number));
  }
  let best: number | null = null;
  let size = 0;
  for (const { entry, step, reduced } of offers) {
    if (reduced / step <= limit && step > size) [best, size] = [entry, step];
  }
  return best;
}

/** A reduced cost may end so much below zero for the sake of a larger step. */
const harris = 1e-10;
