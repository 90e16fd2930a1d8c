import type { Project } from '#core/project';
import { formatNumber } from '#core/units';

import type { PlannedRouting } from '../types.ts';
import { describeUnpriced, measureCost } from '../cost-measure.ts';
import { nameStock } from '../stock-names.ts';
import { sayStockPrice } from '../stock-prices.ts';
import { countWords, showSizeIn, wrapLines } from '../words.ts';

/** What one plan of the router comes to: sheets, how full they are, and whether fewer would do. */
export function summariseRouting(project: Project, { group, job, plan }: PlannedRouting): readonly string[] {
  const used = plan.stockUsed.filter((each) => each.count > 0);
  return [
    `  ${group.title}: ${countWords(plan.placements.length, 'part')} by their outlines`,
    ...(used.length === 0 ? ['    Nothing could be placed.'] : []),
    ...used.flatMap((each) => {
      const line = project.stock.find((stock) => stock.id === each.id);
      if (!line) return [];
      return [
        `    ${each.count} × ${nameStock(project, line.id)}, ${sayStockPrice(project, line, each.count)}`,
      ];
    }),
    ...wrapLines(
      `    ${formatNumber(plan.density * 100, 0)} % of the sheets is parts, ${showSizeIn(project.units, job.gap ?? 0)} between them. ${describeNestProof(plan)} ${describeUnpriced(project, measureCost(project, job))}`,
      96,
      '    ',
    ),
    ...plan.unplaced.map((each) => `    NOT PLACED: ${each.count} × ${each.id}`),
  ];
}

/** What the bound of a router's plan says, in words. */
export function describeNestProof(plan: PlannedRouting['plan']): string {
  if (plan.bound === null) return 'Not everything could be placed, so no bound is given.';
  if (plan.proven) return 'Proven: no plan costs less.';
  return 'Whether it could be had for less is not known.';
}
