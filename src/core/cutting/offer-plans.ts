import { checkPlan } from './check-plan.ts';
import { areaOf, measurePlan } from './measure-plan.ts';
import type { PlanFigures } from './measure-plan.ts';
import { fillCosts } from './model.ts';
import { solveCutting } from './solve-cutting.ts';
import type { CuttingTools } from './cutting-run.ts';
import type { CuttingJob, CuttingPlan, PlanAim } from './types.ts';

/** A plan to choose, and what it is best at. */
export interface PlanOffer {
  readonly character: 'as-planned' | 'leftover' | 'settings' | 'sizes' | 'weights';
  /** In words: "Largest leftover". */
  readonly title: string;
  readonly plan: CuttingPlan;
  readonly figures: PlanFigures;
}

/** How much dearer a plan with fewer sizes of stock may be to be offered, as a share of the cost. */
const dearest = 0.1;

/**
 * The plan itself and up to three of another character: at the same cost the largest leftover and the fewest settings
 * of the fence, and at little more the fewest sizes of stock. Each passed `checkPlan` and is better than the plan given
 * in what it is offered for. The seconds or work of the tools are shared among them. Only the plan itself when parts
 * are left out.
 */
export function offerPlans(job: CuttingJob, plan: CuttingPlan, tools: CuttingTools): readonly PlanOffer[] {
  const own = offer(job, plan, 'as-planned');
  if (plan.bound === null) return [own];
  const quest = { job, plan, tools: shareOf(tools, 3) };
  const others = [
    ...(job.keepLeftover ? [() => byAim(quest, 'leftover', aims.leftover)] : []),
    () => byAim(quest, 'settings', aims.settings),
    () => byStock(quest),
  ];
  const found = others.map((seek) => seek()).filter((each) => each !== null);
  return [own, ...found.filter((each) => isBetter(each, own))];
}

/**
 * A plan at the cost of the one given that is better by these weights, in all the time or work of the tools; null when none was
 * found that differs in what `measurePlan` counts, or when parts are left out.
 */
export function offerByWeights(
  job: CuttingJob,
  plan: CuttingPlan,
  tools: CuttingTools,
  weights: PlanAim,
): PlanOffer | null {
  if (plan.bound === null) return null;
  const found = byAim({ job, plan, tools }, 'weights', weights);
  return found && isBetter(found, offer(job, plan, 'as-planned')) ? found : null;
}

const titles: Readonly<Record<PlanOffer['character'], string>> = {
  'as-planned': 'As planned',
  leftover: 'Largest leftover',
  settings: 'Fewest settings of the fence',
  sizes: 'Fewest sizes of stock',
  weights: 'By your weights',
};

const aims: Readonly<Record<'leftover' | 'settings', PlanAim>> = {
  leftover: { leftovers: 1, settings: 1e-4, cuts: 1e-5, turns: 1e-5 },
  settings: { leftovers: 1e-3, settings: 1, cuts: 0.02, turns: 0.02 },
};

function offer(job: CuttingJob, plan: CuttingPlan, character: PlanOffer['character']): PlanOffer {
  return { character, title: titles[character], plan, figures: measurePlan(job, plan) };
}

interface Quest {
  readonly job: CuttingJob;
  readonly plan: CuttingPlan;
  readonly tools: CuttingTools;
}

function shareOf({ seconds, work, ...tools }: CuttingTools, shares: number): CuttingTools {
  if (work !== undefined) return { ...tools, work: Math.ceil(work / shares) };
  return { ...tools, seconds: (seconds ?? 2) / shares };
}

/** Goes on from the plan at its cost; null when that came out dearer or wrong. */
function byAim(
  { job, plan, tools }: Quest,
  character: 'leftover' | 'settings' | 'weights',
  aim: PlanAim,
): PlanOffer | null {
  const found = solveCutting(job, {
    ...tools,
    start: plan,
    enough: plan.cost,
    aim,
    onProgress: undefined,
  });
  return accept({ job, plan, tools }, found, character, plan.cost);
}

/** The cheapest plan that does with one of the sizes used, where several are used. */
function byStock({ job, plan, tools }: Quest): PlanOffer | null {
  const used = plan.stockUsed.map(({ id }) => id);
  if (used.length < 2) return null;
  const most = plan.cost * (1 + dearest);
  const offers = used.slice(0, mostTried).flatMap((id) => {
    const only = { ...job, stock: job.stock.filter((stock) => stock.id === id) };
    // priced as in the whole job, where one without a price takes the rate of the others
    const [costs, own] = [job, only].map(({ stock, cuts }) => fillCosts(stock, cuts?.style === 'length'));
    const at = job.stock.findIndex((stock) => stock.id === id);
    if (costs?.[at] !== own?.[0]) return [];
    const found = solveCutting(only, {
      ...shareOf(tools, Math.min(used.length, mostTried)),
      onProgress: undefined,
    });
    return accept({ job, plan, tools }, found, 'sizes', most) ?? [];
  });
  return offers.sort((a, b) => a.figures.cost - b.figures.cost)[0] ?? null;
}

const mostTried = 4;

/** An offer of a plan that is sound and cheap enough, its bound that of the plan it stands beside. */
function accept(
  { job, plan }: Quest,
  found: CuttingPlan,
  character: PlanOffer['character'],
  most: number,
): PlanOffer | null {
  const slack = 1e-6 * Math.max(1, most);
  if (found.unplaced.length > 0 || found.cost > most + slack) return null;
  const bound = Math.min(found.cost, plan.bound ?? 0);
  const whole = { ...found, bound, proven: found.cost - bound <= 1e-6 * Math.max(1, found.cost) };
  return checkPlan(job, whole).length === 0 ? offer(job, whole, character) : null;
}

function isBetter({ character, figures }: PlanOffer, { figures: own }: PlanOffer): boolean {
  switch (character) {
    case 'as-planned':
      return true;
    case 'weights':
      return JSON.stringify(figures) !== JSON.stringify(own);
    case 'leftover':
      return (figures.largest ? areaOf(figures.largest) : 0) > (own.largest ? areaOf(own.largest) : 0);
    case 'settings':
      return figures.settings < own.settings;
    case 'sizes':
      return figures.sizes < own.sizes;
  }
}
