import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect } from 'vitest';

/**
 * Compares a text with the file that holds what is expected. Where they differ, what came out is left beside it as
 * `<name>.changed.<ending>` to be looked at; `ACCEPT=1` takes it over.
 */
export function expectFile(path: string, text: string): void {
  const changed = path.replace(/(\.\w+)$/, '.changed$1');
  mkdirSync(dirname(path), { recursive: true });
  if (process.env.ACCEPT === '1') writeFileSync(path, text);
  const expected = existsSync(path) ? readFileSync(path, 'utf8') : '';
  if (expected === text) {
    rmSync(changed, { force: true });
    return;
  }
  writeFileSync(changed, text);
  expect.fail(
    `${path} differs from what is drawn now: look at ${changed}, then run with ACCEPT=1 to take it over`,
  );
}
