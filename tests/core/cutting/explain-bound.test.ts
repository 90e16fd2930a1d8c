import { expect, test } from 'vitest';
import { checkPlan, explainBound } from '#core/cutting';
import type { BoundStory, CuttingJob, Saving } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';
import { planOf } from './solve.ts';

const solveLp = await loadGlpk();
const tools = { solveLp, clock: () => performance.now(), work: 300, seed: 1 };

function storyOf(job: CuttingJob): BoundStory {
  return explainBound(job, planOf(job), tools);
}

const sheet = { id: 'ply', length: 2440, width: 1220, cost: 60 };

/** What the workshop itself can change, with what it saves: other stock left aside. */
function changesOf(savings: readonly Saving[]) {
  return savings.filter(({ change }) => change !== 'stock').map(({ change, saves }) => [change, saves]);
}

test('long parts of which no two lie side by side need a sheet each, and the story names them', () => {
  const { reasons } = storyOf({
    kerf: 3,
    stock: [sheet],
    parts: [
      { id: 'side', length: 2300, width: 650, count: 3 },
      { id: 'shelf', length: 500, width: 200, count: 2 },
    ],
  });
  expect(reasons[0]).toBe(
    'No two of these 3 parts go on one piece of stock, however they lie: 3 × side (2300 × 650 mm). They alone need 3 sheets.',
  );
  expect(reasons.at(-1)).toBe('The plan takes 3 sheets: none can take less.');
});

test('the area is given with its numbers: parts of 2.55 sheets need three', () => {
  const { reasons } = storyOf({
    stock: [{ id: 's', length: 1000, width: 1000, cost: 5 }],
    parts: [{ id: 'p', length: 500, width: 300, count: 17 }],
  });
  // 17 x 0.15 m2 = 2.55 m2
  expect(reasons.join(' ')).toContain(
    'take 2.55 m²; one sheet gives 1.00 m² inside its trims: that is 2.55 of them, so that by area alone it wants at least 3 sheets.',
  );
});

test('where the area would do and the sizes do not, both are said', () => {
  // two side by side along the sheet, 2403 of 2440; across it only one, as 2 x 800 > 1220
  const { reasons } = storyOf({
    kerf: 3,
    stock: [sheet],
    parts: [{ id: 'p', length: 1200, width: 800, count: 3 }],
  });
  expect(reasons[0]).toMatch(/^However the parts are put together, they want at least 2 sheets:/);
  expect(reasons[0]).toContain('by area and single parts alone 1 sheet would do');
  // 3 x 1.203 x 0.803 = 2.90 m2 of 2.443 x 1.223 = 2.99 m2, a kerf counted with each
  expect(reasons[1]).toContain('take 2.90 m²');
  expect(reasons[1]).toContain('by area alone 1 sheet would do');
});

test('parts a hair larger than one sheet are not said to be one sheet', () => {
  // 4 x 1.223 x 0.613 = 2.9988 m2 of 2.444 x 1.224 = 2.9915 m2: 1.002 of them
  const { reasons } = storyOf({
    kerf: 4,
    stock: [sheet],
    parts: [{ id: 'p', length: 1219, width: 609, count: 4 }],
  });
  expect(reasons.join(' ')).toContain(
    'that is just over one of them, so that by area alone it wants at least 2 sheets',
  );
});

test('two strips that miss by 1.8 mm: a thinner blade or a part 1 mm narrower saves a sheet', () => {
  // 2 x 608.9 + 4 = 1221.8 > 1220; with 2.2 mm of kerf, or 1 mm less of each, they fit
  const job = {
    kerf: 4,
    stock: [sheet],
    parts: [{ id: 'door', length: 1200, width: 608.9, count: 4 }],
  };
  const { savings } = storyOf(job);
  expect(changesOf(savings)).toEqual([
    ['kerf', 60],
    ['narrower', 60],
  ]);
  expect(savings[0]?.message).toContain('With a kerf of 2.2 mm instead of 4 mm: costs 60 instead of 120');
  expect(savings[1]?.message).toContain('With door 1 mm narrower');
});

