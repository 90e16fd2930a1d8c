import { expose } from 'comlink';
import { explainBound, offerByWeights, offerPlans, startCuttingRun } from '#core/cutting';
import type {
  BoundStory,
  CostUnit,
  CuttingJob,
  CuttingNews,
  CuttingPlan,
  CuttingProgress,
  CuttingRun,
  PlanAim,
  PlanOffer,
} from '#core/cutting';
import type { Turn } from '#solver/crew';
import { loadGlpk } from '#solver/glpk';
import type { RunLimits } from './run-workers.ts';

/** What a search begins with: `start` is a plan of the job to go on from, so that the answer is never dearer. */
export interface CuttingTask {
  readonly job: CuttingJob;
  readonly start?: CuttingPlan;
}

/** What the page asks of the worker. */
export interface CuttingService {
  /** Begins with a job, to be worked at turn by turn. */
  begin(
    task: CuttingTask,
    limits: RunLimits,
    onProgress?: (progress: CuttingProgress) => void,
  ): Promise<void>;
  work(turn: Turn<CuttingNews>): CuttingNews;
  finish(): CuttingPlan;
  explain(job: CuttingJob, plan: CuttingPlan, seconds: number, unit: CostUnit): Promise<BoundStory>;
  offer(job: CuttingJob, plan: CuttingPlan, seconds: number): Promise<readonly PlanOffer[]>;
  weigh(job: CuttingJob, plan: CuttingPlan, seconds: number, weights: PlanAim): Promise<PlanOffer | null>;
}

let run: CuttingRun | null = null;

function running(): CuttingRun {
  if (!run) throw new Error('the cutting worker has no job');
  return run;
}

const service: CuttingService = {
  async begin({ job, start }, limits, onProgress) {
    const solveLp = await loadGlpk();
    run = startCuttingRun(job, { solveLp, clock: () => performance.now(), ...limits, start, onProgress });
  },
  work: (turn) => running().work(turn),
  finish: () => running().finish(),
  async explain(job, plan, seconds, unit) {
    const solveLp = await loadGlpk();
    return explainBound(job, plan, { solveLp, clock: () => performance.now(), seconds }, unit);
  },
  async offer(job, plan, seconds) {
    const solveLp = await loadGlpk();
    return offerPlans(job, plan, { solveLp, clock: () => performance.now(), seconds });
  },
  async weigh(job, plan, seconds, weights) {
    const solveLp = await loadGlpk();
    return offerByWeights(job, plan, { solveLp, clock: () => performance.now(), seconds }, weights);
  },
};

expose(service);
