import { areaBound } from './bounds.ts';
import { checkJob } from './check-job.ts';
import { say } from './check-words.ts';
import { formatCost, type CostUnit } from './cost-unit.ts';
import { toMm } from './emit-layout.ts';
import { findSavings } from './explain-savings.ts';
import type { Saving } from './saving.ts';
import { excludeParts } from './exclusions.ts';
import { mergeKinds } from './merge-kinds.ts';
import { buildModel } from './model.ts';
import type { Kind, Model } from './model.ts';
import type { CuttingTools } from './cutting-run.ts';
import { usableArea } from './usable-area.ts';
import type { CuttingJob, CuttingPlan } from './types.ts';

/** Why a plan needs the stock it needs, in sentences, and what would need less. */
export interface BoundStory {
  /** The limits that hold, the strongest first. */
  readonly reasons: readonly string[];
  /** Changes that were found to save, each tried on the job. */
  readonly savings: readonly Saving[];
  /** Changes that are proven to save nothing, or for which no saving was found in the time. */
  readonly without: readonly string[];
}

/**
 * Why a job needs this much stock, in words with numbers, and which changes would save some: each is solved anew within
 * the time or work of the tools, shared among them. Costs are told in the unit, as bare figures without one. A job that
 * `checkJob` refuses, or a plan that left parts out, has no story.
 */
export function explainBound(
  job: CuttingJob,
  plan: CuttingPlan,
  tools: CuttingTools,
  unit?: CostUnit,
): BoundStory {
  if (checkJob(job).length > 0 || plan.bound === null) return { reasons: [], savings: [], without: [] };
  const model = mergeKinds(buildModel(job));
  return { reasons: tellReasons({ model, unit }, plan), ...findSavings(job, plan, { tools, unit }) };
}

/** The job as whole numbers, and what its costs are told in. */
interface Story {
  readonly model: Model;
  readonly unit: CostUnit | undefined;
}

interface Reason {
  readonly cost: number;
  readonly words: string;
}

function tellReasons(story: Story, plan: CuttingPlan): readonly string[] {
  const bound = plan.bound ?? 0;
  const simple = [areaReason(story), exclusionReason(story)].filter((each) => each !== null);
  const slack = 1e-6 * Math.max(1, bound);
  const all = [...simple].sort((a, b) => b.cost - a.cost);
  const strongest = all[0]?.cost ?? 0;
  if (bound > strongest + slack) all.unshift(programReason(story, bound, strongest));
  return [...all.map(({ words }) => words), ...tellGap(story, plan)];
}

/** An amount of cost as a count of sheets where all cost the same, else as stock for that much money. */
function sayCost({ model, unit }: Story, cost: number): string {
  const price = onePrice(model);
  if (price === null) {
    if (!unit) return `stock for ${say(cost)}`;
    return unit.kind === 'money'
      ? `stock for ${formatCost(cost, unit)}`
      : `${formatCost(cost, unit)} of stock`;
  }
  const count = Math.round((cost / price) * 100) / 100;
  const [one, many] = model.style === 'length' ? ['length', 'lengths'] : ['sheet', 'sheets'];
  return `${count} ${count === 1 ? one : many}`;
}

function onePrice(model: Model): number | null {
  const prices = [...new Set(model.bins.map((bin) => bin.cost))];
  return prices.length === 1 && (prices[0] ?? 0) > 0 ? (prices[0] as number) : null;
}

function areaReason(story: Story): Reason {
  const { model } = story;
  const cost = areaBound(model);
  const total = model.kinds.reduce((sum, kind) => sum + kind.area * kind.count, 0);
  const largest = model.bins.reduce((most, bin) => Math.max(most, usableArea(model, bin)), 0);
  const need = sayAmount(model, total);
  const give = sayAmount(model, largest);
  const share = Math.round((total / largest) * 100) / 100;
  const one = model.style === 'length' ? 'length' : 'sheet';
  const stock = model.bins.length === 1 ? `one ${one}` : `the largest ${one}`;
  const around = model.bins.some((bin) => bin.hasKeepOut) ? ', without its keep-outs' : '';
  const told =
    total > largest
      ? `that is ${share > 1 ? share : 'just over one'} of them, so that by ${model.style === 'length' ? 'length' : 'area'} alone it wants at least ${sayCost(story, cost)}`
      : `by ${model.style === 'length' ? 'length' : 'area'} alone ${sayCost(story, cost)} would do`;
  const words = `With a kerf each, the parts take ${need}; ${stock} gives ${give} inside its trims${around}: ${told}.`;
  return { cost, words };
}

function sayAmount(model: Model, units: number): string {
  return model.style === 'length'
    ? `${toMm(model, units)} mm`
    : `${(Math.round(units * model.unit ** 2) / 1e6).toFixed(2)} m²`;
}

function exclusionReason(story: Story): Reason | null {
  const { model } = story;
  const chosen = excludeParts(model);
  const count = chosen.reduce((sum, each) => sum + each.count, 0);
  if (count < 2) return null;
  const cheapest = Math.min(...model.bins.map((bin) => bin.cost));
  const names = chosen.slice(0, 6).map(({ kind, count: n }) => `${n} × ${kind.id} (${sizeOf(model, kind)})`);
  const more = chosen.length > 6 ? ' and others' : '';
  const cost = count * cheapest;
  const words = `No two of these ${count} parts go on one piece of stock, however they lie: ${names.join(', ')}${more}. They alone need ${sayCost(story, cost)}.`;
  return { cost, words };
}

function sizeOf(model: Model, kind: Kind): string {
  const length = toMm(model, kind.length - model.kerfX);
  return model.style === 'length'
    ? `${length} mm`
    : `${length} × ${toMm(model, kind.width - model.kerfY)} mm`;
}

function programReason(story: Story, bound: number, simple: number): Reason {
  const beyond = simple > 0 ? `; by area and single parts alone ${sayCost(story, simple)} would do` : '';
  const words = `However the parts are put together, they want at least ${sayCost(story, bound)}: what must fall off beside them takes the rest${beyond}.`;
  return { cost: bound, words };
}

function tellGap(story: Story, plan: CuttingPlan): readonly string[] {
  if (plan.proven) return [`The plan takes ${sayCost(story, plan.cost)}: none can take less.`];
  const bound = plan.bound ?? 0;
  return [
    `The plan takes ${sayCost(story, plan.cost)}; between that and ${sayCost(story, bound)} it is not proven. More time may tell.`,
  ];
}
