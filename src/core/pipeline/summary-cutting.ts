import type { Layout } from '#core/cutting';
import type { Project } from '#core/project';
import { formatMoney, formatNumber, type LengthSystem } from '#core/units';

import type { CuttingGroup, PlannedGroup } from './types.ts';
import { nameStock } from './stock-names.ts';
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
      const cost =
        line.owned === true ? 'from the rack' : formatMoney(each.count * line.price, project.currency);
      return [`    ${each.count} × ${nameStock(project, line.id)}, ${cost}`];
    }),
    ...wrapLines(`    ${describeProof(project, { group, plan })}`, 96, '    '),
    ...describeLeftovers(plan.layouts, group, project.units),
    ...plan.unplaced.map((each) => `    NOT PLACED: ${each.count} × ${each.id}`),
  ];
}

/** What the bound says, in words. */
export function describeProof(project: Project, { group, plan }: PlannedGroup): string {
  if (plan.bound === null) return 'Not everything could be placed, so no bound is given.';
  const isBought = group.job.stock.some((stock) =>
    project.stock.some((line) => line.id === stock.id && line.owned !== true),
  );
  const amount = (value: number): string =>
    isBought ? formatMoney(value, project.currency) : `${formatNumber(value, 2)} in worth of the rack`;
  if (plan.proven) return `Proven: no plan costs less than ${amount(plan.cost)}.`;
  return `Costs ${amount(plan.cost)}; no plan can cost less than ${amount(plan.bound)}. Whether a cheaper one exists is not known.`;
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
