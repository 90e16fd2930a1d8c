export type { LinearProgram, LinearRow, LinearSolution, SolveLp } from './linear-program.ts';
