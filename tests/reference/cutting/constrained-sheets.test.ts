import { describe, expect, test } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();

/** Parts: length, width, value, how many at most. Fixed orientation, one sheet. */
interface Instance {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly optimum: number;
  /** How many of each part an optimal sheet holds. */
  readonly counts: readonly number[];
  readonly parts: readonly (readonly [length: number, width: number, value: number, most: number])[];
}

/**
 * cgcut1: Christofides & Whitlock, Operations Research 25 (1977) 30-44, 244; ngcut1-3: Beasley, Operations Research 33
 * (1985) 49-64, 164, 230 and 247, optimal without the guillotine too. Optima from memory; the counts are our own exact
 * dynamic program's.
 */
const instances: readonly Instance[] = [
  {
    ...{ name: 'cgcut1', length: 15, width: 10, optimum: 244, counts: [2, 1, 1, 2, 1, 1, 0] },
    parts: [
      [8, 4, 66, 2],
      [3, 7, 35, 1],
      [8, 2, 24, 3],
      [3, 4, 17, 5],
      [3, 3, 11, 2],
      [3, 2, 8, 2],
      [2, 1, 2, 1],
    ],
  },
  {
    ...{ name: 'ngcut1', length: 10, width: 10, optimum: 164, counts: [1, 1, 0, 2, 1] },
    parts: [
      [3, 7, 35, 2],
      [8, 2, 40, 2],
      [10, 2, 27, 1],
      [5, 4, 23, 3],
      [2, 9, 43, 2],
    ],
  },
  {
    ...{ name: 'ngcut2', length: 10, width: 10, optimum: 230, counts: [1, 0, 3, 1, 0, 0, 0] },
    parts: [
      [1, 10, 28, 3],
      [5, 3, 40, 2],
      [9, 3, 63, 3],
      [6, 1, 13, 3],
      [3, 8, 31, 3],
      [4, 1, 10, 1],
      [7, 3, 44, 2],
    ],
  },
  {
    ...{ name: 'ngcut3', length: 10, width: 10, optimum: 247, counts: [2, 0, 2, 1, 0, 0, 0, 2, 0, 0] },
    parts: [
      [3, 2, 7, 2],
      [7, 2, 20, 3],
      [4, 5, 60, 2],
      [4, 1, 9, 2],
      [1, 10, 14, 1],
      [8, 4, 79, 1],
      [4, 2, 11, 2],
      [3, 7, 52, 3],
      [6, 2, 13, 3],
      [9, 1, 21, 2],
    ],
  },
];

/** How many sheets so many of each part take. */
function sheetsFor({ length, width, parts }: Instance, counts: readonly number[]): number {
  const job = {
    stock: [{ id: 'sheet', length, width, cost: 1 }],
    parts: parts.flatMap(([partLength, partWidth], i) =>
      (counts[i] ?? 0) > 0
        ? [{ id: `p${i}`, length: partLength, width: partWidth, count: counts[i] ?? 0 }]
        : [],
    ),
  };
  const plan = solveCutting(job, { solveLp, clock: () => 0, work: 3000 });
  expect(checkPlan(job, plan)).toEqual([]);
  return plan.cost;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Counts worth more than the optimum whose area a sheet would hold, none with a part to spare; at most so many of them. */
function dearerCounts(
  { length, width, parts, optimum }: Instance,
  most: number,
): readonly (readonly number[])[] {
  const found: number[][] = [];
  const worth = (counts: readonly number[]) => sum(counts.map((count, i) => count * (parts[i]?.[2] ?? 0)));
  const area = (counts: readonly number[]) =>
    sum(counts.map((count, i) => count * (parts[i]?.[0] ?? 0) * (parts[i]?.[1] ?? 0)));
  const isLean = (counts: readonly number[]) =>
    counts.every((count, i) => count === 0 || worth(counts) - (parts[i]?.[2] ?? 0) <= optimum);
  const extend = (counts: readonly number[]): void => {
    if (area(counts) > length * width) return;
    if (counts.length < parts.length) {
      for (let count = 0; count <= (parts[counts.length]?.[3] ?? 0); count++) extend([...counts, count]);
    } else if (worth(counts) > optimum && isLean(counts)) found.push([...counts]);
  };
  extend([]);
  const every = Math.max(1, Math.ceil(found.length / most));
  return found.filter((_, i) => i % every === 0);
}

describe.each(instances)('one sheet of $name', (instance) => {
  test(`holds parts worth ${instance.optimum}, sawn from edge to edge`, () => {
    const worth = sum(instance.counts.map((count, i) => count * (instance.parts[i]?.[2] ?? 0)));
    expect(worth).toBe(instance.optimum);
    expect(sheetsFor(instance, instance.counts)).toBe(1);
  });

  test('holds none of the sets worth more, of up to 12 that its area would hold', () => {
    const dearer = dearerCounts(instance, 12);
    expect(dearer.length).toBeGreaterThan(0);
    for (const counts of dearer) expect(sheetsFor(instance, counts), counts.join()).toBeGreaterThan(1);
  });
});
