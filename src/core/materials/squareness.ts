/**
 * Share of its diagonal by which the diagonals of a sheet may differ as it leaves the mill: 0.25 %, BS 1088, from
 * memory.
 */
export const diagonalTolerance = 0.0025;

/** How far a sheet is out of square, mm: `acrossWidth` at an end over its width, `overLength` along a long edge. */
export interface OutOfSquare {
  readonly diagonalDifference: number;
  readonly acrossWidth: number;
  readonly overLength: number;
}

/** What the tolerance of the mill comes to on a sheet; (d1² - d2²) / (4 side), joinery E1. */
export function worstOutOfSquare(length: number, width: number): OutOfSquare {
  const diagonal = Math.hypot(length, width);
  const diagonalDifference = diagonalTolerance * diagonal;
  const lean = (2 * diagonal * diagonalDifference) / 4;
  return { diagonalDifference, acrossWidth: lean / length, overLength: lean / width };
}
