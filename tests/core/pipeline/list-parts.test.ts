import { expect, test } from 'vitest';

import { groupParts, listParts } from '#core/pipeline';

import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

test('the blank of a part sawn off a batten has the section of the batten, not more than there is', () => {
  const batten = {
    material: 'oak',
    form: 'batten',
    length: 2100,
    width: 45,
    thickness: 12,
    price: 9,
  } as const;
  const project = makeProject([makeStock('batten', batten)]);
  const finished = { length: 1811.5, width: 45, thickness: 12 };
  const cover = makePart('A8', [1832, 49, 12], {
    kind: 'solid',
    material: 'oak-planed',
    finished,
    cut: finished,
  });
  const planed = { id: 'oak-planed', kind: 'solid', name: 'Oak, planed', state: 'planed' } as const;
  const own = {
    ...project,
    materials: [...project.materials, planed],
    stock: [makeStock('batten', { ...batten, material: 'oak-planed' })],
  };
  const pieces = [makePiece([cover])];
  const { groups, findings } = groupParts(own, pieces);
  expect(groups.map((group) => group.form)).toEqual(['batten']);
  const { header, rows } = listParts(
    own,
    { shapes: [], pieces, groups, routing: [], fits: [], findings },
    [],
  );
  const rough = header.flatMap((name, index) => (name.startsWith('rough') ? [rows[0]?.[index]] : []));
  expect(rough).toEqual([1832, 45, 12]);
});
