import { expect, test } from 'vitest';

import { checkPlan, type CuttingJob } from '#core/cutting';
import { checkNest } from '#core/nesting';
import {
  cutStockCommand,
  describeUnpriced,
  groupParts,
  listShopping,
  measureCost,
  planGroups,
  sayCost,
  saySum,
  sumShopping,
  sumStock,
  summarise,
  tableOfShopping,
  understandProject,
} from '#core/pipeline';
import { applyCommand, type Project, type StockLine } from '#core/project';
import { loadGlpk } from '#solver/glpk';
import { solveNesting } from '#core/nesting';
import { makeFront, makePart, makePiece, makeProject, makeStock } from './made-up.ts';

const solveLp = await loadGlpk();
const tools = { solveLp, clock: () => 0, work: 3000 };

/** A line to be bought whose price nobody has asked for yet. */
function unpriced(id: string, more: Partial<StockLine> = {}): StockLine {
  const { price, ...line } = makeStock(id, more);
  expect(price).toBe(60);
  return line;
}

const big = unpriced('big', { length: 2500, width: 1250 });
const priced = makeStock('priced');
const offcut = makeStock('offcut', { form: 'offcut', length: 800, width: 400, owned: true, price: 0 });
const parts = [makePart('A1', [1150, 590, 9], { quantity: 4 })];

function planOf(stock: readonly StockLine[]) {
  const project = makeProject(stock);
  const { groups } = groupParts(project, [makePiece(parts)]);
  return { project, planned: planGroups(groups, tools) };
}

test('a price not known is no cost in the job, an offcut that is owned stays at 0', () => {
  const { planned } = planOf([big, priced, offcut]);
  expect(planned[0]?.group.job.stock.map(({ id, cost }) => [id, cost])).toEqual([
    ['big', undefined],
    ['priced', 60],
    ['offcut', 0],
  ]);
});

test('a sheet to be bought is never free for want of a price: beside an offcut at 0 its area counts', () => {
  const { planned, project } = planOf([big, offcut]);
  const [{ group, plan } = expect.fail()] = planned;
  expect(checkPlan(group.job, plan)).toEqual([]);
  expect(plan.stockUsed).toEqual([{ id: 'big', count: 1 }]);
  // 2500 x 1250 mm by hand
  expect(plan.cost).toBe(3_125_000);
  const measure = measureCost(project, group.job);
  expect(sayCost(plan.cost, measure)).toBe('3.13 m² to buy');
  expect(describeUnpriced(project, measure)).toContain('No price is known');
  // 3.125 / 0.3048²
  expect(sayCost(plan.cost, measureCost({ ...project, units: 'inch' }, group.job))).toBe('33.64 ft² to buy');
});

test('the same holds on the router', () => {
  const job = {
    gap: 8,
    stock: [
      { id: 'mine', length: 300, width: 300, cost: 0, count: 1 },
      { id: 'bought', length: 1000, width: 500 },
    ],
    parts: [
      {
        id: 'p',
        outline: [
          [0, 0],
          [400, 0],
          [400, 300],
          [0, 300],
        ] as [number, number][],
      },
    ],
  };
  const plan = solveNesting(job, { clock: () => 0, work: 500, seed: 1 });
  expect(plan.cost).toBe(500_000);
  expect(checkNest(job, plan)).toEqual([]);
  expect(checkNest(job, { ...plan, cost: 0, bound: 0 }).map(({ code }) => code)).toContain('nest-cost');
});

test('a checker refuses a plan that takes unpriced stock as free beside stock at 0', () => {
  const { planned } = planOf([big, offcut]);
  const [{ group, plan } = expect.fail()] = planned;
  const free = { ...plan, cost: 0, bound: 0 };
  expect(checkPlan(group.job, free).map(({ code }) => code)).toContain('plan-cost');
});

test('beside a priced sheet the unpriced one is reckoned at its rate by area, so the smaller is cheaper', () => {
  const { project, planned } = planOf([big, priced]);
  const [{ group, plan } = expect.fail()] = planned;
  expect(plan.stockUsed).toEqual([{ id: 'priced', count: 1 }]);
  const measure = measureCost(project, group.job);
  expect(sayCost(plan.cost, measure)).toBe('60.00 EUR');
  expect(describeUnpriced(project, measure)).toBe(
    'Birch plywood 9, sheet 2500 × 1250 has no price: it is reckoned at the dearest rate of the others for its size.',
  );
});

