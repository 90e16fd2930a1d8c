import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of the built site; it is built first where it is missing or older than its source. */
export function buildSite(): string {
  const made = 'build/precache.json';
  const isFresh =
    existsSync(made) &&
    statSync(made).mtimeMs > newest(['src', 'static', 'svelte.config.js', 'vite.config.ts']);
  if (!isFresh)
    execFileSync('npx', ['vite', 'build', '--logLevel', 'error'], { stdio: ['ignore', 'ignore', 'inherit'] });
  return 'build';
}

/** When the latest of these files was changed, ms. */
function newest(paths: readonly string[]): number {
  return Math.max(...paths.map(newestIn));
}

function newestIn(path: string): number {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newestIn(join(path, name))));
}
