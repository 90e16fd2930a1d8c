import { say } from './check-words.ts';
import { formatCost, type CostUnit } from './cost-unit.ts';
import { limitTrials, trimTrials } from './explain-limits.ts';
import { fillCosts } from './model.ts';
import type { Saving, Trial } from './saving.ts';
import { solveCutting } from './solve-cutting.ts';
import type { CuttingTools } from './cutting-run.ts';
import type { CuttingJob, CuttingPart, CuttingPlan } from './types.ts';

interface Trials {
  readonly plan: CuttingPlan;
  readonly tools: CuttingTools;
  /** Cost to come down to. */
  readonly goal: number;
  /** Seconds by the clock of the tools at which it is over; Infinity when work is counted. */
  readonly end: number;
  /** What costs are told in; bare figures without one. */
  readonly unit: CostUnit | undefined;
}

/** Tries what a workshop could change and reports what saves; each trial ends as soon as it is known. */
export function findSavings(
  job: CuttingJob,
  plan: CuttingPlan,
  { tools, unit }: Pick<Trials, 'tools' | 'unit'>,
): { readonly savings: readonly Saving[]; readonly without: readonly string[] } {
  const seconds = tools.work === undefined ? (tools.seconds ?? 2) : Infinity;
  const goal = plan.cost - leastStep(job, plan);
  const trials: Trials = { plan, tools, goal, end: tools.clock() / 1000 + seconds, unit };
  const others = stockTrials(job, unit);
  const all = [
    ...kerfTrials(job),
    ...trimTrials(job),
    ...limitTrials(job),
    ...turnTrials(job),
    ...partTrials(job, plan),
  ];
  const savings: Saving[] = [];
  const without: string[] = [];
  all.forEach((trial, i) => {
    const cost = tryChange(trials, trial.job, others.length + all.length - i);
    if (cost === null) without.push(`${trial.words}: no saving found.`);
    else savings.push(tellSaving(trials, refine(trials, job, { trial, cost })));
  });
  const other = findStock(trials, others);
  if (other) savings.push(other);
  else if (others.length > 0) without.push('With another common size of stock as well: no saving found.');
  return { savings, without };
}

/** The one other size of stock that saves most; other prices, so a hundredth less is a saving. */
function findStock(trials: Trials, others: readonly Trial[]): Saving | null {
  const { plan } = trials;
  const found = others.flatMap((trial, i) => {
    const cost = tryChange({ ...trials, goal: plan.cost * 0.99 }, trial.job, others.length - i);
    return cost === null ? [] : tellSaving(trials, { trial, cost });
  });
  return found.sort((a, b) => b.saves - a.saves)[0] ?? null;
}

/** The smallest saving worth the name: one of the cheapest pieces, or a hundredth of the cost where that is less. */
function leastStep(job: CuttingJob, plan: CuttingPlan): number {
  const costs = fillCosts(job.stock, job.cuts?.style === 'length').filter((cost) => cost > 0);
  return Math.min(...costs, plan.cost) * (costs.length > 1 ? 0.01 : 1 - 1e-9);
}

/** The cost of a plan for a changed job that reaches the goal; null when none was found. */
function tryChange({ tools, goal, end }: Trials, job: CuttingJob, shares: number): number | null {
  const seconds = end === Infinity ? undefined : (end - tools.clock() / 1000) / shares;
  if (seconds !== undefined && seconds < 0.01) return null;
  const { solveLp, clock, work, seed } = tools;
  const plan = solveCutting(job, { solveLp, clock, work, seed, seconds, enough: goal });
  return plan.bound !== null && plan.cost <= goal + 1e-6 * Math.max(1, goal) ? plan.cost : null;
}

/** A trial that reached the goal. */
interface Success {
  readonly trial: Trial;
  readonly cost: number;
}

function tellSaving({ plan, unit }: Trials, { trial, cost }: Success): Saving {
  const saves = Number((plan.cost - cost).toFixed(9));
  const from = plan.layouts.reduce((sum, layout) => sum + layout.times, 0);
  const amount = (value: number): string => sayAmount(value, unit);
  const verb = unit?.kind === 'stock' ? 'takes' : 'costs';
  const message = `${trial.words}: ${verb} ${amount(cost)} instead of ${amount(plan.cost)} (${from} pieces of stock now).`;
  return {
    change: trial.change,
    ...(trial.part === undefined ? {} : { part: trial.part }),
    ...{ message, job: trial.job, cost, saves },
  };
}

function sayAmount(cost: number, unit: CostUnit | undefined): string {
  return unit ? formatCost(cost, unit) : say(cost);
}

function kerfTrials(job: CuttingJob): readonly Trial[] {
  const kerf = job.kerf ?? 0;
  if (kerf <= 0) return [];
  const thin = kerf > 2.2 ? 2.2 : kerf / 2;
  const words = `With a kerf of ${say(thin)} mm instead of ${say(kerf)} mm`;
  return [{ change: 'kerf', words, job: { ...job, kerf: thin } }];
}