test('a part that would fit the rest of another sheet across the grain is found', () => {
  const { savings } = storyOf({
    stock: [{ id: 's', length: 1000, width: 600, cost: 10 }],
    parts: [
      { id: 'top', length: 1000, width: 350 },
      { id: 'rail', length: 240, width: 480 },
    ],
  });
  expect(savings).toMatchObject([
    { change: 'turn', part: 'rail', cost: 10, saves: 10 },
    { change: 'turn', cost: 10, saves: 10 },
  ]);
});

test('four parts 1250 long come out of one sheet of 2500 x 1250 and of two of 2440 x 1220', () => {
  const { savings } = storyOf({
    stock: [{ id: 'ply', length: 2440, width: 1220, cost: 60 }],
    parts: [{ id: 'side', length: 1250, width: 610, count: 4 }],
  });
  const other = savings.find(({ change }) => change === 'stock');
  // 60 x 2500 x 1250 / (2440 x 1220) = 62.99
  expect(other).toMatchObject({ cost: 62.99, saves: 57.01 });
  expect(other?.message).toContain('With stock of 2500 × 1250 mm as well, at 62.99 each');
});

test('costs are told in the money of the project, or in stock where no price is known', () => {
  const job = {
    kerf: 4,
    stock: [sheet, { ...sheet, id: 'small', length: 1250, cost: 35 }],
    parts: [{ id: 'door', length: 1200, width: 608.9, count: 3 }],
  };
  const money = explainBound(job, planOf(job), tools, { kind: 'money', currency: 'EUR' });
  // two of 1200 x 608.9 lie on no width of 1220: one door a strip, so a large sheet and a small one
  expect(money.reasons.at(-1)).toBe('The plan takes stock for 95.00 EUR: none can take less.');
  expect(money.savings[0]?.message).toMatch(/: costs \d+\.\d\d EUR instead of 95\.00 EUR/);
  const bare = { ...job, stock: job.stock.map(({ id, length, width }) => ({ id, length, width })) };
  const area = explainBound(bare, planOf(bare), tools, { kind: 'stock', unit: 'm²', scale: 1e-6 });
  // 2.44 x 1.22 + 1.25 x 1.22 = 4.5018 m2
  expect(area.reasons.at(-1)).toBe('The plan takes 4.5 m² of stock: none can take less.');
  expect(area.savings[0]?.message).toMatch(/: takes [\d.]+ m² instead of 4\.5 m²/);
});

test('a saving can be planned as it is told', () => {
  const job = {
    kerf: 3,
    trim: { left: 10, right: 10, bottom: 10, top: 10 },
    stock: [{ id: 's', length: 1000, width: 500, cost: 10 }],
    parts: [{ id: 'p', length: 330, width: 250, count: 6 }],
  };
  const { savings } = storyOf(job);
  expect(savings.length).toBeGreaterThan(0);
  for (const saving of savings) {
    const plan = planOf(saving.job);
    expect(checkPlan(saving.job, plan)).toEqual([]);
    expect(plan.cost).toBeLessThanOrEqual(saving.cost);
  }
});

test('a full sheet without a waste has no saving, and each change tried is listed', () => {
  const story = storyOf({
    stock: [{ id: 's', length: 1000, width: 500, cost: 10 }],
    parts: [{ id: 'p', length: 500, width: 500, count: 2 }],
  });
  expect(story.savings).toEqual([]);
  expect(story.without.length).toBeGreaterThan(0);
});

