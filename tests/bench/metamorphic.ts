import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob, CuttingPart, CuttingStock } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';
import { makeWorkshopJob } from './workshop-jobs.ts';

/** A way to tell a job otherwise that must not change what it comes to; `scale`: by what the costs are multiplied. */
interface Telling {
  readonly name: string;
  readonly tell: (job: CuttingJob) => CuttingJob;
  readonly scale: number;
}

type Size = CuttingStock | CuttingPart;

function mapSizes(job: CuttingJob, map: (size: Size, isStock: boolean) => Size): CuttingJob {
  return {
    ...job,
    stock: job.stock.map((each) => map(each, true) as CuttingStock),
    parts: job.parts.map((each) => map(each, false) as CuttingPart),
  };
}

/** Without limits of the saw, counts and bad spots: with them a job told otherwise would be another job. */
function plainly(job: CuttingJob): CuttingJob {
  const stock = job.stock.map(({ id, length, width, cost }) => ({
    ...{ id, length },
    ...(width === undefined ? {} : { width }),
    ...(cost === undefined ? {} : { cost }),
  }));
  return {
    ...{ stock, parts: job.parts, kerf: job.kerf ?? 0, turn: job.turn ?? false, trim: job.trim ?? {} },
    cuts: { style: job.cuts?.style ?? 'guillotine' },
  };
}

/** Costs told with the stock, as area would change with the sizes. */
function priced(job: CuttingJob): CuttingJob {
  return {
    ...job,
    stock: job.stock.map((each) => ({ ...each, cost: each.cost ?? each.length * (each.width ?? 1) })),
  };
}

/** Sizes times `times`, a kerf `by` taken off each: with that kerf the same rows fit (cutting literature). */
function withKerf(times: number, by: number): (job: CuttingJob) => CuttingJob {
  return (job) => ({
    ...mapSizes(job, (size) => ({
      ...size,
      length: size.length * times - by,
      ...(size.width === undefined ? {} : { width: size.width * times - by }),
    })),
    kerf: (job.kerf ?? 0) * times + by,
    trim: {
      left: (job.trim?.left ?? 0) * times,
      right: (job.trim?.right ?? 0) * times,
      bottom: (job.trim?.bottom ?? 0) * times,
      top: (job.trim?.top ?? 0) * times,
    },
  });
}

function withTrim(by: number): (job: CuttingJob) => CuttingJob {
  return (job) => {
    const trim = job.trim ?? {};
    const grown = mapSizes(job, (size, isStock) =>
      isStock
        ? {
            ...size,
            length: size.length + 2 * by,
            ...(size.width === undefined ? {} : { width: size.width + 2 * by }),
          }
        : size,
    );
    return {
      ...grown,
      trim: {
        left: (trim.left ?? 0) + by,
        right: (trim.right ?? 0) + by,
        bottom: (trim.bottom ?? 0) + by,
        top: (trim.top ?? 0) + by,
      },
    };
  };
}

function swapped(job: CuttingJob): CuttingJob {
  const trim = job.trim ?? {};
  return {
    ...mapSizes(job, (size) => ({ ...size, length: size.width ?? 0, width: size.length })),
    trim: {
      left: trim.bottom ?? 0,
      right: trim.top ?? 0,
      bottom: trim.left ?? 0,
      top: trim.right ?? 0,
    },
  };
}

const tellings: readonly Telling[] = [
  { name: 'kerf 3.2', tell: withKerf(10, 3.2), scale: 1 },
  { name: 'kerf 4', tell: withKerf(10, 4), scale: 1 },
  { name: 'trim 7.5 each edge', tell: withTrim(7.5), scale: 1 },
  { name: 'seven times as large', tell: withKerf(7, 0), scale: 1 },
  { name: 'length and width swapped', tell: swapped, scale: 1 },
  {
    name: 'parts the other way round',
    tell: (job) => ({ ...job, parts: [...job.parts].reverse() }),
    scale: 1,
  },
  {
    name: 'stock in two lines',
    tell: (job) => ({
      ...job,
      stock: job.stock.flatMap((each) => [each, { ...each, id: `${each.id} again` }]),
    }),
    scale: 1,
  },
  {
    name: 'three times the price',
    tell: (job) => ({ ...job, stock: job.stock.map((each) => ({ ...each, cost: 3 * (each.cost ?? 0) })) }),
    scale: 3,
  },
];

/** Tells many jobs in eight other ways and prints what each comes to; the exit code is 1 when a plan is wrong. */
export async function main(argv: readonly string[]): Promise<number> {
  const { values } = parseArgs({
    args: [...argv],
    options: {
      instances: { type: 'string' },
      file: { type: 'string', default: 'sheets-500' },
      every: { type: 'string', default: '10' },
      work: { type: 'string', default: '4000' },
    },
  });
  const every = Number(values.every);
  const jobs = (values.instances ? readJobs(values.instances, values.file) : ownJobs())
    .filter((_, i) => i % every === 0)
    .map(plainly)
    .map(priced);
  const solve = await makeSolver(Number(values.work));
  console.log(`# ${jobs.length} jobs, work ${values.work}, seed 1`);
  const plain = jobs.map((job) => solve(job));
  console.log('told otherwise\tsame bound\tsame cost\tcost over cost\tfaults');
  let faults = plain.reduce((sum, each) => sum + each.faults, 0);
  for (const telling of tellings) faults += compare(telling, jobs, { plain, solve });
  return faults > 0 ? 1 : 0;
}

interface Total {
  readonly cost: number;
  readonly bound: number;
  readonly faults: number;
}

async function makeSolver(work: number): Promise<(job: CuttingJob) => Total> {
  const solveLp = await loadGlpk();
  return (job) => {
    const plan = solveCutting(job, { solveLp, clock: () => 0, work, seed: 1 });
    return { cost: plan.cost, bound: plan.bound ?? 0, faults: checkPlan(job, plan).length };
  };
}

function compare(
  { name, tell, scale }: Telling,
  jobs: readonly CuttingJob[],
  { plain, solve }: { readonly plain: readonly Total[]; readonly solve: (job: CuttingJob) => Total },
): number {
  const told = jobs.map((job) => solve(tell(job)));
  const isSame = (a: number, b: number) => Math.abs(a - scale * b) <= 1e-6 * Math.max(1, a);
  const count = (of: 'cost' | 'bound') =>
    told.filter((each, i) => isSame(each[of], plain[i]?.[of] ?? 0)).length;
  const sum = (totals: readonly Total[], of: 'cost' | 'faults') =>
    totals.reduce((all, each) => all + each[of], 0);
  const ratio = sum(told, 'cost') / (scale * sum(plain, 'cost'));
  console.log([name, count('bound'), count('cost'), ratio.toFixed(4), sum(told, 'faults')].join('\t'));
  return sum(told, 'faults');
}

function ownJobs(): readonly CuttingJob[] {
  return Array.from({ length: 100 }, (_, i) => makeWorkshopJob(i + 1));
}

function readJobs(folder: string, file: string): readonly CuttingJob[] {
  const rows = JSON.parse(readFileSync(join(folder, `${file}.json`), 'utf8')) as readonly {
    readonly job: CuttingJob;
  }[];
  return rows.map(({ job }) => job);
}
