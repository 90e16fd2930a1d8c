import { expose } from 'comlink';
import { startNestingRun } from '#core/nesting';
import type { NestJob, NestNews, NestPlan, NestProgress, NestTurn, NestingRun } from '#core/nesting';
import type { RunLimits } from './run-workers.ts';

/** What the page asks of the worker for true shapes. */
export interface NestingService {
  /** Begins with a job, to be worked at turn by turn. */
  begin(job: NestJob, limits: RunLimits, onProgress?: (progress: NestProgress) => void): void;
  work(turn: NestTurn): NestNews;
  finish(): NestPlan;
}

let run: NestingRun | null = null;

function running(): NestingRun {
  if (!run) throw new Error('the nesting worker has no job');
  return run;
}

const service: NestingService = {
  begin(job, limits, onProgress) {
    run = startNestingRun(job, { clock: () => performance.now(), ...limits, onProgress });
  },
  work: (turn) => running().work(turn),
  finish: () => running().finish(),
};

expose(service);
