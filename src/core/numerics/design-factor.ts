import type { DesignAnalysis } from './design.ts';

/** A column that the others before it leave less of than this share (of its square) is for the slower, surer way. */
const plain = 1e-6; // squares lose half the digits: ten are left

/**
 * The analysis of a design whose unknowns are all well determined, by the triangle of its normal equations: a hundred times
 * quicker than by singular values. Null when an unknown is not, or nearly not. `scales` brings the columns to unit length.
 */
export function analyseByFactor(
  design: readonly (readonly number[])[],
  scales: readonly number[],
): DesignAnalysis | null {
  const count = scales.length;
  const rows = design.map((row) => Float64Array.from(row, (value, k) => value * (scales[k] ?? 1)));
  const factor = factorNormal(rows, count);
  if (factor === null) return null;
  const spans = rows.map((row) => solveForward(factor, row));
  const inverse = Array.from({ length: count }, (_, k) => {
    const unit = new Float64Array(count);
    unit[k] = 1;
    return solveForward(factor, unit);
  });
  const scale = (i: number, j: number) => (scales[i] ?? 1) * (scales[j] ?? 1);
  return {
    rank: count,
    covariance: products(inverse, (i, j, product) => product * scale(i, j)),
    residualCovariance: products(spans, (i, j, product) => (i === j ? 1 : 0) - product),
    nullSpace: [],
  };
}

/** Lower triangle L with L Lᵀ = AᵀA, row by row; null when a pivot is too small. */
function factorNormal(rows: readonly Float64Array[], count: number): readonly Float64Array[] | null {
  const normal = Array.from({ length: count }, () => new Float64Array(count));
  for (const row of rows) addSquare(normal, row);
  const factor: Float64Array[] = [];
  for (let i = 0; i < count; i += 1) {
    const line = new Float64Array(count);
    for (let j = 0; j < i; j += 1) {
      const other = factor[j] ?? line;
      line[j] = ((normal[i]?.[j] ?? 0) - dot(line, other, j)) / (other[j] ?? 1);
    }
    const pivot = (normal[i]?.[i] ?? 0) - dot(line, line, i);
    if (!(pivot > plain)) return null;
    line[i] = Math.sqrt(pivot);
    factor.push(line);
  }
  return factor;
}

function addSquare(normal: readonly Float64Array[], row: Float64Array): void {
  for (let i = 0; i < row.length; i += 1) {
    const value = row[i] ?? 0;
    const line = normal[i];
    if (value === 0 || !line) continue; // most of a row is nothing
    for (let j = 0; j <= i; j += 1) line[j] = (line[j] ?? 0) + value * (row[j] ?? 0);
  }
}

function dot(a: Float64Array, b: Float64Array, length: number): number {
  let sum = 0;
  for (let k = 0; k < length; k += 1) sum += (a[k] ?? 0) * (b[k] ?? 0);
  return sum;
}

function solveForward(factor: readonly Float64Array[], right: Float64Array): Float64Array {
  const solution = new Float64Array(right.length);
  factor.forEach((line, i) => {
    solution[i] = ((right[i] ?? 0) - dot(line, solution, i)) / (line[i] ?? 1);
  });
  return solution;
}

/** A symmetric table of what is made of the product of every two vectors. */
function products(
  vectors: readonly Float64Array[],
  make: (i: number, j: number, product: number) => number,
): readonly (readonly number[])[] {
  const table = vectors.map(() => new Array<number>(vectors.length).fill(0));
  vectors.forEach((a, i) => {
    for (let j = 0; j <= i; j += 1) {
      const value = make(i, j, dot(a, vectors[j] ?? a, a.length));
      const [own, other] = [table[i], table[j]];
      if (own && other) own[j] = other[i] = value;
    }
  });
  return table;
}
