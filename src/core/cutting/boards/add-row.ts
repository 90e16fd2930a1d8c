import { boughtOf } from './board-lp.ts';
import type { BoardLp, Pattern } from './board-lp.ts';

/** A row every plan of whole boards keeps to: the patterns come to at least `least` together, each times its weight. */
export interface WholeRow {
  readonly least: number;
  readonly weigh: (pattern: Pattern) => number;
}

/** The program with one row more. The basis stays and lacks what the row wants until `restore` mends it. */
export function addRow(lp: BoardLp, { least, weigh }: WholeRow): BoardLp {
  const { rows } = lp;
  const weights = lp.patterns.map(weigh);
  const amounts = new Float64Array(rows + 1);
  amounts.set(lp.amounts);
  amounts[rows] = lp.basis.reduce(
    (sum, entry, i) => sum + (entry < 0 ? 0 : (weights[entry] as number) * (lp.amounts[i] as number)),
    -least,
  );
  return {
    ...lp,
    rows: rows + 1,
    patterns: lp.patterns.map((pattern, p) => withRow(pattern, rows, -(weights[p] as number))),
    inverse: growInverse(lp, weights),
    amounts,
    demand: Float64Array.from([...lp.demand, -least]),
    basis: Int32Array.from([...lp.basis, boughtOf(rows)]),
    prices: Float64Array.from([...lp.prices, 0]),
    inBasis: new Set([...lp.inBasis, boughtOf(rows)]),
  };
}

/** The inverse with the slack of the new row basic in it. */
function growInverse({ rows, inverse, basis }: BoardLp, weights: readonly number[]): Float64Array {
  const grown = new Float64Array((rows + 1) ** 2);
  for (let row = 0; row < rows; row++) {
    const to = row * (rows + 1);
    let own = 0;
    for (let i = 0; i < rows; i++) {
      const share = inverse[row * rows + i] as number;
      const entry = basis[i] as number;
      grown[to + i] = share;
      if (entry >= 0) own += share * (weights[entry] as number);
    }
    grown[to + rows] = own;
  }
  grown[(rows + 1) ** 2 - 1] = 1;
  return grown;
}

function withRow(pattern: Pattern, row: number, count: number): Pattern {
  if (count === 0) return pattern;
  return {
    ...pattern,
    rows: Int32Array.from([...pattern.rows, row]),
    counts: Float64Array.from([...pattern.counts, count]),
  };
}
