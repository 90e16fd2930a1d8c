import { checkJob, checkPlan, type CuttingPlan, type Layout } from '#core/cutting';
import { formatNumber } from '#core/units';
import { readCuttingJob } from '#formats/json';
import { cutTogether } from '#solver/threads';

import type { Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { countWorkers } from './count-workers.ts';
import { oneFile } from './one-file.ts';
import { stopOnSignal } from './stop-on-signal.ts';

/** Kept back from the time asked for, to check and print the answer, seconds. */
const reserve = 0.2;

const defaultSeconds = 10;

/** `cut JOB.json`: the cheapest plan found, checked, with the bound that no plan can beat. */
export async function runCut(io: Io, given: Arguments): Promise<Outcome> {
  const file = oneFile(given, 'cut JOB.json');
  if (!file.ok) return { kind: 'refused', findings: file.problems };
  const text = readInput(io, file.value);
  if (!text.ok) return { kind: 'refused', findings: text.problems };
  const job = readCuttingJob(text.value);
  if (!job.ok) return { kind: 'refused', findings: job.problems };
  const wrong = checkJob(job.value);
  if (wrong.length > 0) return { kind: 'refused', findings: wrong };
  const seconds = Math.max(0.05, (given.seconds ?? defaultSeconds) - io.elapsed() - reserve);
  const workers = countWorkers(given);
  // only between the turns of two threads, and by the clock, can a signal be heard
  const stop = workers === 2 && given.work === undefined ? stopOnSignal(io) : null;
  const plan = await cutTogether(job.value, {
    workers,
    ...(stop && { isStopped: stop.isStopped }),
    ...(given.work === undefined ? { seconds } : { work: given.work }),
    ...(given.work !== undefined && given.seconds !== undefined && { seconds }),
    seed: given.seed ?? 1,
  });
  stop?.forget();
  const faults = checkPlan(job.value, plan);
  if (faults.length > 0) throw new Error(`the checker refuses the plan: ${faults[0]?.message}`);
  return { kind: 'done', document: plan, text: describePlan(plan), findings: plan.findings };
}

function describePlan(plan: CuttingPlan): string {
  const proof = plan.proven
    ? 'proven: no plan can cost less'
    : plan.bound === null
      ? 'not all parts are placed'
      : `no plan can cost less than ${formatNumber(plan.bound, 2)}`;
  const lines = [
    `Cost ${formatNumber(plan.cost, 2)} (${proof})`,
    ...plan.stockUsed.map((used) => `  ${used.count} × ${used.id}`),
    ...plan.layouts.map((layout) => `  ${layout.times} × ${layout.stock}: ${countParts(layout)}`),
    ...plan.unplaced.map((part) => `  not placed: ${part.count} × ${part.id}`),
  ];
  return `${lines.join('\n')}\n`;
}

/** What comes out of a layout, as `2 × A1, 5 × B2`. */
function countParts(layout: Layout): string {
  const counts = new Map<string, number>();
  for (const { id } of layout.placed) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([id, count]) => `${count} × ${id}`).join(', ');
}
