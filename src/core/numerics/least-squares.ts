import { Matrix, QrDecomposition } from 'ml-matrix';
import { fail, succeed } from '#core/problems';
import type { Result } from '#core/problems';
import { subtractProducts } from './exact-sums.ts';

export interface LeastSquares {
  readonly coefficients: readonly number[];
  /** Standard deviation of each coefficient from the residuals; null when no equation is left over. */
  readonly deviations: readonly number[] | null;
  /** Observed minus fitted. */
  readonly residuals: readonly number[];
  readonly residualSum: number;
  /** Degrees of freedom: equations less coefficients. */
  readonly dof: number;
  readonly residualDeviation: number | null;
}

/** A column of about unit length whose part outside the former ones is shorter than this counts as dependent on them. */
const dependent = 1e-13; // some hundred units in the last place of a double

/**
 * The coefficients that bring `design * coefficients` nearest to `observed` in the sum of squares. Fails when columns
 * depend on each other, naming them. Householder QR on columns scaled to about unit length, refined twice
 * (Golub and Van Loan, Matrix Computations, ch. 5, from memory).
 */
export function solveLeastSquares(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  options: { readonly names?: readonly string[] } = {},
): Result<LeastSquares> {
  const count = design[0]?.length ?? 0;
  const refusal = refuseInput(design, observed, count);
  if (refusal !== null) return refusal;
  const scales = columnScales(design, count);
  const rows = design.map((row) => row.map((value, k) => value / (scales[k] ?? 1)));
  const qr = new QrDecomposition(new Matrix(rows));
  const triangle = qr.upperTriangularMatrix;
  const loose = dependentColumns(triangle, scales);
  if (loose.length > 0) return columnsDepend(loose, options.names);
  const solution = refine(qr, rows, observed);
  return succeed(describeFit(solution, triangle, scales));
}

function refuseInput(design: readonly (readonly number[])[], observed: readonly number[], count: number) {
  const ragged = design.some((row) => row.length !== count) || design.length !== observed.length;
  if (ragged) throw new Error(`a design of ${design.length} rows does not match ${observed.length} values`);
  if (count > 0 && design.length >= count && [...observed, ...design.flat()].every(Number.isFinite))
    return null;
  const few = `${design.length} equations cannot fix ${count} unknowns`;
  return fail({
    severity: 'stop',
    code: 'least-squares-input',
    message: `${design.length < count || count === 0 ? few : 'A value is not a finite number'}.`,
    remedy: 'Give at least as many finite readings as there are unknowns.',
  });
}

/** The power of two next to the length of each column: scaling by it rounds nothing. */
function columnScales(design: readonly (readonly number[])[], count: number): readonly number[] {
  return Array.from({ length: count }, (_, k) => {
    const length = Math.hypot(...design.map((row) => row[k] ?? 0));
    return length > 0 ? 2 ** Math.round(Math.log2(length)) : 1;
  });
}

/** Indices of the columns in the first dependency found; empty when there is none. */
function dependentColumns(triangle: Matrix, scales: readonly number[]): readonly number[] {
  const at = scales.findIndex((_, k) => Math.abs(triangle.get(k, k)) < dependent);
  if (at < 0) return [];
  const parts = solveUpper(
    triangle,
    Array.from({ length: at }, (_, row) => triangle.get(row, at)),
  );
  const held = parts.flatMap((part, k) => (Math.abs(part) > 1e-9 ? [k] : []));
  return [...held, at];
}

/** Back substitution with the leading square of an upper triangle. */
function solveUpper(triangle: Matrix, right: readonly number[]): readonly number[] {
  const solution = [...right];
  for (let row = solution.length - 1; row >= 0; row -= 1) {
    let rest = solution[row] ?? 0;
    for (let k = row + 1; k < solution.length; k += 1) rest -= triangle.get(row, k) * (solution[k] ?? 0);
    solution[row] = rest / triangle.get(row, row);
  }
  return solution;
}

function columnsDepend(columns: readonly number[], names: readonly string[] = []) {
  const words = columns.map((k) => names[k] ?? `column ${k + 1}`);
  return fail({
    severity: 'stop',
    code: 'columns-dependent',
    message: `The readings cannot tell these unknowns apart: ${words.join(', ')}.`,
    remedy: 'Add a reading that changes one of them without the others, or leave one out.',
  });
}

interface Refined {
  readonly solution: readonly number[];
  readonly residuals: readonly number[];
}

/** Rounds of refinement: the first wins back what the factors lost, the second what the first could not see. */
const rounds = 2;

/**
 * Solution and residuals refined together on the system r + A x = b, Aᵀ r = 0, its defects summed with twice the digits
 * (Björck 1967, Iterative refinement of linear least squares solutions, from memory).
 */
function refine(
  qr: QrDecomposition,
  rows: readonly (readonly number[])[],
  observed: readonly number[],
): Refined {
  const triangle = qr.upperTriangularMatrix;
  const columns = (rows[0] ?? []).map((_, k) => rows.map((row) => row[k] ?? 0));
  let solution = qr.solve(Matrix.columnVector([...observed])).to1DArray();
  let residuals = rows.map((row, i) => subtractProducts(observed[i] ?? 0, row, solution));
  for (let round = 0; round < rounds; round += 1) {
    const given = residuals;
    const defect = rows.map((row, i) =>
      subtractProducts((observed[i] ?? 0) - (given[i] ?? 0), row, solution),
    );
    const slant = columns.map((column) => subtractProducts(0, column, given));
    const back = solveUpper(triangle, solveLower(triangle, slant));
    const step = qr
      .solve(Matrix.columnVector(defect))
      .to1DArray()
      .map((value, k) => value - (back[k] ?? 0));
    solution = solution.map((value, k) => value + (step[k] ?? 0));
    residuals = rows.map((row, i) => (given[i] ?? 0) + subtractProducts(defect[i] ?? 0, row, step));
  }
  return { solution, residuals };
}

/** Forward substitution with the transpose of an upper triangle. */
function solveLower(triangle: Matrix, right: readonly number[]): readonly number[] {
  const solution: number[] = [];
  right.forEach((value, row) => {
    const known = solution.reduce((sum, x, k) => sum + triangle.get(k, row) * x, 0);
    solution.push((value - known) / triangle.get(row, row));
  });
  return solution;
}

function describeFit(fit: Refined, triangle: Matrix, scales: readonly number[]): LeastSquares {
  const residualSum = fit.residuals.reduce((sum, value) => sum + value * value, 0);
  const dof = fit.residuals.length - scales.length;
  const residualDeviation = dof > 0 ? Math.sqrt(residualSum / dof) : null;
  return {
    coefficients: fit.solution.map((value, k) => value / (scales[k] ?? 1)),
    deviations:
      residualDeviation === null
        ? null
        : inverseRowLengths(triangle, scales.length).map(
            (length, k) => (residualDeviation * length) / (scales[k] ?? 1),
          ),
    residuals: fit.residuals,
    residualSum,
    dof,
    residualDeviation,
  };
}

/** Lengths of the rows of the inverse of an upper triangle: square roots of the diagonal of (RᵀR)⁻¹. */
function inverseRowLengths(triangle: Matrix, count: number): readonly number[] {
  const columns = Array.from({ length: count }, (_, at) =>
    solveUpper(
      triangle,
      Array.from({ length: count }, (_, row) => (row === at ? 1 : 0)),
    ),
  );
  return Array.from({ length: count }, (_, row) => Math.hypot(...columns.map((column) => column[row] ?? 0)));
}
