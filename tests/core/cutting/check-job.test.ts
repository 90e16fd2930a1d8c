import { expect, test } from 'vitest';
import { checkJob } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';

const sound: CuttingJob = {
  kerf: 3,
  stock: [{ id: 'ply', length: 2440, width: 1220, cost: 78 }],
  parts: [{ id: 'A1', length: 700, width: 300 }],
};
const stock = sound.stock[0] as CuttingJob['stock'][number];
const part = sound.parts[0] as CuttingJob['parts'][number];

test('a sound job has no findings, even when a part fits no stock or the kerf is wider than a part', () => {
  expect(checkJob(sound)).toEqual([]);
  expect(checkJob({ ...sound, kerf: 400 })).toEqual([]);
  expect(checkJob({ ...sound, parts: [{ ...part, length: 9000 }] })).toEqual([]);
});

const wrong: readonly (readonly [what: string, about: string, job: CuttingJob])[] = [
  ['a negative kerf', 'kerf', { ...sound, kerf: -1 }],
  ['a kerf that is no number', 'kerf', { ...sound, kerf: NaN }],
  ['a negative trim', 'trim.left', { ...sound, trim: { left: -5 } }],
  ['trims that leave nothing', 'stock[0]', { ...sound, trim: { bottom: 700, top: 700 } }],
  ['no stock', 'stock', { ...sound, stock: [] }],
  ['no parts', 'parts', { ...sound, parts: [] }],
  ['a part of no length', 'parts[0].length', { ...sound, parts: [{ ...part, length: 0 }] }],
  ['a part finer than the grid', 'parts[0].length', { ...sound, parts: [{ ...part, length: 1e-9 }] }],
  ['a part of endless length', 'parts[0].length', { ...sound, parts: [{ ...part, length: Infinity }] }],
  ['a part without a width', 'parts[0].width', { ...sound, parts: [{ id: 'A1', length: 700 }] }],
  ['half a part', 'parts[0].count', { ...sound, parts: [{ ...part, count: 1.5 }] }],
  ['a huge stock', 'stock[0].width', { ...sound, stock: [{ ...stock, width: 1e9 }] }],
  ['a negative cost', 'stock[0].cost', { ...sound, stock: [{ ...stock, cost: -1 }] }],
  ['two parts of one name', 'parts[1].id', { ...sound, parts: [part, part] }],
  [
    'a keep-out without size',
    'stock[0].keepOut[0]',
    { ...sound, stock: [{ ...stock, keepOut: [{ x: 0, y: 0, length: 0, width: 5 }] }] },
  ],
  ['no stage at all', 'cuts.maxStages', { ...sound, cuts: { maxStages: 0 } }],
  ['a rip of nothing', 'cuts.maxRip', { ...sound, cuts: { maxRip: 0 } }],
];

test.each(wrong)('%s is one sentence about %s, with what to do', (_, about, job) => {
  const problems = checkJob(job);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ severity: 'stop', about });
  expect(problems[0]?.message).toMatch(/\.$/);
  expect(problems[0]?.remedy).toMatch(/\.$/);
});

test('in one dimension no width is asked for', () => {
  expect(
    checkJob({
      cuts: { style: 'length' },
      stock: [{ id: 's', length: 100 }],
      parts: [{ id: 'p', length: 5 }],
    }),
  ).toEqual([]);
});

test('30000 parts in all are planned at once; more are refused with their number and the way out', () => {
  const lots = (count: number): CuttingJob => ({
    ...sound,
    parts: [
      { ...part, count },
      { ...part, id: 'A2', count: 20_000 },
    ],
  });
  expect(checkJob(lots(10_000))).toEqual([]);
  const [finding, ...more] = checkJob(lots(130_001));
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ severity: 'stop', code: 'job-wrong', about: 'parts' });
  expect(finding?.message).toContain('150001 parts');
  expect(finding?.remedy).toContain('Split the job into 6,');
});
