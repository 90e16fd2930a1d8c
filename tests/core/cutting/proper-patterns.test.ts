import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tightBound } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { layOutCounts } from '../../../src/core/cutting/count-words.ts';
import { findPositions } from '../../../src/core/cutting/positions.ts';
import { valuePlates } from '../../../src/core/cutting/plate-values.ts';
import { fillProperly } from '../../../src/core/cutting/proper-labels.ts';
import { planOf } from './solve.ts';

interface Part {
  readonly length: number;
  readonly width: number;
  readonly value: number;
  readonly count: number;
}

const side = fc.integer({ min: 1, max: 6 });
const part = fc.record({
  length: side,
  width: side,
  value: fc.integer({ min: 1, max: 20 }),
  count: fc.integer({ min: 1, max: 2 }),
});
const parts = fc.array(part, { minLength: 1, maxLength: 4 });

/** The most valuable guillotine filling that holds no part more often than it is counted, by trying everything. */
function bestByTrying(all: readonly Part[], length: number, width: number): number {
  const known = new Map<string, number>();
  const best = (x: number, y: number, counts: readonly number[]): number => {
    const key = `${x} ${y} ${counts.join()}`;
    const old = known.get(key);
    if (old !== undefined) return old;
    let most = 0;
    all.forEach((each, k) => {
      if ((counts[k] ?? 0) > 0 && each.length <= x && each.width <= y) most = Math.max(most, each.value);
    });
    for (const low of sharesOf(counts)) {
      const high = counts.map((count, k) => count - (low[k] ?? 0));
      for (let at = 1; at < x; at++) most = Math.max(most, best(at, y, low) + best(x - at, y, high));
      for (let at = 1; at < y; at++) most = Math.max(most, best(x, at, low) + best(x, y - at, high));
    }
    known.set(key, most);
    return most;
  };
  return best(
    length,
    width,
    all.map(({ count }) => count),
  );
}

/** Every way to hand some of the counts to one of two. */
function sharesOf(counts: readonly number[]): readonly (readonly number[])[] {
  return counts.reduce<readonly (readonly number[])[]>(
    (shares, count) => shares.flatMap((share) => [...Array(count + 1).keys()].map((n) => [...share, n])),
    [[]],
  );
}

function fill(all: readonly Part[], length: number, width: number, limits: readonly number[], least: number) {
  const freely = (sizes: readonly number[]) => sizes.map((size) => ({ size, count: Infinity }));
  const plates = valuePlates(
    findPositions(freely(all.map((each) => each.length)), length),
    findPositions(freely(all.map((each) => each.width)), width),
    all.map((each, kind) => ({ ...each, kind, turned: false })),
  );
  return fillProperly({ plates, length, width, least, limits, work: Infinity });
}

test('always: with all parts counted the best filling is that of trying everything', () => {
  fc.assert(
    fc.property(parts, side, side, (all, length, width) => {
      const best = bestByTrying(all, length, width);
      const limits = all.map(({ count }) => count);
      const found = fill(all, length, width, limits, 1e-9) ?? [];
      expect(found[0]?.value ?? 0).toBe(best);
      for (const { value, kinds, counts } of found) {
        expect(kinds.reduce((sum, kind, k) => sum + (all[kind]?.value ?? 0) * (counts[k] ?? 0), 0)).toBe(
          value,
        );
        kinds.forEach((kind, k) => expect(counts[k]).toBeLessThanOrEqual(all[kind]?.count ?? 0));
      }
      // looked for from the top down, nothing at all means that nothing is worth so much
      expect(fill(all, length, width, limits, best + 0.5)).toEqual([]);
      if (best > 0) expect(fill(all, length, width, limits, best)?.[0]?.value).toBe(best);
    }),
    { numRuns: 150 },
  );
});

test('always: parts that are not counted are taken as often as they fit', () => {
  fc.assert(
    fc.property(parts, side, side, (all, length, width) => {
      const enough = all.map((each) => ({ ...each, count: 3 }));
      const free =
        fill(
          all,
          length,
          width,
          all.map(() => 0),
          1e-9,
        ) ?? [];
      expect(free.length).toBeLessThanOrEqual(1);
      const few = (free[0]?.counts ?? []).every((count) => count <= 3);
      fc.pre(few && all.length <= 2);
      expect(free[0]?.value ?? 0).toBe(bestByTrying(enough, length, width));
    }),
    { numRuns: 60 },
  );
});

test('a search for fillings ends when it is too much work', () => {
  const all = Array.from({ length: 8 }, (_, k) => ({
    length: 1 + (k % 3),
    width: 1 + (k % 4),
    value: 5 + k,
    count: 1,
  }));
  const limits = all.map(() => 1);
  const sides = findPositions([{ size: 1, count: 12 }], 12);
  const plates = valuePlates(
    sides,
    sides,
    all.map((each, kind) => ({ ...each, kind, turned: false })),
  );
  const wish = { plates, length: 12, width: 12, least: 1, limits };
  expect(fillProperly({ ...wish, work: 100 })).toBeNull();
});

test('always: counts in words add up, and one beyond a limit shows', () => {
  const tally = fc.array(
    fc.record({ limit: fc.integer({ min: 0, max: 40 }), a: fc.nat(40), b: fc.nat(40) }),
    {
      minLength: 1,
      maxLength: 30,
    },
  );
  fc.assert(
    fc.property(tally, (kinds) => {
      const words = layOutCounts(kinds.map(({ limit }) => limit));
      const spread = (pick: (kind: { limit: number; a: number; b: number }) => number) =>
        Array.from({ length: words.words }, (_, w) =>
          kinds.reduce(
            (sum, kind, k) => sum + Math.min(pick(kind), kind.limit) * (words.ones[k * words.words + w] ?? 0),
            0,
          ),
        );
      const [first, second] = [spread(({ a }) => a), spread(({ b }) => b)];
      const isBeyond = first.some(
        (word, w) => ((word + (second[w] ?? 0) + (words.spare[w] ?? 0)) & (words.guards[w] ?? 0)) !== 0,
      );
      const counted = kinds.filter(({ limit }) => limit > 0);
      expect(isBeyond).toBe(
        counted.some(({ limit, a, b }) => Math.min(a, limit) + Math.min(b, limit) > limit),
      );
    }),
  );
});

test('a part wanted once that would fill what is left of the sheets twice is counted once', () => {
  const job: CuttingJob = {
    stock: [{ id: 'sheet', length: 6, width: 7, cost: 1 }],
    parts: [
      { id: 'a', length: 4, width: 3, count: 2 },
      { id: 'b', length: 2, width: 5, count: 2 },
      { id: 'c', length: 5, width: 4, count: 1 },
    ],
  };
  expect(tightBound(job, [30])).toBe(planOf(job, { work: 2000 }).cost);
});
