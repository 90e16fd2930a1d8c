import type { CuttingPlan, CuttingProgress } from '#core/cutting';
import { assertPlan, betterPlan, withBound, type CuttingGroup, type PlannedGroup } from '#core/pipeline';
import type { Problem } from '#core/problems';
import { omit } from '../omit.ts';
import { startCutting } from '#solver/worker';
import { nowAndThen, shownEvery } from './now-and-then.ts';

/** How long a first search may take, seconds; and each time the user lets it go on. */
const firstSeconds = 3;
const furtherSeconds = 60;

interface Sought {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly plan: CuttingPlan | null;
}

/** The search for the plan of one job. `plan` is what the last search ended with; the rest of the app works with that. */
export interface Search extends Sought {
  /** The best plan there is, of the search under way too: what is drawn. */
  readonly shown: CuttingPlan | null;
  /** What the search under way tells; null when there is none. */
  readonly progress: CuttingProgress | null;
  /** Whether it goes on when its turn comes. */
  readonly isQueued: boolean;
}

const waiting: Sought = { state: 'waiting', plan: null };

interface Job {
  readonly key: string;
  readonly group: CuttingGroup;
  readonly seconds: number;
}

/**
 * Plans of the cutting jobs, sought one after the other in the worker. A job is known by its content, so only what
 * changed is sought again, and an undone change finds its plan still there.
 */
export class CuttingRoom {
  #searches = $state.raw<Readonly<Record<string, Sought>>>({});
  /** Apart from the searches, so that only what shows a search under way is told of it. */
  #live = $state.raw<{ readonly key: string; readonly progress: CuttingProgress } | null>(null);
  /** Jobs sought or being sought: told apart from `#searches` so that asking for them is no dependency. */
  #begun: readonly string[] = [];
  #abandoned: readonly string[] = [];
  #queue = $state.raw<readonly Job[]>([]);
  #running: { readonly key: string; readonly cancel: () => void } | null = null;
  readonly #groups: () => readonly CuttingGroup[];
  readonly #keys: Readonly<Record<string, string>> = $derived.by(() =>
    Object.fromEntries(this.#groups().map((group) => [group.id, JSON.stringify(group.job)])),
  );
  /** Groups whose plan is there, with it. */
  readonly planned: readonly PlannedGroup[] = $derived.by(() =>
    this.#groups().flatMap((group) => {
      const { plan } = this.#soughtOf(group);
      return plan ? [{ group, plan }] : [];
    }),
  );
  readonly findings: readonly Problem[] = $derived(this.planned.flatMap(({ plan }) => plan.findings));
  readonly isComplete: boolean = $derived.by(() =>
    this.#groups().every((group) => ['done', 'failed'].includes(this.#soughtOf(group).state)),
  );

  constructor(groups: () => readonly CuttingGroup[]) {
    this.#groups = groups;
  }

  /** How the search for a group stands; where a plan was chosen, that is the plan. */
  searchOf(group: CuttingGroup): Search {
    const key = this.#keyOf(group);
    const sought = this.#soughtOf(group);
    const progress = this.#live?.key === key ? this.#live.progress : null;
    const isBetter = progress?.plan !== undefined && !group.taken;
    return {
      ...sought,
      progress,
      shown: isBetter ? betterPlan(sought.plan, progress.plan) : sought.plan,
      isQueued: this.#queue.some((job) => job.key === key),
    };
  }

  #soughtOf(group: CuttingGroup): Sought {
    const sought = this.#get(this.#keyOf(group));
    if (!group.taken) return sought;
    const state = sought.state === 'running' ? 'running' : 'done';
    return { state, plan: withBound(group.taken, sought.plan?.bound ?? null) };
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
    const key = this.#keyOf(group);
    if (this.#queue.some((job) => job.key === key)) return;
    if (group.taken) this.#put(key, { ...waiting, plan: this.#soughtOf(group).plan });
    this.#queue = [...this.#queue, { key, group, seconds: furtherSeconds }];
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
    const [job, ...rest] = this.#running ? [] : this.#queue;
    if (!job) return;
    this.#queue = rest;
    void this.#seek(job);
  }

  async #seek({ key, group, seconds }: Job): Promise<void> {
    this.#begun = [...this.#begun, key];
    const { plan: former } = this.#get(key);
    this.#put(key, { plan: former, state: 'running' });
    const live = nowAndThen<CuttingProgress>(shownEvery, (progress) => (this.#live = { key, progress }));
    const start = former && former.unplaced.length === 0 ? former : undefined;
    const search = startCutting({ job: group.job, start }, { seconds, onProgress: live.tell });
    this.#running = { key, cancel: search.cancel };
    try {
      const plan = await search.result;
      assertPlan(group, plan);
      this.#put(key, { state: 'done', plan: betterPlan(former, plan) });
    } catch (error) {
      this.#put(key, { plan: former, state: 'failed' });
      throw error;
    } finally {
      live.stop();
      this.#live = null;
      this.#running = null;
      if (this.#abandoned.includes(key)) this.#forget(key);
      this.#next();
    }
  }

  #forget(key: string): void {
    const isOther = (each: string): boolean => each !== key;
    this.#begun = this.#begun.filter(isOther);
    this.#abandoned = this.#abandoned.filter(isOther);
    this.#searches = omit(this.#searches, key);
  }

  #get(key: string): Sought {
    return this.#searches[key] ?? waiting;
  }

  #put(key: string, search: Sought): void {
    this.#searches = { ...this.#searches, [key]: search };
  }
}
