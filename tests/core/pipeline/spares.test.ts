import { expect, test } from 'vitest';
import { figuresOf, listParts, listShopping, planGroups, understandProject } from '#core/pipeline';
import { applyCommand, newProject, type Project } from '#core/project';
import { loadGlpk } from '#solver/glpk';

const project: Project = {
  ...newProject('Spares'),
  materials: [
    { id: 'oak', kind: 'solid', name: 'Oak, sawn', state: 'sawn', density: 700 },
    { id: 'ply18', kind: 'sheet', name: 'Ply 18', thickness: 18, density: 550 },
  ],
  stock: [
    {
      ...{ id: 'oak-27', material: 'oak', form: 'board', length: 2000, width: 160, thickness: 27 },
      ...{ count: null, price: 30 },
    },
    {
      ...{ id: 'ply', material: 'ply18', form: 'sheet', length: 2440, width: 1220, thickness: 18 },
      ...{ count: null, price: 90 },
    },
  ],
  pieces: [
    {
      ...{ kind: 'cabinet-front', id: 'front', letter: 'A', name: 'Front' },
      parameters: {
        ...{ width: 460, height: 640, columns: 1, rows: 4 },
        materials: { frame: 'oak', fronts: 'ply18' },
      },
    },
  ],
};

test('a new project cuts spares of its boards', () => {
  expect(newProject('New').settings.spares).toBe('boards');
});

test('spares are cut, bought and listed as such, and neither weigh in the piece nor are placed', async () => {
  const without = applyCommand(project, { kind: 'change-settings', settings: { spares: 'none' } });
  if (!without.ok) throw new Error('refused');
  const [now, before] = [understandProject(project), understandProject(without.value)];
  const spares = now.pieces[0]?.parts.filter(({ spare }) => spare !== undefined) ?? [];
  expect(spares.length).toBeGreaterThan(0);
  const counts = (groups: typeof now.groups) =>
    groups.flatMap(({ job }) => job.parts).reduce((sum, part) => sum + (part.count ?? 1), 0);
  expect(counts(now.groups) - counts(before.groups)).toBe(
    spares.reduce((sum, { quantity }) => sum + quantity, 0),
  );
  const planned = planGroups(now.groups, {
    ...{ solveLp: await loadGlpk(), clock: () => 0, work: 2000, seed: 1 },
  });
  const ids = spares.map(({ id }) => id);
  const placed = planned.flatMap(({ plan }) =>
    plan.layouts.flatMap((layout) => layout.placed.map(({ id }) => id)),
  );
  for (const id of ids) expect(placed).toContain(id);
  const shopping = listShopping(project, now, planned).find(({ item }) => item === 'Oak, sawn');
  for (const id of ids) expect(shopping?.use).toContain(id);
  const { header, rows } = listParts(project, now, planned);
  const spareRow = rows.find(([id]) => id === ids[0]);
  expect(spareRow?.[header.indexOf('notes')]).toMatch(/^Spare, to set up on: .* not fitted\.$/);
  const [piece, plain] = [now.pieces[0], before.pieces[0]];
  if (!piece || !plain) throw new Error('no piece');
  expect(figuresOf(piece, project.materials).mass).toBe(figuresOf(plain, project.materials).mass);
});
