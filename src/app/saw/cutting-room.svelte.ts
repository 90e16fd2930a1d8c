import type { CuttingPlan, CuttingProgress } from '#core/cutting';
import { assertPlan, type CuttingGroup, type PlannedGroup } from '#core/pipeline';
import type { Problem } from '#core/problems';
import { omit } from '../omit.ts';
import { startCutting } from '#solver/worker';

/** How long a first search may take, seconds; and each time the user lets it go on. */
const firstSeconds = 3;
const furtherSeconds = 60;

/** The search for the plan of one job. */
export interface Search {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly progress: CuttingProgress | null;
  readonly plan: CuttingPlan | null;
}

const waiting: Search = { state: 'waiting', progress: null, plan: null };

/**
 * Plans of the cutting jobs, sought one after the other in the worker. A job is known by its content, so only what
 * changed is sought again, and an undone change finds its plan still there.
 */
export class CuttingRoom {
  #searches = $state.raw<Readonly<Record<string, Search>>>({});
  /** Jobs sought or being sought: told apart from `#searches` so that asking for them is no dependency. */
  #begun: readonly string[] = [];
  #abandoned: readonly string[] = [];
  #queue: { readonly key: string; readonly group: CuttingGroup; readonly seconds: number }[] = [];
  #running: { readonly key: string; readonly cancel: () => void } | null = null;
  readonly #groups: () => readonly CuttingGroup[];
  readonly #keys: Readonly<Record<string, string>> = $derived.by(() =>
    Object.fromEntries(this.#groups().map((group) => [group.id, JSON.stringify(group.job)])),
  );
  /** Groups whose plan is there, with it. */
  readonly planned: readonly PlannedGroup[] = $derived.by(() =>
    this.#groups().flatMap((group) => {
      const plan = this.searchOf(group).plan;
      return plan ? [{ group, plan }] : [];
    }),
  );
  readonly findings: readonly Problem[] = $derived(this.planned.flatMap(({ plan }) => plan.findings));
  readonly isComplete: boolean = $derived.by(() =>
    this.#groups().every((group) => ['done', 'failed'].includes(this.searchOf(group).state)),
  );

  constructor(groups: () => readonly CuttingGroup[]) {
    this.#groups = groups;
  }

  /** How the search for a group stands; where a plan was chosen, that is the plan. */
  searchOf(group: CuttingGroup): Search {
    const search = this.#get(this.#keyOf(group));
    if (!group.taken) return search;
    const state = search.state === 'running' ? 'running' : 'done';
    return { ...search, state, plan: withBound(group.taken, search.plan?.bound ?? null) };
  }

  /** Seeks the plans that are missing, in this order; a search for a job that is no more is stopped. */
  seekMissing(groups: readonly CuttingGroup[]): void {
    // a chosen plan is sought for only where nothing is known of how much better it could be
    const wanted = groups
      .filter(({ taken }) => !taken?.bound)
      .map((group) => ({ key: this.#keyOf(group), group, seconds: firstSeconds }));
    if (this.#running && !wanted.some(({ key }) => key === this.#running?.key)) this.#abandon(this.#running);
    const further = this.#queue.filter(
      ({ key }) => this.#begun.includes(key) && wanted.some((each) => each.key === key),
    );
    this.#queue = [...wanted.filter(({ key }) => !this.#begun.includes(key)), ...further];
    this.#next();
  }

  /** Stops the search for a group; the best plan so far stays. */
  cancel(group: CuttingGroup): void {
    const key = this.#keyOf(group);
    this.#queue = this.#queue.filter((job) => job.key !== key);
    if (this.#running?.key === key) this.#running.cancel();
  }

  /** Seeks on for a better plan or its proof; from the one chosen, where one was. */
  goOn(group: CuttingGroup): void {
    if (group.taken) this.#put(this.#keyOf(group), { ...waiting, plan: this.searchOf(group).plan });
    this.#queue = [...this.#queue, { key: this.#keyOf(group), group, seconds: furtherSeconds }];
    this.#next();
  }

  /** Stops a search whose job is no more, and forgets it: should the job come back, it is sought afresh. */
  #abandon(running: { readonly key: string; readonly cancel: () => void }): void {
    this.#abandoned = [...this.#abandoned, running.key];
    running.cancel();
  }

  #keyOf(group: CuttingGroup): string {
    return this.#keys[group.id] ?? JSON.stringify(group.job);
  }

  #next(): void {
    const job = this.#running ? undefined : this.#queue.shift();
    if (job) void this.#seek(job.key, job.group, job.seconds);
  }

  async #seek(key: string, group: CuttingGroup, seconds: number): Promise<void> {
    this.#begun = [...this.#begun, key];
    const former = this.#get(key);
    this.#put(key, { ...former, state: 'running' });
    const search = startCutting(group.job, {
      seconds,
      onProgress: (progress) => this.#put(key, { ...this.#get(key), progress }),
    });
    this.#running = { key, cancel: search.cancel };
    try {
      const plan = await search.result;
      assertPlan(group, plan);
      this.#finish(key, plan);
    } catch (error) {
      this.#put(key, { ...this.#get(key), state: 'failed' });
      throw error;
    } finally {
      this.#running = null;
      if (this.#abandoned.includes(key)) this.#forget(key);
      this.#next();
    }
  }

  #finish(key: string, plan: CuttingPlan): void {
    const former = this.#get(key).plan;
    const best = former && isBetter(former, plan) ? withBound(former, plan.bound) : plan;
    this.#put(key, { ...this.#get(key), state: 'done', plan: best });
  }

  #forget(key: string): void {
    const isOther = (each: string): boolean => each !== key;
    this.#begun = this.#begun.filter(isOther);
    this.#abandoned = this.#abandoned.filter(isOther);
    this.#searches = omit(this.#searches, key);
  }

  #get(key: string): Search {
    return this.#searches[key] ?? waiting;
  }

  #put(key: string, search: Search): void {
    this.#searches = { ...this.#searches, [key]: search };
  }
}

/** A plan with the higher of two bounds; proven when that meets its cost. */
function withBound(plan: CuttingPlan, bound: number | null): CuttingPlan {
  if (bound === null || (plan.bound !== null && plan.bound >= bound)) return plan;
  return { ...plan, bound, proven: plan.proven || bound >= plan.cost };
}

function isBetter(a: CuttingPlan, b: CuttingPlan): boolean {
  const left = (plan: CuttingPlan): number => plan.unplaced.reduce((sum, each) => sum + each.count, 0);
  return left(a) < left(b) || (left(a) === left(b) && a.cost < b.cost);
}
