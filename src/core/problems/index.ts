export { fail, hasStop, sortBySeverity, succeed, unreachable } from './problem.ts';
export type { Problem, Result, Severity } from './problem.ts';
