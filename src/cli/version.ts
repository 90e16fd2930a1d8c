import { readFileSync } from 'node:fs';

/** The version of the package this command belongs to: built into `dist`, or run from `src/cli`. */
export const version = findVersion();

function findVersion(): string {
  for (const path of ['../package.json', '../../package.json']) {
    const found = readVersion(new URL(path, import.meta.url));
    if (found !== null) return found;
  }
  return 'unknown';
}

function readVersion(url: URL): string | null {
  try {
    const document: unknown = JSON.parse(readFileSync(url, 'utf8'));
    const isOurs =
      typeof document === 'object' && document !== null && 'name' in document && document.name === 'joggle';
    return isOurs && 'version' in document ? String(document.version) : null;
  } catch {
    return null;
  }
}
