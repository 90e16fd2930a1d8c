import fc from 'fast-check';
import type { CuttingJob } from '#core/cutting';

const size = (lo: number, hi: number) => fc.integer({ min: lo, max: hi });
const tenths = (lo: number, hi: number) => fc.integer({ min: lo * 10, max: hi * 10 }).map((n) => n / 10);

const stock = fc.record({
  length: size(400, 2500),
  width: size(250, 1300),
  cost: fc.option(size(1, 100), { nil: undefined }),
  count: fc.option(size(0, 5), { nil: null, freq: 3 }),
  keepOut: fc.array(
    fc.record({ x: size(0, 900), y: size(0, 500), length: size(5, 200), width: size(5, 150) }),
    { maxLength: 2 },
  ),
});

const part = fc.record({
  length: fc.oneof(size(30, 1500), tenths(30, 400)),
  width: fc.oneof(size(30, 700), tenths(30, 300)),
  count: size(1, 4),
  turn: fc.boolean(),
});

const cuts = fc.record({
  style: fc.constantFrom('guillotine', 'guillotine', 'guillotine', 'free', 'length') as fc.Arbitrary<
    'guillotine' | 'free' | 'length'
  >,
  maxStages: fc.constantFrom(null, null, 1, 2, 3),
  exact: fc.boolean(),
  firstCut: fc.constantFrom('either', 'along', 'across') as fc.Arbitrary<'either' | 'along' | 'across'>,
  maxRip: fc.constantFrom(null, null, 600, 300),
  maxCut: fc.constantFrom(null, null, 1250),
});

/** Jobs with all that a job can ask for; some parts may fit nowhere. */
export const randomJob: fc.Arbitrary<CuttingJob> = fc
  .record({
    kerf: fc.constantFrom(0, 3, 3.2, 0.125),
    trim: fc.record({ left: size(0, 15), right: size(0, 15), bottom: size(0, 15), top: size(0, 15) }),
    cuts,
    stock: fc.array(stock, { minLength: 1, maxLength: 3 }),
    parts: fc.array(part, { minLength: 1, maxLength: 9 }),
    keepLeftover: fc.option(fc.constant({ minLength: 200, minWidth: 80 }), { nil: undefined }),
  })
  .map((job) => ({
    ...job,
    stock: job.stock.map((each, i) => ({ id: `s${i}`, ...each })),
    parts: job.parts.map((each, i) => ({ id: `p${i}`, ...each })),
  }));

/** Plain jobs on whole millimetres of one sheet size: nothing but parts, kerf and trim. All parts fit. */
export const plainJob: fc.Arbitrary<CuttingJob> = fc
  .record({
    length: size(60, 120),
    width: size(40, 90),
    parts: fc.array(
      fc.record({ length: size(8, 60), width: size(8, 40), count: size(1, 3), turn: fc.boolean() }),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
  })
  .map(({ length, width, parts }) => ({
    stock: [{ id: 'sheet', length, width, cost: 10, count: null }],
    parts: parts.map((each, i) => ({ id: `p${i}`, ...each })),
  }));
