/** How far a hand goes before it tells; without limits to the end. */
export interface Turn<N> {
  /** What the other told since the last turn. */
  readonly heard?: N | null;
  readonly steps?: number;
  readonly milliseconds?: number;
}

/** What every run tells, whatever it searches for. */
export interface News {
  /** `working`: goes on when asked; `idle`: sees no way to more by itself; `out`: no time or work left; `settled`: proven. */
  readonly state: 'working' | 'idle' | 'out' | 'settled';
  /** What the others may go on from; null when they know it. */
  readonly found: unknown;
}

/** One that works on a job: here, in a thread or in a worker of the page. */
export interface Hand<N extends News, Plan> {
  readonly work: (turn: Turn<N>) => Promise<N>;
  readonly finish: () => Promise<Plan>;
}

/** The second hand: it can be sent away, whatever it is doing. */
export interface Mate<N extends News> {
  readonly work: (turn: Turn<N>) => Promise<N>;
  readonly dismiss: () => void;
}

/** Two hands at one job. */
export interface Crew<N extends News, Plan> {
  readonly lead: Hand<N, Plan>;
  /** Calls the second, once the job has proved worth it; null when the lead is to work alone. */
  readonly callMate: (() => Mate<N>) | null;
  /** How much a run by work may do in all, in steps; null: the clock ends it. */
  readonly work: number | null;
}
