export type { LinearProgram, LinearRow, LinearSolution, SolveLp } from './linear-program.ts';
export { evaluateFormula, namesInFormula, parseFormula } from './formula.ts';
export type { Formula } from './formula.ts';
