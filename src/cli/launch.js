// Runs the command line, building it first when a source is newer. Says nothing of its own on stdout.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const built = join(root, 'dist', 'joggle.js');

function newestSource() {
  const folders = ['src/cli', 'src/core', 'src/formats', 'src/solver'];
  const files = folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name)),
  );
  return Math.max(...[...files, join(root, 'package.json')].map((file) => statSync(file).mtimeMs));
}

if (!existsSync(built) || statSync(built).mtimeMs < newestSource()) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const build = spawnSync(
    process.execPath,
    [vite, 'build', '-c', 'vite.cli.config.ts', '--logLevel', 'error'],
    {
      cwd: root,
      stdio: ['ignore', 2, 2],
    },
  );
  if (build.status !== 0) {
    process.stderr.write('The command line could not be built; the lines above say why.\n');
    process.exit(2);
  }
}
const run = spawnSync(process.execPath, [built, ...process.argv.slice(2)], {
  stdio: 'inherit',
  env: { ...process.env, INIT_CWD: process.env.INIT_CWD ?? process.cwd() },
});
process.exit(run.status ?? 2);
