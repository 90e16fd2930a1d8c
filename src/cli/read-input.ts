import { fail, succeed, type Result } from '#core/problems';

import type { Io } from './io.ts';

/** The text of the file named, or of standard input for `-`; fails with a sentence when there is none. */
export function readInput(io: Io, path: string): Result<string> {
  try {
    return succeed(io.readText(path));
  } catch (error) {
    const name = path === '-' ? 'Standard input' : `"${path}"`;
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    return fail({
      severity: 'stop',
      code: 'file-unreadable',
      about: path,
      message: `${name} cannot be read: ${reasons[code] ?? code}.`,
      remedy: `Relative paths are looked for in ${io.folder}.`,
    });
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'reading it is not allowed',
  EAGAIN: 'nothing came in',
  ERR_STRING_TOO_LONG: 'it is too large',
};
