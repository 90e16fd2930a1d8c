import { spawn } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

import { checkPlan, type CuttingJob, type CuttingPlan } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import { runCli } from '../support/run-cli.ts';

const random = makeRandom(3);

/** Far from proven in the time it is given. */
const job: CuttingJob = {
  kerf: 3.2,
  stock: [{ id: 'ply', length: 2440, width: 1220, cost: 1 }],
  parts: Array.from({ length: 400 }, (_, i) => ({
    id: `p${i}`,
    length: random.whole(80, 900),
    width: random.whole(60, 500),
  })),
};

interface Ending {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Starts a run of a day and interrupts it after a while. */
function interruptAfter(milliseconds: number, file: string): Promise<Ending> {
  const args = [resolve('dist/joggle.js'), 'cut', file, '--seconds', '86400', '--workers', '2', '--json'];
  const run = spawn(process.execPath, args);
  const text = { stdout: '', stderr: '' };
  run.stdout.on('data', (chunk: Buffer) => (text.stdout += chunk.toString()));
  run.stderr.on('data', (chunk: Buffer) => (text.stderr += chunk.toString()));
  const timer = setTimeout(() => run.kill('SIGINT'), milliseconds);
  return new Promise((done) => {
    run.on('close', (code) => {
      clearTimeout(timer);
      done({ code, ...text });
    });
  });
}

test('Ctrl-C ends a search of a day with the best plan so far', { timeout: 120_000 }, async () => {
  expect(runCli(['--version']).code).toBe(0);
  const file = join(mkdtempSync(join(tmpdir(), 'joggle-stop-')), 'job.json');
  writeFileSync(file, JSON.stringify(job));
  let ending: Ending = { code: null, stdout: '', stderr: '' };
  // before it listens the signal ends the program: on a busy machine it takes longer to start
  for (let wait = 4000; ending.code !== 0 && wait <= 32_000; wait *= 2)
    ending = await interruptAfter(wait, file);
  expect(ending.code).toBe(0);
  expect(ending.stderr).toContain('best plan so far');
  const plan = JSON.parse(ending.stdout) as CuttingPlan;
  expect(checkPlan(job, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  expect(plan.seconds).toBeLessThan(120);
});
