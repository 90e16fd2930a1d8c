import type { DesignAnalysis } from './design.ts';
import { analyseRows, covarianceTable, spreadOf } from './row-analysis.ts';
import { sparseRow } from './sparse-rows.ts';

/** Rank, covariance, redundancy and free directions of a design whose rows are divided by their sigmas, with every entry. */
export function analyseDesign(design: readonly (readonly number[])[], unknowns: number): DesignAnalysis {
  const rows = design.map(sparseRow);
  const analysis = analyseRows(rows, unknowns);
  const spreads = rows.map((row) => spreadOf(analysis, row));
  return {
    rank: analysis.rank,
    covariance: covarianceTable(analysis),
    residualCovariance: rows.map((_, i) =>
      rows.map(({ columns, values }, j) => {
        const explained = columns.reduce((sum, k, p) => sum + (values[p] ?? 0) * (spreads[i]?.[k] ?? 0), 0);
        return (i === j ? 1 : 0) - explained;
      }),
    ),
    nullSpace: analysis.nullSpace,
  };
}
