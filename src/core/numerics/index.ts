export type { LinearProgram, LinearRow, LinearSolution, SolveLp } from './linear-program.ts';
export { evaluateFormula, namesInFormula, parseFormula } from './formula.ts';
export type { Formula } from './formula.ts';
export { solveLeastSquares } from './least-squares.ts';
export type { LeastSquares } from './least-squares.ts';
export { analyseDesign } from './design-table.ts';
export type { DesignAnalysis } from './design.ts';
export { analyseRows, covarianceTable, spreadOf } from './row-analysis.ts';
export type { RowAnalysis } from './row-analysis.ts';
export type { SparseRow } from './sparse-rows.ts';
export { orderUnknowns } from './unknown-order.ts';
export {
  chiSquareQuantile,
  chiSquareTail,
  findableShift,
  normalQuantile,
  normalTail,
  suspectLimit,
} from './distributions.ts';
export { makeRandom } from './random.ts';
export type { Random } from './random.ts';
export { solveDamped, solveDampedRows } from './damped-step.ts';
export { descend } from './descent.ts';
export type { DescentOptions } from './descent.ts';
export { fitCircle } from './circle-fit.ts';
export type { CircleFit } from './circle-fit.ts';
export { fitSpline, readSpline, splineLength } from './spline.ts';
export type { Spline, SplineEnds } from './spline.ts';
