import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { checkNest } from '#core/nesting';
import type { NestJob, NestPlan } from '#core/nesting';
import { clockOf, nestTogether } from '#solver/threads';

/** A job of the literature with what is known of it: a strip length, or a number of sheets. */
interface Instance {
  readonly name: string;
  readonly job: NestJob;
  readonly best: {
    readonly value?: number | null;
    readonly bound?: number | null;
    /** Per cent, of the best known strip. */
    readonly density?: number;
    /** Mean of the runs published, per cent. */
    readonly runs?: { readonly avg?: number };
  };
}

interface Line {
  readonly instance: Instance;
  readonly plan: NestPlan;
  readonly seconds: number;
  readonly firstPlan: number;
  readonly faults: readonly string[];
}

const files = ['shapes-strip', 'shapes-sheets'];

/** Runs the bench of true shapes; the exit code is 1 when a plan or a bound is wrong, 2 for wrong use. */
export async function main(argv: readonly string[]): Promise<number> {
  const { values } = parseArgs({
    args: [...argv],
    options: {
      instances: { type: 'string' },
      seconds: { type: 'string', default: '10' },
      file: { type: 'string' },
      name: { type: 'string' },
      every: { type: 'string', default: '1' },
      seed: { type: 'string', default: '1' },
      workers: { type: 'string', default: '2' },
      cpu: { type: 'boolean', default: false },
    },
  });
  if (values.instances === undefined) {
    console.error(
      'usage: bench shapes --instances DIR [--seconds N] [--file NAME] [--name NAME] [--every N] [--seed N] [--workers 1|2] [--cpu]',
    );
    return 2;
  }
  const instances = (values.file ? [values.file] : files)
    .flatMap((name) => readInstances(values.instances ?? '', name))
    .filter(({ name }) => values.name === undefined || values.name === name)
    .filter((_, i) => i % Number(values.every) === 0);
  const run: Run = {
    ...{ seconds: Number(values.seconds), seed: Number(values.seed) },
    workers: values.workers === '1' ? 1 : 2,
    clock: values.cpu ? 'processor' : 'wall',
  };
  const [load = 0] = loadavg();
  console.log(
    `# seed ${run.seed}, ${run.seconds} s a job by ${values.cpu ? 'processor time' : 'wall clock'}, ${run.workers === 1 ? 'one thread' : 'two threads'}, ${instances.length} jobs, ${cpus().length} cores, load at the start ${load.toFixed(1)}`,
  );
  console.log(
    'instance\tcost\tbound\tproven\tdensity %\tbest known\tbest %\tmean % published\tfirst ms\tseconds',
  );
  const lines: Line[] = [];
  for (const instance of instances) {
    const line = await runOne(instance, run);
    console.log(writeLine(line));
    lines.push(line);
  }
  console.log(summarise(lines));
  return lines.some((line) => line.faults.length > 0) ? 1 : 0;
}

function readInstances(folder: string, name: string): readonly Instance[] {
  return JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as readonly Instance[];
}

interface Run {
  readonly seconds: number;
  readonly seed: number;
  readonly workers: 1 | 2;
  /** `processor`: what each thread has computed, on a machine that others use too. */
  readonly clock: 'wall' | 'processor';
}

async function runOne(instance: Instance, run: Run): Promise<Line> {
  const clock = clockOf(run);
  const start = clock();
  let firstPlan = NaN;
  const plan = await nestTogether(instance.job, {
    ...run,
    onProgress: () => {
      if (Number.isNaN(firstPlan)) firstPlan = clock() - start;
    },
  });
  const spent = (clock() - start) / 1000;
  const faults = checkNest(instance.job, plan).map((problem) => problem.message);
  const { value = null } = instance.best;
  if (value !== null && plan.bound !== null && plan.bound > value + 1e-6)
    faults.push(`the bound ${plan.bound} is above the best known ${value}`);
  return { instance, plan, seconds: spent, firstPlan, faults };
}

function writeLine({ instance: { name, best }, plan, seconds, firstPlan, faults }: Line): string {
  const round = (value: number | undefined, digits: number) =>
    value === undefined ? '' : value.toFixed(digits);
  return [
    name,
    round(plan.cost, 3),
    round(plan.bound ?? undefined, 3),
    plan.proven ? 'yes' : 'no',
    round(100 * plan.density, 2),
    best.value ?? `bound ${best.bound ?? '?'}`,
    round(best.density, 2),
    round(best.runs?.avg, 2),
    firstPlan.toFixed(0),
    seconds.toFixed(1),
    ...faults,
  ].join('\t');
}

function summarise(lines: readonly Line[]): string {
  const mean = (values: readonly number[]) =>
    values.length === 0 ? 'none' : (values.reduce((a, b) => a + b, 0) / values.length).toFixed(2);
  const strips = lines.filter((line) => line.plan.length !== null);
  const published = strips.filter(({ instance }) => instance.best.runs?.avg !== undefined);
  const sheets = lines.filter((line) => line.plan.length === null);
  return [
    `strips ${strips.length}: mean density ${mean(strips.map(({ plan }) => 100 * plan.density))} %, best known ${mean(strips.map(({ instance }) => instance.best.density ?? 0))} %`,
    `of these ${published.length} with published runs: ${mean(published.map(({ plan }) => 100 * plan.density))} %, their mean ${mean(published.map(({ instance }) => instance.best.runs?.avg ?? 0))} %`,
    `sheets ${sheets.length}: above the optimum or its bound by ${mean(sheets.map(({ plan, instance }) => plan.cost - (instance.best.value ?? instance.best.bound ?? 0)))} on average, ${sheets.filter(({ plan }) => plan.proven).length} proven`,
    `faults ${lines.reduce((sum, line) => sum + line.faults.length, 0)}`,
  ].join('\n');
}
