const key = 'joggle-last-act';

/** A state of a project that was on its way into the store when the page was closed. */
export interface LastAct {
  readonly id: string;
  /** The revision it grew from. */
  readonly revision: number;
  /** The text of its file. */
  readonly text: string;
}

/** Writes it down at once, as a page that is being closed is not given the time to store anything. */
export function leaveLastAct(act: LastAct): void {
  try {
    localStorage.setItem(key, JSON.stringify(act));
  } catch {
    // Too large, or a browser that refuses storage: the state before it is kept.
  }
}

/** The text left for this very state of a project; null when there is none or the project went on since. It is given once. */
export function takeLastAct(id: string, revision: number): string | null {
  try {
    const text = localStorage.getItem(key);
    if (text === null) return null;
    const act = JSON.parse(text) as Partial<LastAct> | null;
    if (act?.id !== id) return null;
    localStorage.removeItem(key);
    return act.revision === revision && typeof act.text === 'string' ? act.text : null;
  } catch {
    return null;
  }
}
