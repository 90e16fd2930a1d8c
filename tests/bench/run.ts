import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { checkPlan } from '#core/cutting';
import type { CuttingJob, CuttingPlan } from '#core/cutting';
import { clockOf, cutTogether } from '#solver/threads';
import { makeBoardJobs } from './board-jobs.ts';
import { main as runFit } from './fit.ts';
import { makeKnownJob } from './known-jobs.ts';
import { main as runMetamorphic } from './metamorphic.ts';
import { plotGrowth } from './plot-growth.ts';
import { main as runShapes } from './shapes.ts';
import { makeLargeJob, makeWorkshopJob } from './workshop-jobs.ts';

/** A job of the literature, or one of our own without a best known result. */
interface Instance {
  readonly name: string;
  readonly job: CuttingJob;
  readonly best: {
    readonly value?: number | null;
    readonly bound?: number | null;
    /** Where `bound` is not in the unit of the costs. */
    readonly costBound?: number | null;
  } | null;
}

interface Line {
  readonly name: string;
  readonly plan: CuttingPlan;
  readonly seconds: number;
  readonly firstPlan: number;
  readonly best: number | null;
  readonly reference: number | null;
  readonly faults: readonly string[];
}

const files: Readonly<Record<string, readonly string[]>> = {
  sheets: [
    'sheets-500',
    'sheets-demand',
    'sheets-C',
    'sheets-furniture',
    'sheets-furniture-five-sizes',
    'sheets-several-sizes',
  ],
  boards: ['boards', 'boards-non-irup', 'boards-worked'],
};

const usage =
  'bench sheets|boards|workshop|large|known|drawn [--instances DIR] [--seconds N] [--file NAME] [--every N] [--seed N] [--workers 1|2] [--cpu] [--plot FILE.svg]\n   or: bench shapes --instances DIR [--seconds N] [--file NAME] [--name NAME] [--every N] [--seed N] [--workers 1|2] [--cpu]\n   or: bench metamorphic [--instances DIR] [--file NAME] [--every N] [--work N]\n   or: bench fit [--trials N] [--slips SHARE] [--seed N]';

/** Runs the bench and prints its table; the exit code is 1 when a plan or a bound is wrong, 2 for wrong use. */
export async function main(argv: readonly string[]): Promise<number> {
  if (argv[0] === 'fit') return runFit(argv.slice(1));
  if (argv[0] === 'metamorphic') return runMetamorphic(argv.slice(1));
  if (argv[0] === 'shapes') return runShapes(argv.slice(1));
  const { values, positionals } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      instances: { type: 'string' },
      seconds: { type: 'string', default: '10' },
      file: { type: 'string' },
      every: { type: 'string', default: '1' },
      seed: { type: 'string', default: '1' },
      workers: { type: 'string', default: '2' },
      cpu: { type: 'boolean', default: false },
      plot: { type: 'string' },
    },
  });
  const set = positionals[0] ?? '';
  const isOurs = set === 'workshop' || set === 'large' || set === 'known' || set === 'drawn';
  if (!isOurs && !(set in files && values.instances)) {
    console.error(`usage: ${usage}`);
    return 2;
  }
  const instances = isOurs
    ? ownJobs(set)
    : readInstances(values.instances ?? '', values.file ? [values.file] : (files[set] ?? []));
  const sample = instances.filter((_, i) => i % Number(values.every) === 0);
  const run: Run = {
    ...{ seconds: Number(values.seconds), seed: Number(values.seed), every: Number(values.every) },
    workers: values.workers === '1' ? 1 : 2,
    clock: values.cpu ? 'processor' : 'wall',
    plot: values.plot ?? null,
  };
  console.log(describeRun(run, instances.length));
  return runAll(sample, run);
}

function ownJobs(set: 'workshop' | 'large' | 'known' | 'drawn'): readonly Instance[] {
  if (set === 'drawn') {
    return makeBoardJobs().map(({ name, job, boards }) => ({ name, job, best: { value: boards } }));
  }
  if (set === 'known') {
    const kinds = ['one size', 'nice', 'path'] as const;
    const known = kinds.flatMap((kind) =>
      [25, 50, 100, 200].map((parts) => makeKnownJob(parts + 1, parts, kind)),
    );
    return known.map(({ name, job, cost }) => ({ name, job, best: { value: cost, bound: cost } }));
  }
  if (set === 'large') {
    return [100, 300, 1000, 3000, 10_000].map((count) => ({
      name: `${count} parts`,
      job: makeLargeJob(count, 3),
      best: null,
    }));
  }
  return Array.from({ length: 50 }, (_, i) => ({
    name: `workshop ${i + 1}`,
    job: makeWorkshopJob(i + 1),
    best: null,
  }));
}

