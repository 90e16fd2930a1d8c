import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { DesignAnalysis } from './design.ts';

/** Singular values below this share of the largest count as nothing (columns have unit length). */
const nothing = 1e-7; // a direction ten million times less certain than the best one is not known in any trade

/**
 * Rank, covariance, redundancy and free directions of a design whose rows are divided by their sigmas; slow and sure, for
 * some dozens of unknowns. `analyseRows` is quick.
 */
export function analyseBySingularValues(
  design: readonly (readonly number[])[],
  unknowns: number,
): DesignAnalysis {
  if (unknowns === 0) return fixedDesign(design.length);
  const scales = Array.from({ length: unknowns }, (_, k) => Math.hypot(...design.map((row) => row[k] ?? 0)));
  const inverse = scales.map((scale) => (scale > 0 ? 1 / scale : 1));
  const rows = Math.max(design.length, unknowns);
  const scaled = Matrix.zeros(rows, unknowns);
  design.forEach((row, i) => row.forEach((value, k) => scaled.set(i, k, value * (inverse[k] ?? 1))));
  const svd = new SingularValueDecomposition(scaled, { autoTranspose: true });
  const largest = Math.max(...svd.diagonal);
  const kept = svd.diagonal.flatMap((value, k) => (value > nothing * largest && value > 0 ? [k] : []));
  const { leftSingularVectors: left, rightSingularVectors: right } = svd;
  const free = svd.diagonal.flatMap((_, k) => (kept.includes(k) ? [] : [k]));
  const sumOver = (term: (k: number) => number) => kept.reduce((sum, k) => sum + term(k), 0);
  return {
    rank: kept.length,
    covariance: table(unknowns, (i, j) => {
      const share = sumOver((k) => (right.get(i, k) * right.get(j, k)) / (svd.diagonal[k] ?? 1) ** 2);
      return share * (inverse[i] ?? 1) * (inverse[j] ?? 1);
    }),
    residualCovariance: table(
      design.length,
      (i, j) => (i === j ? 1 : 0) - sumOver((k) => left.get(i, k) * left.get(j, k)),
    ),
    nullSpace: free.map((k) =>
      Array.from({ length: unknowns }, (_, i) => right.get(i, k) * (inverse[i] ?? 1)),
    ),
  };
}

function fixedDesign(readings: number): DesignAnalysis {
  const residualCovariance = table(readings, (i, j) => (i === j ? 1 : 0));
  return { rank: 0, covariance: [], residualCovariance, nullSpace: [] };
}

function table(size: number, entry: (i: number, j: number) => number): readonly (readonly number[])[] {
  return Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => entry(i, j)));
}
