import type { Problem } from '#core/problems';

/** Where work is done: aboard, at the bench, or where things are bought. */
export type Place = 'boat' | 'workshop' | 'shop';

/** Something to do at one place. */
export interface Task {
  readonly id: string;
  readonly text: string;
  readonly place: Place;
  readonly minutes: number;
  /** Tasks that must be done before. */
  readonly after: readonly string[];
  /** Things that must be there: parts, tools, fixings. */
  readonly needs: readonly string[];
  /** Things that come to be where it is done. */
  readonly makes: readonly string[];
  /** Ticked off already. */
  readonly done?: boolean;
}

/** One stay at one place. */
export interface Visit {
  readonly place: Place;
  /** Ids of the tasks in the order to do them. */
  readonly tasks: readonly string[];
  readonly minutes: number;
  /** What has to be carried there. */
  readonly take: readonly string[];
}

/** The tasks arranged in the fewest visits. `proven`: no order of places needs fewer. */
export interface VisitPlan {
  readonly visits: readonly Visit[];
  readonly proven: boolean;
  /** Tasks that no order reaches, because they wait for one another. */
  readonly undone: readonly string[];
  readonly findings: readonly Problem[];
}