function readInstances(folder: string, names: readonly string[]): readonly Instance[] {
  return names.flatMap(
    (name) => JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as readonly Instance[],
  );
}

interface Run {
  readonly seconds: number;
  readonly seed: number;
  readonly every: number;
  readonly workers: 1 | 2;
  /** `processor`: what each thread has computed, on a machine that others use too. */
  readonly clock: 'wall' | 'processor';
  /** Where a drawing of the growth goes. */
  readonly plot: string | null;
}

function describeRun({ seconds, seed, every, workers, clock }: Run, all: number): string {
  const [load = 0] = loadavg();
  const sample = every === 1 ? `all ${all} jobs` : `every ${every}th of ${all} jobs, from the first`;
  const by = clock === 'processor' ? 'processor time' : 'wall clock';
  const threads = workers === 1 ? 'one thread' : 'two threads';
  return `# seed ${seed}, ${seconds} s a job by ${by}, ${threads}, ${sample}, ${cpus().length} cores, load at the start ${load.toFixed(1)}`;
}

async function runAll(instances: readonly Instance[], run: Run): Promise<number> {
  const clock = clockOf(run);
  console.log('instance\tcost\tbound\tproven\tfirst ms\tseconds\tbest known\tratio');
  const lines: Line[] = [];
  for (const instance of instances) {
    const start = clock();
    let firstPlan = NaN;
    const plan = await cutTogether(instance.job, {
      ...run,
      onProgress: () => {
        if (Number.isNaN(firstPlan)) firstPlan = clock() - start;
      },
    });
    const line = judge(instance, plan, { seconds: (clock() - start) / 1000, firstPlan });
    lines.push(line);
    console.log(writeLine(line));
  }
  console.log(summarise(lines));
  console.log(`memory at the most ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);
  if (run.plot) writeFileSync(run.plot, plotGrowth(lines.map(growthOf)));
  return lines.some((line) => line.faults.length > 0) ? 1 : 0;
}

function growthOf({ plan, firstPlan }: Line) {
  const parts = plan.layouts.reduce((sum, layout) => sum + layout.placed.length * layout.times, 0);
  return { parts, firstPlan, ratio: plan.cost / (plan.bound ?? plan.cost) };
}

function judge(instance: Instance, plan: CuttingPlan, times: { seconds: number; firstPlan: number }): Line {
  const { value = null, bound = null, costBound = null } = instance.best ?? {};
  const faults = checkPlan(instance.job, plan).map((problem) => problem.message);
  if (value !== null && plan.bound !== null && plan.bound > value + 1e-6) {
    faults.push(`the bound ${plan.bound} is above the best known ${value}`);
  }
  return { name: instance.name, plan, ...times, best: value, reference: value ?? costBound ?? bound, faults };
}

function writeLine({ name, plan, seconds, firstPlan, best, reference, faults }: Line): string {
  const ratio = reference ? (plan.cost / reference).toFixed(4) : '';
  const cells = [
    name,
    plan.cost,
    plan.bound ?? '',
    plan.proven ? 'yes' : 'no',
    firstPlan.toFixed(0),
    seconds.toFixed(2),
    best ?? '',
    ratio,
  ];
  return [...cells, ...faults].join('\t');
}

function summarise(lines: readonly Line[]): string {
  const sum = (value: (line: Line) => number) => lines.reduce((total, line) => total + value(line), 0);
  const compared = lines.filter((line) => line.reference);
  const ratio = compared.reduce((total, line) => total + line.plan.cost / (line.reference ?? 1), 0);
  const comparison =
    compared.length === 0
      ? 'no best known values to compare with'
      : `best known or its bound ${sum((line) => line.reference ?? 0)}, mean ratio ${(ratio / compared.length).toFixed(4)}`;
  const cost = sum((line) => line.plan.cost);
  const bound = sum((line) => line.plan.bound ?? 0);
  return [
    `${lines.length} jobs, cost ${cost}, bound ${bound}, cost over bound ${(cost / Math.max(bound, 1e-9)).toFixed(4)}`,
    comparison,
    `proven ${sum((line) => Number(line.plan.proven))}, as good as the best known ${sum((line) => Number(line.best !== null && line.plan.cost <= line.best + 1e-6))}`,
    `mean seconds ${(sum((line) => line.seconds) / Math.max(1, lines.length)).toFixed(2)}, latest first plan ${Math.max(...lines.map((line) => line.firstPlan)).toFixed(0)} ms`,
    `faults ${sum((line) => line.faults.length)}`,
  ].join('\n');
}
