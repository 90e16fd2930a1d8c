import type { CuttingPlan, PlanFigures } from '#core/cutting';
import { nameStock } from '#core/pipeline';
import type { Project } from '#core/project';
import type { Search } from './cutting-room.svelte.ts';
import type { Laying } from './routing-room.svelte.ts';
import { formatLength, formatMoney, formatNumber, type LengthSystem } from '#core/units';

/** What is known of how good a plan is, in words. */
export function verdictWords(plan: CuttingPlan, currency: string): string {
  if (plan.unplaced.length > 0) return 'Not everything could be placed; see the findings.';
  if (plan.proven) return 'Proven: no plan can cost less.';
  if (plan.bound === null) return 'Nothing is known yet of how much better it could be.';
  const gap = plan.cost - plan.bound;
  const share = plan.cost > 0 ? ` (${formatNumber((100 * gap) / plan.cost, 1)} %)` : '';
  return `Not proven: a better plan could save at most ${formatMoney(gap, currency)}${share}.`;
}

/** How the search stands, for those who watch or listen. */
export function searchWords(search: Search, currency: string): string {
  if (search.state === 'failed') return 'The search broke down. Go on to try it again.';
  if (search.state === 'waiting') return 'Waits for its turn.';
  if (search.state === 'done') return search.plan ? verdictWords(search.plan, currency) : 'Stopped.';
  const { progress } = search;
  if (!progress || !Number.isFinite(progress.cost)) return 'Looking for a first plan.';
  const least = Number.isFinite(progress.bound) ? `, at least ${formatMoney(progress.bound, currency)}` : '';
  return `Best so far ${formatMoney(progress.cost, currency)}${least}; ${progress.phase}.`;
}

/** How laying shapes stands, for those who watch or listen. */
export function layingWords({ state, plan }: Laying, currency: string): string {
  if (state === 'failed') return 'The search broke down. Go on to try it again.';
  if (!plan)
    return state === 'running' ? 'Looking for a first plan.' : 'Waits for the saw to take its sheets.';
  const sheets = `${plan.sheets.length} ${plan.sheets.length === 1 ? 'sheet' : 'sheets'}`;
  if (plan.unplaced.length > 0) return `${sheets}; not everything could be placed, see the findings.`;
  if (state === 'running') return `Best so far ${sheets}, ${formatMoney(plan.cost, currency)}.`;
  if (plan.proven) return `${sheets}. Proven: no plan can cost less.`;
  return `${sheets}. Whether it could be had for less is not known.`;
}

/** `2 × Birch plywood 12, sheet 2440 × 1220; 1 × Birch plywood 12, offcut 800 × 300`. */
export function stockWords(plan: CuttingPlan, project: Project): string {
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
