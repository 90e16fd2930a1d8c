import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

import type { CuttingGroup, RouterGroup } from './types.ts';

/** Notes on stock to be bought for 0 that a job may use: files from before prices could be unknown say so of stock with none. */
export function checkPrices(
  project: Project,
  groups: readonly CuttingGroup[],
  routing: readonly RouterGroup[],
): readonly Problem[] {
  const used = new Set([
    ...groups.flatMap(({ job }) => job.stock.map(({ id }) => id)),
    ...routing.flatMap(({ lines }) => lines),
  ]);
  return project.stock
    .filter((line) => line.owned !== true && line.price === 0 && used.has(line.id))
    .map((line) => ({
      severity: 'note',
      code: 'stock-for-nothing',
      about: line.id,
      message: 'The price is 0: it counts as free, and plans prefer it.',
      remedy: 'Enter the price, or empty the field if you do not know it.',
    }));
}
