import { describe, expect, test } from 'vitest';
import { checkNestJob, solveNesting } from '#core/nesting';
import type { NestJob } from '#core/nesting';
import { rectangle } from './examples.ts';

const good: NestJob = {
  gap: 8,
  margin: 10,
  stock: [{ id: 's', length: 2440, width: 1220, cost: 78, count: null }],
  parts: [rectangle('a', 400, 300)],
};
const part = (change: object): Partial<NestJob> => ({ parts: [{ ...rectangle('a', 400, 300), ...change }] });
const stock = (change: object): Partial<NestJob> => ({
  stock: [{ ...good.stock[0], ...change } as NestJob['stock'][number]],
});

describe('a senseless job', () => {
  test('is told from a good one', () => {
    expect(checkNestJob(good)).toEqual([]);
  });

  test.each<readonly [string, Partial<NestJob>, string, string]>([
    ['negative gap', { gap: -1 }, 'gap', '-1'],
    ['gap that is no number', { gap: NaN }, 'gap', 'NaN'],
    ['enormous margin', { margin: 1e9 }, 'margin', '1000000000'],
    ['margin that leaves nothing', { margin: 610 }, 'stock[0]', '610 mm'],
    ['no stock', { stock: [] }, 'stock', 'no stock'],
    ['no parts', { parts: [] }, 'parts', 'no parts'],
    ['strip among sheets', { stock: [...good.stock, { strip: 100 }] }, 'stock', 'only stock'],
    ['strip without width', { stock: [{ strip: 0 }] }, 'stock[0].strip', 'is 0'],
    ['sheet without length', stock({ length: 0 }), 'stock[0].length', 'is 0'],
    ['sheet of 1e9', stock({ width: 1e9 }), 'stock[0].width', '1000000000'],
    ['negative price', stock({ cost: -1 }), 'stock[0].cost', '-1'],
    ['half a sheet', stock({ count: 1.5 }), 'stock[0].count', '1.5'],
    [
      'keep-out without size',
      stock({ keepOut: [{ x: 0, y: 0, length: 0, width: 5 }] }),
      'stock[0].keepOut[0]',
      '"length":0',
    ],
    ['one name twice', { parts: [rectangle('a', 1, 1), rectangle('a', 2, 2)] }, 'parts[1].id', '"a"'],
    [
      'corner that is no number',
      part({
        outline: [
          [0, 0],
          [NaN, 0],
          [0, 9],
        ],
      }),
      'parts[0].outline[1]',
      'NaN',
    ],
    [
      'corner at 1e9',
      part({
        outline: [
          [0, 0],
          [1e9, 0],
          [0, 9],
        ],
      }),
      'parts[0].outline[1]',
      '1000000000',
    ],
    [
      'two corners',
      part({
        outline: [
          [0, 0],
          [5, 0],
        ],
      }),
      'parts[0].outline',
      'encloses nothing',
    ],
    [
      'no area',
      part({
        outline: [
          [0, 0],
          [5, 0],
          [9, 0],
        ],
      }),
      'parts[0].outline',
      'encloses nothing',
    ],
    [
      'outline that crosses itself',
      part({
        outline: [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 5],
        ],
      }),
      'parts[0].outline',
      'crosses',
    ],
    [
      'outline that folds back',
      part({
        outline: [
          [0, 0],
          [9, 0],
          [9, 9],
          [9, 4],
          [0, 4],
        ],
      }),
      'parts[0].outline',
      'touches itself',
    ],
    [
      'hole outside',
      part({
        holes: [
          [
            [500, 0],
            [510, 0],
            [510, 9],
          ],
        ],
      }),
      'parts[0].holes[0]',
      'does not lie inside',
    ],
    [
      'hole over the edge',
      part({
        holes: [
          [
            [390, 10],
            [410, 10],
            [410, 20],
          ],
        ],
      }),
      'parts[0].holes[0]',
      'does not lie inside',
    ],
    [
      'two holes in one place',
      part({
        holes: [
          [
            [10, 10],
            [50, 10],
            [50, 50],
          ],
          [
            [30, 15],
            [60, 15],
            [60, 50],
          ],
        ],
      }),
      'parts[0].holes[1]',
      'meets another hole',
    ],
    ['no angle', part({ angles: [] }), 'parts[0].angles', '0 angles'],
    ['angle that is no number', part({ angles: [0, Infinity] }), 'parts[0].angles', 'number of degrees'],
    ['half a part', part({ count: 0.5 }), 'parts[0].count', '0.5'],
    ['ten thousand parts', part({ count: 10_000 }), 'parts', '10000'],
  ])('%s is refused in a sentence with its place', (_, change, about, words) => {
    const job = { ...good, ...change };
    const [fault] = checkNestJob(job);
    expect(fault).toMatchObject({ severity: 'stop', code: 'job-wrong', about });
    expect(fault?.message).toContain(words);
    expect(fault?.remedy).toMatch(/\.$/);
    const plan = solveNesting(job, { clock: () => 0, work: 1 });
    expect(plan.placements).toEqual([]);
    expect(plan.findings[0]).toEqual(fault);
  });

  test('a count of nothing is no fault, and a closing corner neither', () => {
    const closed = [
      [0, 0],
      [9, 0],
      [0, 9],
      [0, 0],
    ] as const;
    expect(checkNestJob({ ...good, parts: [{ id: 'a', outline: closed, count: 0 }] })).toEqual([]);
  });
});