test('battens without a price are told by their length', () => {
  const deal = { material: 'deal', form: 'batten', length: 2400, width: 44, thickness: 20 } as const;
  const project = makeProject([unpriced('deal', deal)]);
  const part = makePart('A1', [900, 44, 20], { kind: 'solid', material: 'deal', quantity: 3 });
  const [{ group, plan } = expect.fail()] = planGroups(
    groupParts(project, [makePiece([part])]).groups,
    tools,
  );
  // two battens of 2.4 m
  expect(sayCost(plan.cost, measureCost(project, group.job))).toBe('4.8 m to buy');
});

test('where nothing is bought, costs are the worth of the rack, or its area where some of it has no price', () => {
  const mine = makeStock('mine', { owned: true, count: 2, price: 40 });
  const worth = planOf([mine]);
  const [first = expect.fail()] = worth.planned;
  expect(sayCost(first.plan.cost, measureCost(worth.project, first.group.job))).toBe(
    '40.00 EUR in worth of the rack',
  );
  const { price, ...bare } = mine;
  expect(price).toBe(40);
  const area = planOf([bare]);
  const [second = expect.fail()] = area.planned;
  expect(sayCost(second.plan.cost, measureCost(area.project, second.group.job))).toBe('2.98 m² of the rack');
});

test('sums say what is known and how many things have no price', () => {
  const { project } = planOf([big, priced, offcut]);
  const used = (...ids: readonly string[]) => [{ stockUsed: ids.map((id) => ({ id, count: 2 })) }];
  const words = (...ids: readonly string[]) => saySum(sumStock(project, used(...ids)), 'EUR');
  expect(words('priced', 'offcut')).toBe('120.00 EUR');
  expect(words('priced', 'big')).toBe('120.00 EUR and 1 thing without a price');
  expect(words('big', 'offcut')).toBe('no price known');
});

function papersOf(project: Project) {
  const understanding = understandProject(project);
  const planned = planGroups(understanding.groups, tools);
  const lines = listShopping(project, understanding, planned);
  const summary = summarise(project, understanding, planned, {
    findings: understanding.findings,
    withheld: [],
    routed: [],
  });
  return { understanding, planned, lines, summary, rows: tableOfShopping(project, lines).rows };
}

test('summary and shopping list say that no price is known, and never 0.00', () => {
  const { lines, rows, summary } = papersOf(makeFront('ply', {}));
  const line = lines.find(({ kind }) => kind === 'sheet');
  expect(line?.each).toBeNull();
  const row = rows.find(([kind]) => kind === 'sheet');
  expect(row?.slice(5, 7)).toEqual(['no price known', '']);
  expect(summary).toContain('1 × Ply, sheet 2440 × 1220, no price known');
  expect(summary).toContain('Proven: no plan takes less than 2.98 m² to buy. No price is known');
  const boards = lines.filter(({ kind }) => kind === 'board').reduce((sum, each) => sum + each.count, 0);
  expect(summary).toContain(
    `Sheets, boards and battens  ${(30 * boards).toFixed(2)} EUR and 1 thing without a price`,
  );
  expect(summary).not.toMatch(/(^|\D)0\.00 EUR/);
  expect(sumShopping(lines).total).toBe(30 * boards);
});

test('a price of 0 for what is bought is free, and a note says so; none for a price not known', () => {
  const codes = (project: Project) => understandProject(project).findings.map(({ code }) => code);
  expect(codes(makeFront('ply', { price: 0 }))).toContain('stock-for-nothing');
  expect(codes(makeFront('ply', {}))).not.toContain('stock-for-nothing');
  expect(codes(makeFront('ply', { price: 0, owned: true, count: 3 }))).not.toContain('stock-for-nothing');
});

test('a plan that was chosen goes on when a sheet without a price has been sawn', () => {
  const base = makeFront('ply', { length: 480, width: 480 });
  const first = papersOf(base);
  const [planned = expect.fail()] = first.planned.filter(({ group }) => group.material === 'ply');
  expect(planned.plan.layouts.reduce((sum, { times }) => sum + times, 0)).toBeGreaterThan(1);
  const job: CuttingJob = planned.group.job;
  const sawn = { group: { ...planned.group, taken: planned.plan }, plan: planned.plan, index: 0 };
  const command = cutStockCommand(base, first.understanding, sawn);
  expect(command?.taken).toHaveLength(1);
  expect(command?.taken?.[0]?.plan.cost).toBeCloseTo(planned.plan.cost - 480 * 480, 6);
  expect(job.stock[0]?.cost).toBeUndefined();
  const next = command && applyCommand(base, command);
  expect(next?.ok).toBe(true);
});
