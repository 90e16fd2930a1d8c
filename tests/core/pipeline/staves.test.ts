import { expect, test } from 'vitest';
import {
  cutStockCommand,
  labelTexts,
  listParts,
  listShopping,
  makePlanFile,
  planGroups,
  understandProject,
} from '#core/pipeline';
import { applyCommand, newProject, type Project, type StockLine } from '#core/project';
import { loadGlpk } from '#solver/glpk';

const board = (more: Partial<StockLine>): StockLine => ({
  ...{ id: 'oak-27', material: 'oak', form: 'board', length: 1100, width: 160, thickness: 27 },
  ...{ count: null, price: 30 },
  ...more,
});

/** Two solid panels 900 × 300 × 20 alike, from boards that take two staves across and one along. */
const project: Project = {
  ...newProject('Staves'),
  materials: [{ id: 'oak', kind: 'solid', name: 'Oak, sawn', state: 'sawn', species: 'Oak, European' }],
  stock: [board({})],
  pieces: ['A', 'B'].map((letter) => ({
    ...{ kind: 'free-panel', id: letter.toLowerCase(), letter, name: `Panel ${letter}` },
    parameters: {
      ...{ corners: [0, 0, 900, 0, 900, 300, 0, 300], grain: 'across', gap: 0, thickness: 20 },
      materials: { panel: 'oak' },
    },
  })),
};

const tools = { solveLp: await loadGlpk(), clock: () => 0, work: 2000, seed: 1 };
const understanding = understandProject(project);
const planned = planGroups(understanding.groups, tools);

test('a panel wider than the boards is cut as its staves, bought as their boards and labelled stave by stave', () => {
  expect(understanding.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  // 300 + 6 + 2·2 = 310, three staves of 104: two do not fit a board of 160 trimmed, so a board a stave
  expect(understanding.groups.flatMap(({ job }) => job.parts)).toEqual([
    { id: 'A1', length: 925, width: 104, count: 3, turn: false },
    { id: 'B1', length: 925, width: 104, count: 3, turn: false },
  ]);
  const [line] = listShopping(project, understanding, planned);
  expect(line).toMatchObject({ item: 'Oak, sawn', count: 6, from: 'to buy' });
  const labels = labelTexts(project, understanding, planned);
  expect(labels.map(({ name }) => name)).toEqual(
    ['A', 'B'].flatMap(() => [1, 2, 3].map((n) => `Panel, stave ${n} of 3`)),
  );
  expect(new Set(labels.map(({ stock }) => stock)).size).toBe(6);
  const { header, rows } = listParts(project, understanding, planned);
  const cell = (name: string) => rows[0]?.[header.indexOf(name)];
  expect([cell('quantity'), cell('blanks each')]).toEqual([1, 3]);
  expect([cell('finished width mm'), cell('rough length mm'), cell('rough width mm')]).toEqual([
    300, 925, 104,
  ]);
  const file = makePlanFile(project, understanding, planned, { findings: [], routed: [] });
  expect(file.parts[0]).toMatchObject({ quantity: 1, staves: 3 });
});

test('staves already sawn are kept in mind: the panel is made when its last one is', () => {
  let now = project;
  const cut = () => {
    const known = understandProject(now);
    const [one] = planned;
    if (!one) throw new Error('nothing planned');
    const index = one.plan.layouts.findIndex(({ placed }) => placed.every(({ id }) => id === 'A1'));
    const command = cutStockCommand(now, known, { ...one, index });
    if (!command) throw new Error('no layout');
    const next = applyCommand(now, command);
    if (!next.ok) throw new Error('refused');
    now = next.value;
    const left = understandProject(now).groups.flatMap(({ job }) => job.parts);
    return {
      made: now.made?.find(({ part }) => part === 'A1'),
      left: left.find(({ id }) => id === 'A1')?.count,
    };
  };
  expect(cut()).toMatchObject({ made: { count: 0, staves: 1 }, left: 2 });
  expect(cut()).toMatchObject({ made: { count: 0, staves: 2 }, left: 1 });
  const last = cut();
  expect(last.made?.count).toBe(1);
  expect(last.made?.staves).toBeUndefined();
  expect(last.left).toBeUndefined();
  expect(understandProject(now).findings.filter(({ code }) => code.startsWith('made'))).toEqual([]);
});

test('another board on the rack makes other staves at once, the same as afresh', () => {
  const wider = { ...project, stock: [board({ width: 330 })] };
  const before = { project, understanding };
  expect(understandProject(wider, before)).toEqual(understandProject(wider));
  const narrow = { ...project, stock: [board({ width: 90 })] };
  expect(understandProject(narrow, before).pieces[0]?.parts[0]?.staves?.count).toBe(4);
});

test('leaves of a book match are sawn as blanks for two, and each is labelled with the board it comes from', () => {
  const [piece] = project.pieces;
  if (piece?.kind !== 'free-panel') throw new Error('another kind');
  const book: Project = {
    ...project,
    pieces: [{ ...piece, parameters: { ...piece.parameters, thickness: 9, match: 'book' } }],
  };
  const known = understandProject(book);
  // 300 + 6 + 2·3 = 312, four leaves of 78 out of two blanks
  expect(known.groups.flatMap(({ job }) => job.parts)).toEqual([
    { id: 'A1', length: 925, width: 78, count: 2, turn: false },
  ]);
  const plans = planGroups(known.groups, tools);
  const [first] = plans;
  if (!first) throw new Error('nothing planned');
  const labels = labelTexts(book, known, plans);
  expect(labels.map(({ name }) => name)).toEqual([1, 2, 3, 4].map((n) => `Panel, stave ${n} of 4`));
  expect(labels[0]?.stock).toBe(labels[1]?.stock);
  const command = cutStockCommand(book, known, { ...first, index: 0 });
  expect(command?.made).toMatchObject([{ part: 'A1' }]);
  const next = command && applyCommand(book, command);
  if (!next?.ok) throw new Error('refused');
  const placed = first.plan.layouts[0]?.placed.length ?? 0;
  const left = understandProject(next.value).groups.flatMap(({ job }) => job.parts);
  expect(left.reduce((sum, { count = 1 }) => sum + count, 0)).toBe(2 - placed);
});
