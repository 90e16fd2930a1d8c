import { spawnSync } from 'node:child_process';

/** Runs a program with some text or bytes on its input; its output as text. Throws when it fails. */
export function runTool(program: string, args: readonly string[], input?: string | Uint8Array): string {
  const run = spawnSync(program, args, { input, maxBuffer: 256 * 1024 * 1024 });
  if (run.error) throw run.error;
  if (run.status !== 0) throw new Error(`${program} ended with ${run.status}: ${run.stderr.toString()}`);
  return run.stdout.toString();
}

/**
 * True when a program that reads our files can be run. Where it is absent a line says what is not checked; under CI=true it
 * must be there.
 */
export function haveTool(what: string, program: string, args: readonly string[]): boolean {
  const run = spawnSync(program, args);
  if (!run.error && run.status === 0) return true;
  const line = `not checked: ${what} (cannot run ${program} ${args.join(' ')})`;
  if (process.env.CI === 'true') throw new Error(line);
  console.log(line);
  return false;
}

/** Python of the system, which has the DXF reader. */
export const python = '/usr/bin/python3';
