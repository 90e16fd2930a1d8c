import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** What a run of the command line gave. */
export interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  readonly seconds: number;
}

const built = resolve('dist/joggle.js');
const lock = resolve('node_modules/.joggle-build');
const sources = ['src/cli', 'src/core', 'src/formats', 'src/solver', 'package.json'];
let isFresh = false;

/** Runs the built command with these arguments; builds it first, once, when a source is newer. */
export function runCli(
  args: readonly string[],
  options: {
    readonly input?: string;
    readonly cwd?: string;
    readonly env?: Readonly<Record<string, string>>;
  } = {},
): Run {
  buildWhenStale();
  const start = performance.now();
  const run = spawnSync(process.execPath, [built, ...args], {
    encoding: 'utf8',
    input: options.input ?? '',
    cwd: options.cwd ?? process.cwd(),
    env: { ...withoutInitCwd(), ...options.env },
    maxBuffer: 1e8,
  });
  return {
    code: run.status,
    stdout: run.stdout,
    stderr: run.stderr,
    seconds: (performance.now() - start) / 1000,
  };
}

/** npm sets INIT_CWD for whatever runs the tests; the command must not take its paths from there. */
function withoutInitCwd(): NodeJS.ProcessEnv {
  const env = { ...process.env };
  delete env['INIT_CWD'];
  return env;
}

/** Test files run side by side: only one of them builds, the others wait for it. */
function buildWhenStale(): void {
  if (isFresh) return;
  for (let waited = 0; !takeLock(); waited += 1) {
    if (waited > 600) rmSync(lock, { recursive: true, force: true });
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
  }
  try {
    if (!existsSync(built) || statSync(built).mtimeMs < Math.max(...sources.map(newest))) build();
    isFresh = true;
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function takeLock(): boolean {
  try {
    mkdirSync(lock);
    return true;
  } catch {
    return false;
  }
}

function build(): void {
  const vite = resolve('node_modules/vite/bin/vite.js');
  const run = spawnSync(
    process.execPath,
    [vite, 'build', '-c', 'vite.cli.config.ts', '--logLevel', 'error'],
    {
      encoding: 'utf8',
    },
  );
  if (run.status !== 0) throw new Error(`the command line could not be built:\n${run.stderr}`);
}

function newest(path: string): number {
  const stat = statSync(path);
  if (stat.isFile()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}
