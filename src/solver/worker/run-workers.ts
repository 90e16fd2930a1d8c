import { proxy, wrap } from 'comlink';
import { runCrew } from '#solver/crew';
import type { Mate, News, Turn } from '#solver/crew';

/** What a run of the page may take. */
export interface RunLimits {
  readonly seconds?: number;
  readonly seed?: number;
  /** The second of two workers at one job. */
  readonly isMate?: boolean;
}

export interface RunWish<Progress> {
  readonly seconds?: number;
  readonly seed?: number;
  readonly onProgress?: (progress: Progress) => void;
}

/** A run under way in workers. */
export interface Running<Plan> {
  /** The best plan: at the end, or as it stood when the run was cancelled. */
  readonly result: Promise<Plan>;
  readonly cancel: () => void;
}

/** A worker that is given a job and then works turn by turn. */
interface Away<Job, N extends News, Plan, Progress> {
  readonly begin: (job: Job, limits: RunLimits, onProgress?: (progress: Progress) => void) => Promise<void>;
  readonly work: (turn: Turn<N>) => Promise<N>;
  readonly finish: () => Promise<Plan>;
}

interface Setup<Job, Plan, Progress> {
  readonly make: () => Worker;
  readonly job: Job;
  readonly wish: RunWish<Progress>;
  readonly planOf: (progress: Progress) => Plan | undefined;
  /** The answer where no plan is known yet. */
  readonly unfinished: () => Plan;
}

const usualSeconds = 10;

/**
 * Runs a job in a worker of its own, so that the page stays free, and in a second one beside it where the computer has two
 * cores and the job takes longer than a moment. Both end with the run.
 */
export function runWorkers<Job, N extends News, Plan, Progress>(
  setup: Setup<Job, Plan, Progress>,
): Running<Plan> {
  const workers: Worker[] = [];
  const open = (): Worker => {
    const worker = setup.make();
    workers.push(worker);
    return worker;
  };
  let best: Plan | undefined;
  let cancel = (): void => undefined;
  const cancelled = new Promise<Plan>((resolve) => {
    cancel = () => resolve(best ?? setup.unfinished());
  });
  const note = (progress: Progress): void => {
    best = setup.planOf(progress) ?? best;
    setup.wish.onProgress?.(progress);
  };
  const lead = open();
  const planned = runBoth<Job, N, Plan, Progress>(setup, { lead, open, note });
  const result = Promise.race([planned, cancelled, failureOf(lead)]);
  const close = (): void => workers.forEach((worker) => worker.terminate());
  return { result: result.finally(close), cancel: () => cancel() };
}

function failureOf(worker: Worker): Promise<never> {
  return new Promise((_, reject) => {
    worker.addEventListener('error', (event) => reject(new Error(event.message || 'the worker failed')));
  });
}

async function runBoth<Job, N extends News, Plan, Progress>(
  { job, wish }: Setup<Job, Plan, Progress>,
  run: {
    readonly lead: Worker;
    readonly open: () => Worker;
    readonly note: (progress: Progress) => void;
  },
): Promise<Plan> {
  type Service = Away<Job, N, Plan, Progress>;
  const { seconds = usualSeconds, seed } = wish;
  const start = performance.now();
  const lead = wrap(run.lead) as unknown as Service;
  await lead.begin(job, { seconds, seed }, proxy(run.note));
  const callMate = (): Mate<N> => {
    const left = Math.max(0.05, seconds - (performance.now() - start) / 1000);
    const mate = wrap(run.open()) as unknown as Service;
    const begun = mate.begin(job, { seconds: left, seed, isMate: true });
    // it ends with the workers of the run
    return { work: (turn) => begun.then(() => mate.work(turn)), dismiss: () => undefined };
  };
  return runCrew<N, Plan>({
    lead: { work: (turn) => lead.work(turn), finish: () => lead.finish() },
    callMate: (navigator.hardwareConcurrency ?? 1) > 1 ? callMate : null,
    work: null,
  });
}
