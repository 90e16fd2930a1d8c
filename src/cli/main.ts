import { makeNodeIo } from './io.ts';
import { run } from './run.ts';

try {
  process.exitCode = await run(process.argv.slice(2), makeNodeIo());
} catch (error) {
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `Stop: This is a mistake in Joggle itself (${message}). Nothing has been written; please report it.\n`,
  );
  process.exitCode = 2;
}
