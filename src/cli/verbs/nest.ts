import { checkNest, checkNestJob, type NestJob, type NestPlan } from '#core/nesting';
import { formatNumber } from '#core/units';
import { readNestJob } from '#formats/json';
import { nestTogether } from '#solver/threads';

import type { Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { readInput } from '../read-input.ts';
import { countWorkers } from './count-workers.ts';
import { oneFile } from './one-file.ts';
import { stopOnSignal } from './stop-on-signal.ts';

/** Kept back from the time asked for, to check and print the answer, seconds: so much, and so much for each corner laid. */
const reserve = { least: 0.2, corner: 6e-6 } as const;

const defaultSeconds = 10;

/** `nest JOB.json`: true shapes on the cheapest sheets found, or on the shortest strip, checked, with a bound. */
export async function runNest(io: Io, given: Arguments): Promise<Outcome> {
  const file = oneFile(given, 'nest JOB.json');
  if (!file.ok) return { kind: 'refused', findings: file.problems };
  const text = readInput(io, file.value);
  if (!text.ok) return { kind: 'refused', findings: text.problems };
  const job = readNestJob(text.value);
  if (!job.ok) return { kind: 'refused', findings: job.problems };
  const wrong = checkNestJob(job.value);
  if (wrong.length > 0) return { kind: 'refused', findings: wrong };
  const kept = reserve.least + reserve.corner * countCorners(job.value);
  const seconds = Math.max(0.05, (given.seconds ?? defaultSeconds) - io.elapsed() - kept);
  const workers = countWorkers(given);
  // only between the turns of two threads, and by the clock, can a signal be heard
  const stop = workers === 2 && given.work === undefined ? stopOnSignal(io) : null;
  const plan = await nestTogether(job.value, {
    workers,
    ...(stop && { isStopped: stop.isStopped }),
    ...(given.work === undefined ? { seconds } : { work: given.work }),
    ...(given.work !== undefined && given.seconds !== undefined && { seconds }),
    seed: given.seed ?? 1,
  });
  stop?.forget();
  const faults = checkNest(job.value, plan);
  if (faults.length > 0) throw new Error(`the checker refuses the plan: ${faults[0]?.message}`);
  return { kind: 'done', document: plan, text: describeNest(plan), findings: plan.findings };
}

function countCorners(job: NestJob): number {
  return job.parts.reduce(
    (sum, part) =>
      sum +
      (part.count ?? 1) * [part.outline, ...(part.holes ?? [])].reduce((all, ring) => all + ring.length, 0),
    0,
  );
}

function describeNest(plan: NestPlan): string {
  const isStrip = plan.length !== null;
  const unit = isStrip ? ' mm' : '';
  const proof = plan.proven
    ? `proven: no plan can ${isStrip ? 'be shorter' : 'cost less'}`
    : plan.bound === null
      ? 'not all parts are placed'
      : `no plan can ${isStrip ? 'be shorter' : 'cost less'} than ${formatNumber(plan.bound, 2)}${unit}`;
  const lines = [
    `${isStrip ? 'Length' : 'Cost'} ${formatNumber(plan.cost, 2)}${unit} (${proof})`,
    `  ${formatNumber(100 * plan.density, 1)} % of the material used`,
    ...plan.sheets.map(({ stock }, sheet) => `  sheet ${sheet}, ${stock}: ${countParts(plan, sheet)}`),
    ...plan.unplaced.map((part) => `  not placed: ${part.count} × ${part.id}`),
  ];
  return `${lines.join('\n')}\n`;
}

/** What lies on a sheet, as `2 × p1, 5 × p2`. */
function countParts(plan: NestPlan, sheet: number): string {
  const counts = new Map<string, number>();
  for (const placed of plan.placements)
    if (placed.sheet === sheet) counts.set(placed.id, (counts.get(placed.id) ?? 0) + 1);
  return [...counts].map(([id, count]) => `${count} × ${id}`).join(', ');
}