test('of four trimmed edges the one that costs the sheet is named', () => {
  // 2 x 610 = 1220 needs the whole width: 10 off the bottom is too much, the ends may well be trimmed
  const { savings } = storyOf({
    trim: { left: 10, right: 10, bottom: 10 },
    stock: [sheet],
    parts: [{ id: 'side', length: 2400, width: 610, count: 2 }],
  });
  const trims = savings.filter(({ change }) => change === 'trim');
  expect(trims.map(({ message }) => message.split(':')[0])).toEqual([
    'With the 10 mm off the bottom edge not trimmed',
    'With no edge trimmed',
  ]);
  expect(trims[0]).toMatchObject({ cost: 60, saves: 60 });
});

test('a limit of the saw that costs a dearer stock is named with its number', () => {
  // rips of 250 at most cannot halve the sheet of 600: two narrow ones for 16 then, instead of one for 10
  const { savings } = storyOf({
    cuts: { maxRip: 250 },
    stock: [
      { id: 'wide', length: 1000, width: 600, cost: 10 },
      { id: 'narrow', length: 1000, width: 300, cost: 8 },
    ],
    parts: [{ id: 'top', length: 1000, width: 300, count: 2 }],
  });
  const limit = savings.find(({ change }) => change === 'limit');
  expect(limit).toMatchObject({ cost: 10, saves: 6 });
  expect(limit?.message).toContain('With rips wider than 250 mm: costs 10 instead of 16');
});

test('what the bad spots of a stock cost is told', () => {
  const keepOut = [{ x: 480, y: 280, length: 40, width: 40 }];
  const { savings } = storyOf({
    stock: [
      { id: 'spotted', length: 1000, width: 600, cost: 10, keepOut },
      { id: 'clean', length: 1000, width: 600, cost: 20 },
    ],
    parts: [{ id: 'top', length: 1000, width: 300, count: 2 }],
  });
  const spot = savings.find(({ change }) => change === 'spot');
  expect(spot).toMatchObject({ cost: 10, saves: 10 });
  expect(spot?.message).toContain('With no bad spots in spotted');
});

test('one dimension speaks of lengths', () => {
  const { reasons, savings } = storyOf({
    kerf: 3,
    cuts: { style: 'length' },
    stock: [{ id: 'batten', length: 2400, cost: 4 }],
    parts: [{ id: 'post', length: 1200, count: 4 }],
  });
  expect(reasons[0]).toContain('4 × post (1200 mm). They alone need 4 lengths.');
  expect(changesOf(savings)).toEqual([['shorter', 8]]);
});

test('a refused job and a plan that left parts out have no story', () => {
  expect(storyOf({ stock: [sheet], parts: [{ id: 'p', length: 3000, width: 100 }] })).toEqual({
    reasons: [],
    savings: [],
    without: [],
  });
});

test('the time given is kept', () => {
  const parts = Array.from({ length: 25 }, (_, i) => ({
    id: `p${i}`,
    length: 211 + 37 * i,
    width: 113 + 17 * i,
    count: 2,
  }));
  const job = { kerf: 3.2, trim: { left: 5 }, stock: [sheet], parts };
  const plan = planOf(job);
  const start = performance.now();
  explainBound(job, plan, { solveLp, clock: () => performance.now(), seconds: 1 });
  expect(performance.now() - start).toBeLessThan(1700);
});

test('what keep-outs take is not counted as stock', () => {
  // 1000 x 1000 without a stripe of 200 is 0.8 m2; 9 x 0.09 m2 = 0.81 m2
  const { reasons } = storyOf({
    stock: [
      {
        ...{ id: 's', length: 1000, width: 1000, cost: 5 },
        keepOut: [
          { x: 0, y: 400, length: 1000, width: 150 },
          { x: 0, y: 500, length: 1000, width: 100 },
        ],
      },
    ],
    parts: [{ id: 'p', length: 300, width: 300, count: 9 }],
  });
  expect(reasons.join(' ')).toContain(
    'take 0.81 m²; one sheet gives 0.80 m² inside its trims, without its keep-outs: that is 1.01 of them, so that by area alone it wants at least 2 sheets.',
  );
});
