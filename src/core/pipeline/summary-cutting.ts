import type { Layout } from '#core/cutting';
import type { Project } from '#core/project';
import type { LengthSystem } from '#core/units';

import { describeUnpriced, measureCost, sayCost, type CostMeasure } from './cost-measure.ts';
import type { CuttingGroup, PlannedGroup } from './types.ts';
import { nameStock } from './stock-names.ts';
import { sayStockPrice } from './stock-prices.ts';
import { countWords, showSizeIn, wrapLines } from './words.ts';

/** Leftovers named per job; the rest is counted. */
const namedLeftovers = 6;

/** What one cutting plan comes to: what is used, what it costs, whether less would do, and what is left. */
export function summariseGroup(project: Project, { group, plan }: PlannedGroup): readonly string[] {
  const used = plan.stockUsed.filter((each) => each.count > 0);
  return [
    `  ${group.title}`,
    ...(used.length === 0 ? ['    Nothing could be placed.'] : []),
    ...used.flatMap((each) => {
      const line = project.stock.find((stock) => stock.id === each.id);
      if (!line) return [];
      return [
        `    ${each.count} × ${nameStock(project, line.id)}, ${sayStockPrice(project, line, each.count)}`,
      ];
    }),
    ...wrapLines(`    ${describeProof(project, { group, plan })}`, 96, '    '),
    ...describeLeftovers(plan.layouts, group, project.units),
    ...plan.unplaced.map((each) => `    NOT PLACED: ${each.count} × ${each.id}`),
  ];
}

/** What the bound says, in words. */
export function describeProof(project: Project, { group, plan }: PlannedGroup): string {
  if (plan.bound === null) return 'Not everything could be placed, so no bound is given.';
  const measure = measureCost(project, group.job);
  const proof = sayProof(plan.cost, plan.proven ? null : plan.bound, measure);
  return [proof, describeUnpriced(project, measure)].filter((sentence) => sentence !== '').join(' ');
}

/** `bound` null: the plan is proven. */
function sayProof(cost: number, bound: number | null, measure: CostMeasure): string {
  const amount = (value: number): string => sayCost(value, measure);
  if (measure.unit.kind === 'money')
    return bound === null
      ? `Proven: no plan costs less than ${amount(cost)}.`
      : `Costs ${amount(cost)}; no plan can cost less than ${amount(bound)}. Whether a cheaper one exists is not known.`;
  return bound === null
    ? `Proven: no plan takes less than ${amount(cost)}.`
    : `Takes ${amount(cost)}; no plan can take less than ${amount(bound)}. Whether one with less exists is not known.`;
}

function describeLeftovers(
  layouts: readonly Layout[],
  group: CuttingGroup,
  units: LengthSystem,
): readonly string[] {
  const all = layouts
    .flatMap((layout) => layout.leftovers.map((left) => ({ left, times: layout.times })))
    .sort((a, b) => area(b.left) - area(a.left));
  if (all.length === 0) return [];
  const named = all
    .slice(0, namedLeftovers)
    .map(({ left, times }) => {
      const sides = group.form === 'batten' ? [left.length] : [left.length, left.width ?? 0];
      const size = showSizeIn(units, ...sides);
      return times > 1 ? `${times} of ${size}` : size;
    })
    .join(', ');
  const more =
    all.length > namedLeftovers ? `, and ${countWords(all.length - namedLeftovers, 'smaller one')}` : '';
  return wrapLines(`    Worth keeping: ${named}${more}.`, 96, '      ');
}

function area(left: { readonly length: number; readonly width?: number }): number {
  return left.length * (left.width ?? 1);
}
