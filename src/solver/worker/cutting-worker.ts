import { expose } from 'comlink';
import { explainBound, offerPlans, startCuttingRun } from '#core/cutting';
import type {
  BoundStory,
  CuttingJob,
  CuttingNews,
  CuttingPlan,
  CuttingProgress,
  CuttingRun,
  PlanOffer,
} from '#core/cutting';
import type { Turn } from '#solver/crew';
import { loadGlpk } from '#solver/glpk';
import type { RunLimits } from './run-workers.ts';

/** What the page asks of the worker. */
export interface CuttingService {
  /** Begins with a job, to be worked at turn by turn. */
  begin(job: CuttingJob, limits: RunLimits, onProgress?: (progress: CuttingProgress) => void): Promise<void>;
  work(turn: Turn<CuttingNews>): CuttingNews;
  finish(): CuttingPlan;
  explain(job: CuttingJob, plan: CuttingPlan, seconds: number): Promise<BoundStory>;
  offer(job: CuttingJob, plan: CuttingPlan, seconds: number): Promise<readonly PlanOffer[]>;
}

let run: CuttingRun | null = null;

function running(): CuttingRun {
  if (!run) throw new Error('the cutting worker has no job');
  return run;
}

const service: CuttingService = {
  async begin(job, limits, onProgress) {
    const solveLp = await loadGlpk();
    run = startCuttingRun(job, { solveLp, clock: () => performance.now(), ...limits, onProgress });
  },
  work: (turn) => running().work(turn),
  finish: () => running().finish(),
  async explain(job, plan, seconds) {
    const solveLp = await loadGlpk();
    return explainBound(job, plan, { solveLp, clock: () => performance.now(), seconds });
  },
  async offer(job, plan, seconds) {
    const solveLp = await loadGlpk();
    return offerPlans(job, plan, { solveLp, clock: () => performance.now(), seconds });
  },
};

expose(service);
