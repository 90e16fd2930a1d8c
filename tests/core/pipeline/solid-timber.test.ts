import { expect, test } from 'vitest';

import { groupParts, listShopping, planGroups, understandProject } from '#core/pipeline';
import type { StockLine } from '#core/project';
import { loadGlpk } from '#solver/glpk';
import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

const solveLp = await loadGlpk();

const board = (
  id: string,
  size: readonly [number, number, number],
  price: number,
  more: Partial<StockLine> = {},
) => {
  const [length, width, thickness] = size;
  return makeStock(id, { ...{ material: 'oak', form: 'board', length, width, thickness, price }, ...more });
};

const oak = (id: string, size: readonly [number, number, number], quantity: number) =>
  makePart(id, size, { kind: 'solid', material: 'oak', quantity });

/** Oak in two thicknesses, three lengths and two widths to buy; one board with a knot lies in the rack. */
const rack = [
  board('mine', [1500, 200, 27], 0, {
    owned: true,
    count: 1,
    keepOut: [{ x: 700, y: 60, length: 80, width: 80 }],
  }),
  board('short', [2000, 150, 27], 18),
  board('long', [3000, 150, 27], 26),
  board('wide', [2000, 220, 27], 28),
  board('thick', [2000, 150, 52], 40),
];

const parts = [
  oak('A1', [640, 90, 24], 2),
  oak('A2', [980, 70, 24], 4),
  oak('A3', [460, 140, 24], 3),
  oak('A4', [900, 70, 45], 2),
];

const project = makeProject(rack);
const { groups, findings } = groupParts(project, [makePiece(parts)]);
const planned = planGroups(groups, { solveLp, clock: () => 0, work: 6000 });

test('solid parts go to boards of their thickness, ripped and crosscut with the grain, and all are cut', () => {
  expect(findings).toEqual([]);
  expect(groups.map(({ id }) => id)).toEqual(['oak-27', 'oak-52']);
  for (const { group, plan } of planned) {
    expect(plan.unplaced).toEqual([]);
    expect(group.form).toBe('board');
    // with the grain: none is turned
    expect(plan.layouts.every(({ placed }) => placed.every(({ turned }) => !turned))).toBe(true);
  }
  const [thin] = planned;
  // boards are wide enough for two strips side by side: some cut goes along
  const lows = thin?.plan.layouts.flatMap(({ placed }) => placed.map(({ y }) => y ?? 0)) ?? [];
  expect(new Set(lows.map(Math.round)).size).toBeGreaterThan(1);
});

test('the board in the rack is used first, around its knot', () => {
  const layout = planned[0]?.plan.layouts.find(({ stock }) => stock === 'mine');
  expect(layout?.placed.length).toBeGreaterThan(0);
  for (const { x, y = 0, length, width = 0 } of layout?.placed ?? []) {
    const isClear = x + length <= 700 || x >= 780 || y + width <= 60 || y >= 140;
    expect(isClear).toBe(true);
  }
});

test('the buying list names each length and width with its count and price, and what comes from the rack', () => {
  const lines = listShopping(project, understandProject(project), planned).filter(
    ({ kind }) => kind === 'board',
  );
  const cost = planned.reduce((sum, { plan }) => sum + plan.cost, 0);
  const paid = lines.reduce((sum, { count, each }) => sum + count * (each ?? 0), 0);
  expect(paid).toBeCloseTo(cost, 6);
  for (const line of lines) {
    const stock = rack.find(({ length, width, thickness }) =>
      line.size.startsWith(`${length} × ${width} × ${thickness}`),
    );
    expect(stock, line.size).toBeDefined();
    expect(line.from).toBe(stock?.owned ? 'from the rack' : 'to buy');
    expect(line.each).toBe(stock?.owned ? 0 : stock?.price);
  }
  expect(lines.some(({ from }) => from === 'from the rack')).toBe(true);
});
