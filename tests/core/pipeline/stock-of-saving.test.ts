import { describe, expect, test } from 'vitest';
import type { Saving } from '#core/cutting';
import { addSavingStock, understandProject } from '#core/pipeline';
import { applyCommand } from '#core/project';
import { drawerProject } from '../../cli/sample-projects.ts';

const project = drawerProject();
const group = understandProject(project).groups.find(({ form }) => form === 'sheet');
if (!group) throw new Error('no sheets');
const wider = { id: '2500 × 1250', length: 2500, width: 1250, cost: 91.5 };
const saving: Saving = {
  change: 'stock',
  message: 'With stock of 2500 × 1250 mm as well',
  job: { ...group.job, stock: [...group.job.stock, wider] },
  cost: 91.5,
  saves: 10,
};

describe('a size of stock that would save some', () => {
  const command = addSavingStock(project, group, saving);
  if (!command) throw new Error('no act');
  const next = applyCommand(project, command);
  if (!next.ok) throw new Error(next.problems.map(({ message }) => message).join(' '));

  test('comes on the rack and so into the job, as one that can be bought', () => {
    const then = understandProject(next.value).groups.find(({ id }) => id === group.id);
    const added = then?.job.stock.filter((stock) => !group.job.stock.some(({ id }) => id === stock.id));
    expect(added).toMatchObject([{ length: 2500, width: 1250, cost: 91.5, count: null }]);
  });

  test('gets an id of its own the second time too', () => {
    const again = addSavingStock(next.value, group, saving);
    expect(again && applyCommand(next.value, again).ok).toBe(true);
  });

  test('is no act for a saving of another kind', () => {
    expect(addSavingStock(project, group, { ...saving, change: 'kerf', job: group.job })).toBeNull();
  });
});
