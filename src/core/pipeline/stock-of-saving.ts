import type { Saving } from '#core/cutting';
import type { Project, RackCommand, StockLine } from '#core/project';

import { measureCost } from './cost-measure.ts';
import type { CuttingGroup } from './types.ts';

/**
 * The act of putting on the rack the further size of stock that would save some, as one that can be bought; its price is
 * reckoned from that of the stock there is, and not known where none of that has a price. Null when the saving is of another
 * kind.
 */
export function addSavingStock(
  project: Project,
  group: CuttingGroup,
  saving: Saving,
): Extract<RackCommand, { kind: 'add-stock' }> | null {
  const known = new Set(group.job.stock.map(({ id }) => id));
  const size = saving.change === 'stock' ? saving.job.stock.find(({ id }) => !known.has(id)) : undefined;
  if (!size) return null;
  const stock: StockLine = {
    id: freeId(project, `${group.material}-${Math.round(size.length)}`),
    material: group.material,
    form: group.form,
    length: size.length,
    width: size.width ?? group.section.width ?? 0,
    thickness: group.section.thickness,
    count: null,
    ...(measureCost(project, group.job).unit.kind === 'money'
      ? { price: size.cost ?? 0, note: 'Price reckoned from the other stock: ask for it.' }
      : { note: 'Price not known: ask for it.' }),
  };
  return { kind: 'add-stock', stock };
}

/** The stem, or with the first number that no stock line has. */
function freeId({ stock }: Project, stem: string): string {
  const taken = new Set(stock.map(({ id }) => id));
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.has(id)) return id;
  }
}