function turnTrials(job: CuttingJob): readonly Trial[] {
  if (job.cuts?.style === 'length') return [];
  const fixed = job.parts.filter((part) => !(part.turn ?? job.turn) && part.length !== part.width);
  const large = [...fixed].sort((a, b) => areaOf(b) - areaOf(a)).slice(0, 3);
  const one = large.map((part) => turnPart(job, part));
  if (fixed.length < 2) return one;
  const parts = job.parts.map((part) => ({ ...part, turn: true }));
  const words = 'With every part free to lie across the grain';
  return [...one, { change: 'turn', words, job: { ...job, parts } }];
}

function turnPart(job: CuttingJob, part: CuttingPart): Trial {
  const words = `With ${part.id} free to lie across the grain`;
  return { change: 'turn', part: part.id, words, job: withPart(job, { ...part, turn: true }) };
}

/** Sheets as timber merchants and board makers commonly stock them, mm (common practice, no source). */
const commonSheets = [
  [2440, 1220],
  [2500, 1250],
  [3050, 1220],
  [3050, 1525],
] as const;

/** Lengths of sawn and planed timber in steps of 300 mm (common practice, no source). */
const commonLengths = [2400, 3000, 3600, 4200, 4800, 5400, 6000] as const;

/** Another size beside those of the job, at the price by area of its dearest stock; what is larger or smaller by far is left out. */
function stockTrials(job: CuttingJob, unit: CostUnit | undefined): readonly Trial[] {
  const flat = job.cuts?.style === 'length';
  const [main] = [...job.stock].sort((a, b) => sizeOf(b) - sizeOf(a));
  if (!main || (main.count ?? Infinity) < Infinity) return [];
  const sizes = flat ? commonLengths.map((length) => [length] as const) : commonSheets;
  const costs = fillCosts(job.stock, flat);
  const rate = Math.max(...job.stock.map((stock, i) => (costs[i] ?? 0) / sizeOf(stock)));
  return sizes.flatMap(([length, width]) => {
    const known = job.stock.some((stock) => stock.length === length && stock.width === width);
    const share = (length * (width ?? 1)) / sizeOf(main);
    if (known || share < 0.5 || share > 2) return [];
    const cost = Number((rate * length * (width ?? 1)).toFixed(2));
    const size = width === undefined ? { length } : { length, width };
    const id = [length, width].filter((side) => side !== undefined).join(' × ');
    // those without a price keep the one that the job's other stock gives them
    const stock = job.stock.map((each, i) => ({ ...each, cost: costs[i] ?? 0 }));
    const price = unit?.kind === 'stock' ? '' : `, at ${sayAmount(cost, unit)} each`;
    const words = `With stock of ${id} mm as well${price}`;
    return [{ change: 'stock', words, job: { ...job, stock: [...stock, { id, ...size, cost }] } }];
  });
}

function sizeOf(stock: CuttingJob['stock'][number]): number {
  return stock.length * (stock.width ?? 1);
}

function areaOf(part: CuttingPart): number {
  return part.length * (part.width ?? 1) * (part.count ?? 1);
}

function withPart(job: CuttingJob, changed: CuttingPart): CuttingJob {
  return { ...job, parts: job.parts.map((part) => (part.id === changed.id ? changed : part)) };
}

/** How much a part is made smaller at most, mm: more would be another piece of work. */
const mostOff = 10;

/** The parts of the emptiest piece of stock first: they are the ones that cost it. */
function partTrials(job: CuttingJob, plan: CuttingPlan): readonly Trial[] {
  const flat = job.cuts?.style === 'length';
  const emptiest = [...plan.layouts].sort((a, b) => filledOf(a) - filledOf(b))[0];
  const there = new Set(emptiest?.placed.map(({ id }) => id));
  const ranked = [...job.parts].sort(
    (a, b) => Number(there.has(b.id)) - Number(there.has(a.id)) || areaOf(b) - areaOf(a),
  );
  return ranked.slice(0, 4).flatMap((part) => {
    const sides = flat ? (['shorter'] as const) : (['shorter', 'narrower'] as const);
    return sides.flatMap((change) => trimPart(job, part, change, mostOff) ?? []);
  });
}

function filledOf(layout: CuttingPlan['layouts'][number]): number {
  return layout.placed.reduce((sum, { length, width }) => sum + length * (width ?? 1), 0);
}

function trimPart(
  job: CuttingJob,
  part: CuttingPart,
  change: 'shorter' | 'narrower',
  off: number,
): Trial | null {
  const size = change === 'shorter' ? part.length : (part.width ?? 0);
  if (size <= 2 * off) return null;
  const smaller = change === 'shorter' ? { ...part, length: size - off } : { ...part, width: size - off };
  const words = `With ${part.id} ${say(off)} mm ${change}`;
  return { change, part: part.id, words, job: withPart(job, smaller) };
}

/** The least whole millimetres off a part that still save, by halving. */
function refine(trials: Trials, job: CuttingJob, success: Success): Success {
  const { change } = success.trial;
  const part = job.parts.find((each) => each.id === success.trial.part);
  if (!part || (change !== 'shorter' && change !== 'narrower')) return success;
  let best = success;
  let [fails, works] = [0, mostOff];
  while (works - fails > 1) {
    const off = Math.floor((fails + works) / 2);
    const trial = trimPart(job, part, change, off);
    const cost = trial && tryChange(trials, trial.job, 12);
    if (!trial || cost === null) fails = off;
    else [best, works] = [{ trial, cost }, off];
  }
  return best;
}
