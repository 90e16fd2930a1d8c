import type { CuttingJob } from './types.ts';

/** A change of the job that was tried and found to cost less. */
export interface Saving {
  readonly change: 'kerf' | 'trim' | 'limit' | 'spot' | 'turn' | 'stock' | 'shorter' | 'narrower';
  /** The part it is about, where it is about one. */
  readonly part?: string;
  readonly message: string;
  /** The job so changed, ready to be planned. */
  readonly job: CuttingJob;
  /** What the plan for the changed job costs, and how much less that is. */
  readonly cost: number;
  readonly saves: number;
}

/** A change to try. */
export interface Trial {
  readonly change: Saving['change'];
  readonly part?: string;
  /** What is done, as the beginning of a sentence. */
  readonly words: string;
  readonly job: CuttingJob;
}
