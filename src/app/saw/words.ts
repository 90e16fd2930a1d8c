import type { CuttingPlan, PlanFigures } from '#core/cutting';
import { nameStock, sayCost, type CostMeasure } from '#core/pipeline';
import type { Project } from '#core/project';
import type { Search } from './cutting-room.svelte.ts';
import type { Laying } from './routing-room.svelte.ts';
import { formatLength, formatNumber, type LengthSystem } from '#core/units';

/** What is known of how good a plan is, in words. */
export function verdictWords(plan: CuttingPlan, measure: CostMeasure): string {
  if (plan.unplaced.length > 0) return `${countLeft(plan)} could not be placed; see the findings.`;
  if (plan.proven) return provenWords(measure);
  if (plan.bound === null) return 'Nothing is known yet of how much better it could be.';
  const gap = plan.cost - plan.bound;
  const share = plan.cost > 0 ? ` (${formatNumber((100 * gap) / plan.cost, 1)} %)` : '';
  return `Not proven: a better plan could save at most ${sayCost(gap, measure)}${share}.`;
}

function provenWords({ unit }: CostMeasure): string {
  return unit.kind === 'money' ? 'Proven: no plan can cost less.' : 'Proven: no plan can take less.';
}

/** How the search stands, for those who watch or listen. */
export function searchWords(search: Search, measure: CostMeasure): string {
  if (search.state === 'failed') return 'The search broke down. Go on to try it again.';
  if (search.state === 'running') return underWayWords(search, measure);
  if (search.isQueued && search.plan) return 'Goes on as soon as the search under way is done.';
  if (search.state === 'waiting') return 'Waits for its turn.';
  return search.plan ? verdictWords(search.plan, measure) : 'Stopped.';
}

function underWayWords({ shown, progress }: Search, measure: CostMeasure): string {
  if (!shown || (shown.unplaced.length > 0 && !progress)) return 'Looking for a first plan.';
  if (shown.unplaced.length > 0) return `Best so far leaves ${countLeft(shown)}; still looking.`;
  const bound = boundOf(shown, progress?.bound);
  const least = bound === null ? '' : `, at least ${sayCost(bound, measure)}`;
  return `Best so far ${sayCost(shown.cost, measure)}${least}; still looking.`;
}

function countLeft({ unplaced }: Pick<CuttingPlan, 'unplaced'>): string {
  const left = unplaced.reduce((sum, { count }) => sum + count, 0);
  return `${left} ${left === 1 ? 'part' : 'parts'}`;
}

/** The cost below which no plan can be, by the plan and by the search under way; null while nothing is known. */
export function boundOf(plan: CuttingPlan | null, told: number | undefined): number | null {
  const known = [plan?.bound, told].filter((each) => Number.isFinite(each)).map(Number);
  return known.length === 0 ? null : Math.max(...known);
}

/** How laying shapes stands, for those who watch or listen. */
export function layingWords({ state, plan }: Laying, measure: CostMeasure): string {
  if (state === 'failed') return 'The search broke down. Go on to try it again.';
  if (!plan)
    return state === 'running' ? 'Looking for a first plan.' : 'Waits for the saw to take its sheets.';
  const sheets = `${plan.sheets.length} ${plan.sheets.length === 1 ? 'sheet' : 'sheets'}`;
  if (plan.unplaced.length > 0) return `${sheets}; ${countLeft(plan)} could not be placed, see the findings.`;
  if (state === 'running') return `Best so far ${sheets}, ${sayCost(plan.cost, measure)}.`;
  if (plan.proven) return `${sheets}. ${provenWords(measure)}`;
  if (plan.bound === null || plan.bound <= 0)
    return `${sheets}. Whether it could be had for less is not known.`;
  return `${sheets}. Not proven: a better plan could save at most ${sayCost(plan.cost - plan.bound, measure)}.`;
}

/** `2 × Birch plywood 12, sheet 2440 × 1220; 1 × Birch plywood 12, offcut 800 × 300`. */
export function stockWords(plan: Pick<CuttingPlan, 'stockUsed'>, project: Project): string {
  return plan.stockUsed.map((used) => `${used.count} × ${nameStock(project, used.id)}`).join('; ');
}

/** Bound over cost, 0 to 1, for the closing gap; 0 while nothing is known. */
export function closeness(cost: number, bound: number | null): number {
  if (bound === null || !Number.isFinite(cost) || !Number.isFinite(bound)) return 0;
  return cost <= 0 ? 1 : Math.max(0, Math.min(1, bound / cost));
}

/** The leftovers of a plan in a few words, as `3 leftovers, the largest 1180 × 640`. */
export function largestWords({ leftovers, largest }: PlanFigures, system: LengthSystem): string {
  if (!largest) return 'nothing worth keeping left';
  const sizes = [largest.length, ...(largest.width === undefined ? [] : [largest.width])];
  const size = sizes.map((each) => formatLength(each, { system })).join(' × ');
  return leftovers === 1 ? `one leftover of ${size}` : `${leftovers} leftovers, the largest ${size}`;
}
