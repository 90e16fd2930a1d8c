import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { goOnBranching, startBranching } from '../../../src/core/cutting/boards/branch-boards.ts';
import { loadGlpk } from '#solver/glpk';

const length = 60;

/** All parts tried on all boards, one after the other: slow and plain. */
function fits(parts: readonly number[], spaces: readonly number[]): boolean {
  const [part, ...rest] = parts;
  if (part === undefined) return true;
  return spaces.some(
    (space, i) =>
      space >= part &&
      spaces.indexOf(space) === i &&
      fits(
        rest,
        spaces.map((each, k) => (k === i ? each - part : each)),
      ),
  );
}

const job = fc.uniqueArray(fc.integer({ min: 9, max: 45 }), { minLength: 3, maxLength: 7 }).chain((lengths) =>
  fc.record({
    lengths: fc.constant(lengths),
    counts: fc.array(fc.integer({ min: 1, max: 2 }), {
      minLength: lengths.length,
      maxLength: lengths.length,
    }),
  }),
);

describe('whether all parts go into so many boards', () => {
  test('always: the answer is that of trying everything', () => {
    fc.assert(
      fc.property(job, ({ lengths, counts }) => {
        const parts = lengths.flatMap((each, i) => Array<number>(counts[i] ?? 1).fill(each));
        const sum = parts.reduce((all, each) => all + each, 0);
        const boards = Math.ceil(sum / length);
        const branching = startBranching({
          ...{ length, boards, lengths: Int32Array.from(lengths), demand: Float64Array.from(counts) },
          worths: Float64Array.from(lengths, (each) => each / length),
        });
        expect(branching).not.toBeNull();
        if (!branching) return;
        const verdict = goOnBranching(branching, 500, () => false);
        const possible = fits(
          [...parts].sort((a, b) => b - a),
          Array<number>(boards).fill(length),
        );
        if (branching.isLame) return;
        expect(verdict !== 'impossible').toBe(possible);
        if (typeof verdict === 'string') return;
        expect(verdict.length).toBeLessThanOrEqual(boards);
        const laid = verdict.flat().map((row) => lengths[row] ?? 0);
        expect(laid.sort((a, b) => a - b)).toEqual([...parts].sort((a, b) => a - b));
        for (const fill of verdict) {
          expect(fill.reduce((all, row) => all + (lengths[row] ?? 0), 0)).toBeLessThanOrEqual(length);
        }
      }),
      { numRuns: 300 },
    );
  });

  /** Optimum 10 where the relaxed program says 9.0: "BPP 02015007_0918" of the 53 at TU Dresden; log of Belov and Scheithauer, 2012. */
  test('a board more than the relaxed program says is proven to be needed', async () => {
    const lengths = [
      697, 679, 667, 643, 569, 520, 496, 492, 484, 442, 368, 351, 339, 335, 332, 331, 310, 213, 197, 190,
    ];
    const job: CuttingJob = {
      cuts: { style: 'length' },
      stock: [{ id: 'board', length: 1000, cost: 3 }],
      parts: lengths.map((each, i) => ({ id: `p${i}`, length: each })),
    };
    const plan = solveCutting(job, { solveLp: await loadGlpk(), clock: () => 0, work: 20_000, seed: 1 });
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: 30, bound: 30, proven: true });
  });
});
