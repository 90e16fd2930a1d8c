/** How bad it is: `stop` do not cut, `warn` may be deliberate, `note` worth knowing. */
export type Severity = 'stop' | 'warn' | 'note';

/** Something wrong, or worth knowing, in the user's world. Shown as a finding. */
export interface Problem {
  readonly severity: Severity;
  /** Stable name of the rule, kebab-case, as `part-longer-than-stock`. */
  readonly code: string;
  /** Address of what it concerns: a part (`C4`), a reading, a piece, a path in a file; left out when it is the whole. */
  readonly about?: string;
  /** What, where and how much, in one or two sentences with the numbers in. */
  readonly message: string;
  /** What to do about it, as a sentence. */
  readonly remedy?: string;
  /** Where the rule comes from: `joinery B1.2`, a standard, `common practice`. */
  readonly source?: string;
}

/** A value with what was noticed on the way, or why there is none. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function succeed<T>(value: T, problems: readonly Problem[] = []): Result<T> {
  return { ok: true, value, problems };
}

export function fail(...problems: readonly Problem[]): {
  readonly ok: false;
  readonly problems: readonly Problem[];
} {
  return { ok: false, problems };
}

/** True when any of them forbids cutting. */
export function hasStop(problems: readonly Problem[]): boolean {
  return problems.some((problem) => problem.severity === 'stop');
}

/** The same problems, the worst first; order is kept within a severity. */
export function sortBySeverity(problems: readonly Problem[]): readonly Problem[] {
  const rank: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };
  return [...problems].sort((a, b) => rank[a.severity] - rank[b.severity]);
}

/** Marks the end of a total switch: adding a kind makes the compiler point here. Throws when reached. */
export function unreachable(value: never): never {
  throw new Error(`unknown kind: ${JSON.stringify(value)}`);
}
