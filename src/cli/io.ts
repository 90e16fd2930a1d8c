import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/** What the command line needs of the world: so that a test can stand in for it. */
export interface Io {
  /** Relative paths are resolved against it. */
  readonly folder: string;
  /** Writes to standard output: the answer. */
  readonly answer: (text: string) => void;
  /** Writes to standard error: everything else. */
  readonly say: (text: string) => void;
  /** The text of a file, or of standard input for `-`. Throws Node's errors. */
  readonly readText: (path: string) => string;
  /** Seconds since the command began. */
  readonly elapsed: () => number;
}

/** The real world. */
export function makeNodeIo(): Io {
  const folder = process.env.INIT_CWD ?? process.cwd();
  // whoever reads the answer may stop early, as `head` does
  process.stdout.on('error', () => process.exit());
  return {
    folder,
    answer: (text) => void process.stdout.write(text),
    say: (text) => void process.stderr.write(text),
    readText: (path) => readFileSync(path === '-' ? 0 : resolve(folder, path), 'utf8'),
    elapsed: () => performance.now() / 1000,
  };
}
