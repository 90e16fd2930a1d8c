const key = 'joggle-open';

/** The project that was open last in this browser; null when none is remembered. */
export function lastOpened(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null; // a browser that refuses storage
  }
}

export function rememberOpened(id: string): void {
  try {
    localStorage.setItem(key, id);
  } catch {
    // A browser that refuses storage opens what was kept last.
  }
}
