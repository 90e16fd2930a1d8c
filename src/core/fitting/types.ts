import type { Gate } from '#core/joinery';

/** Outer size of what is carried, in any order, mm. */
export interface Load {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** How a load takes one gate. `way` says how to hold it; where it does not pass, `need` and `have` are what lacks, mm. */
export interface GateAnswer {
  readonly gate: Gate;
  readonly passes: boolean;
  readonly way: string;
  readonly need?: number;
  readonly have?: number;
}
