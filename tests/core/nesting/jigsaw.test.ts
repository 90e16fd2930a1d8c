import { describe, expect, it } from 'vitest';
import { checkNest, solveNesting } from '#core/nesting';
import type { Corner, NestJob } from '#core/nesting';
import { makeRandom } from '#core/numerics';
import type { Random } from '#core/numerics';

// The source of these checks is how the jobs are made: sheets cut up without loss need as many sheets again.

type Piece = readonly Corner[];

/** A convex piece cut in two from a place on one side to a place on another. */
function cutInTwo(piece: Piece, random: Random): readonly [Piece, Piece] {
  const n = piece.length;
  const a = random.whole(0, n - 1);
  const b = (a + random.whole(1, n - 1)) % n;
  const [first, second] = [Math.min(a, b), Math.max(a, b)];
  const on = (side: number): Corner => {
    const [x, y] = piece[side]!;
    const [u, v] = piece[(side + 1) % n]!;
    const share = 0.25 + 0.5 * random.next();
    return [x + share * (u - x), y + share * (v - y)];
  };
  const [p, q] = [on(first), on(second)];
  return [
    [p, ...piece.slice(first + 1, second + 1), q],
    [q, ...piece.slice(second + 1), ...piece.slice(0, first + 1), p],
  ];
}

function areaOf(piece: Piece): number {
  const next = (i: number) => piece[(i + 1) % piece.length]!;
  return piece.reduce((sum, [x, y], i) => sum + (x * next(i)[1] - next(i)[0] * y) / 2, 0);
}

/** Sheets cut into so many pieces each, the largest piece always next. */
function makeJigsaw(seed: number, sheets: number, pieces: number): NestJob {
  const random = makeRandom(seed);
  const all: Piece[] = [];
  for (let sheet = 0; sheet < sheets; sheet++) {
    let cut: Piece[] = [
      [
        [0, 0],
        [2440, 0],
        [2440, 1220],
        [0, 1220],
      ],
    ];
    while (cut.length < pieces) {
      const largest = cut.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a));
      cut = [...cut.filter((piece) => piece !== largest), ...cutInTwo(largest, random)];
    }
    all.push(...cut);
  }
  all.sort((a, b) => areaOf(a) - areaOf(b));
  return {
    stock: [{ id: 'ply', length: 2440, width: 1220, cost: 1 }],
    parts: all.map((outline, i) => ({ id: `piece ${i}`, outline })),
  };
}

describe('Sheets cut up without loss', () => {
  for (const seed of [1, 2, 3, 4])
    it(`two sheets cut into 20 pieces fill two sheets again (${seed})`, () => {
      const job = makeJigsaw(seed, 2, 10);
      const plan = solveNesting(job, { clock: () => 0, work: 1500 });
      expect(checkNest(job, plan)).toEqual([]);
      expect(plan.cost).toBe(2);
      expect(plan.proven).toBe(true);
    });

  it('pieces that may be turned by quarters fill their sheet again', () => {
    const { stock, parts } = makeJigsaw(7, 1, 8);
    const job = { stock, parts: parts.map((part) => ({ ...part, angles: [0, 90, 180, 270] })) };
    const plan = solveNesting(job, { clock: () => 0, work: 1500 });
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.cost).toBe(1);
  });

  it('one piece too many takes one sheet more', () => {
    const { stock, parts } = makeJigsaw(8, 2, 6);
    const job = { stock, parts: parts.map((part, i) => (i === 0 ? { ...part, count: 2 } : part)) };
    const plan = solveNesting(job, { clock: () => 0, work: 1500 });
    expect(checkNest(job, plan)).toEqual([]);
    expect(plan.cost).toBe(3);
  });

  it('the same seed and work give the same plan', () => {
    const job = makeJigsaw(9, 2, 8);
    const solve = () => solveNesting(job, { clock: () => 0, work: 1500, seed: 3 }).placements;
    expect(solve()).toEqual(solve());
  });
});
