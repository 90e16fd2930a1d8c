/** One row: `lower <= sum(coefficient * variable) <= upper`. Infinite bounds are left out. */
export interface LinearRow {
  readonly name: string;
  readonly terms: readonly (readonly [variable: string, coefficient: number])[];
  readonly lower?: number;
  readonly upper?: number;
}

/** A linear program as data. Variables are named by the terms they occur in; each is >= 0 unless bounded here. */
export interface LinearProgram {
  readonly sense: 'minimise' | 'maximise';
  readonly objective: readonly (readonly [variable: string, coefficient: number])[];
  readonly rows: readonly LinearRow[];
  readonly bounds?: readonly {
    readonly variable: string;
    readonly lower?: number;
    readonly upper?: number;
  }[];
  readonly integers?: readonly string[];
}

export interface LinearSolution {
  /** `optimal`: proven. `feasible`: a plan, stopped early. `none`: nothing found in the time. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unbounded' | 'none';
  readonly value: number;
  readonly variables: Readonly<Record<string, number>>;
  /** Dual value per row; empty for integer programs. */
  readonly duals: Readonly<Record<string, number>>;
}

/** Solves a linear program; `seconds` bounds integer programs only. Synchronous: it runs in a worker or in Node. */
export type SolveLp = (program: LinearProgram, seconds?: number) => LinearSolution;
