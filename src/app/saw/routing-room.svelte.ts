import type { NestJob, NestPlan } from '#core/nesting';
import {
  assertNest,
  remainingJob,
  type PlannedGroup,
  type PlannedRouting,
  type RouterGroup,
} from '#core/pipeline';
import { hasStop, type Problem } from '#core/problems';
import { startNesting } from '#solver/worker';
import { nowAndThen, shownEvery } from './now-and-then.ts';

/** How long shapes are laid at first, seconds; and each time the user lets it go on. */
const firstSeconds = 5;
const furtherSeconds = 60;

/** The search for the plan of one job of the router; `plan` is the best so far. */
export interface Laying {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly plan: NestPlan | null;
}

const waiting: Laying = { state: 'waiting', plan: null };

interface RouterJob {
  readonly group: RouterGroup;
  readonly job: NestJob;
  readonly key: string;
}

/** Plans of the router's jobs, laid one after the other in a worker once the saw has taken its sheets; a job is known by its content. */
export class RoutingRoom {
  #layings = $state.raw<Readonly<Record<string, Laying>>>({});
  #begun: readonly string[] = [];
  #queue: readonly (RouterJob & { readonly seconds: number })[] = [];
  #running: { readonly key: string; readonly cancel: () => void } | null = null;
  readonly #groups: () => readonly RouterGroup[];
  readonly #sawn: () => readonly PlannedGroup[];
  /** Sound jobs with what the saw leaves of the sheets. */
  readonly jobs: readonly RouterJob[] = $derived.by(() =>
    this.#groups()
      .filter((group) => !hasStop(group.findings))
      .map((group) => {
        const job = remainingJob(group, this.#sawn());
        return { group, job, key: JSON.stringify(job) };
      }),
  );
  /** Groups whose plan is there, with it. */
  readonly planned: readonly PlannedRouting[] = $derived.by(() =>
    this.jobs.flatMap(({ group, job, key }) => {
      const { plan } = this.#get(key);
      return plan ? [{ group, job, plan }] : [];
    }),
  );
  readonly findings: readonly Problem[] = $derived(this.planned.flatMap(({ plan }) => plan.findings));
  readonly isComplete: boolean = $derived.by(() =>
    this.jobs.every(({ key }) => ['done', 'failed'].includes(this.#get(key).state)),
  );

  constructor(groups: () => readonly RouterGroup[], sawn: () => readonly PlannedGroup[]) {
    this.#groups = groups;
    this.#sawn = sawn;
  }

  /** How laying the parts of a group stands. */
  layingOf(group: RouterGroup): Laying {
    const job = this.jobs.find((each) => each.group.id === group.id);
    return job ? this.#get(job.key) : waiting;
  }

  /** Lays what has not been laid yet; a search for a job that is no more is stopped. */
  seekMissing(jobs: readonly RouterJob[]): void {
    if (this.#running && !jobs.some(({ key }) => key === this.#running?.key)) this.#running.cancel();
    this.#queue = jobs
      .filter(({ key }) => !this.#begun.includes(key))
      .map((job) => ({ ...job, seconds: firstSeconds }));
    this.#next();
  }

  /** Stops the search for a group; the best plan so far stays. */
  cancel(group: RouterGroup): void {
    const job = this.jobs.find((each) => each.group.id === group.id);
    if (job && this.#running?.key === job.key) this.#running.cancel();
  }

  /** Seeks on for fewer sheets. */
  goOn(group: RouterGroup): void {
    const job = this.jobs.find((each) => each.group.id === group.id);
    if (!job || this.#queue.some(({ key }) => key === job.key)) return;
    this.#queue = [...this.#queue, { ...job, seconds: furtherSeconds }];
    this.#next();
  }

  #next(): void {
    const [job, ...rest] = this.#running ? [] : this.#queue;
    if (!job) return;
    this.#queue = rest;
    void this.#lay(job);
  }

  async #lay({ key, group, job, seconds }: RouterJob & { readonly seconds: number }): Promise<void> {
    this.#begun = [...this.#begun, key];
    this.#put(key, { ...this.#get(key), state: 'running' });
    const live = nowAndThen<NestPlan>(shownEvery, (plan) =>
      this.#put(key, { state: 'running', plan: better(this.#get(key).plan, plan) }),
    );
    const run = startNesting(job, { seconds, onProgress: ({ plan }) => live.tell(plan) });
    this.#running = { key, cancel: run.cancel };
    try {
      const found = await run.result;
      live.stop();
      const plan = better(this.#get(key).plan, found);
      assertNest(group, job, plan);
      this.#put(key, { state: 'done', plan });
    } catch (error) {
      this.#put(key, { ...this.#get(key), state: 'failed' });
      throw error;
    } finally {
      live.stop();
      this.#running = null;
      this.#next();
    }
  }

  #get(key: string): Laying {
    return this.#layings[key] ?? waiting;
  }

  #put(key: string, laying: Laying): void {
    this.#layings = { ...this.#layings, [key]: laying };
  }
}

/** The one that leaves fewer parts, then costs less. */
function better(former: NestPlan | null, plan: NestPlan): NestPlan {
  if (!former) return plan;
  const left = (each: NestPlan): number => each.unplaced.reduce((sum, { count }) => sum + count, 0);
  if (left(former) !== left(plan)) return left(former) < left(plan) ? former : plan;
  return former.cost < plan.cost ? former : plan;
}
