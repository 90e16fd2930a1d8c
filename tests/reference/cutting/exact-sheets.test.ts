import createHighs from 'highs';
import { expect, test } from 'vitest';
import { checkPlan, solveCutting, tightBound } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import { loadGlpk } from '#solver/glpk';

const highs = await createHighs();
const solveLp = await loadGlpk();

/** One or two small sheet sizes and a few parts, drawn by lot; some may be turned. */
function makeJob(seed: number): CuttingJob {
  const random = makeRandom(seed);
  const stock = Array.from({ length: random.whole(1, 2) }, (_, i) => {
    const [length, width] = [random.whole(10, 16), random.whole(7, 11)];
    return { id: `s${i}`, length, width, cost: Math.round((length * width) / 10) };
  });
  const [least] = [...stock].sort((a, b) => a.length - b.length);
  const narrow = Math.min(...stock.map(({ width }) => width));
  const parts = Array.from({ length: random.whole(2, 4) }, (_, i) => ({
    id: `p${i}`,
    length: random.whole(3, least?.length ?? 12),
    width: random.whole(2, narrow),
    count: random.whole(1, 2),
    turn: random.next() < 0.4,
  }));
  return { kerf: random.whole(0, 1), stock, parts };
}

interface Size {
  readonly length: number;
  readonly width: number;
}

/** The rows and columns of a whole-number program in the making. */
interface Program {
  readonly sheets: string[];
  readonly names: string[];
  /** Per plate the terms of what makes it and what uses it up. */
  readonly balance: Map<string, string[]>;
  readonly demand: string[][];
}

/** Sums of sizes, each used at most its count, below a limit. */
function sumsOf(sizes: readonly number[], limit: number): readonly number[] {
  let sums = new Set([0]);
  for (const size of sizes) sums = new Set([...sums, ...[...sums].map((sum) => sum + size)]);
  return [...sums].filter((sum) => sum > 0 && sum < limit);
}

/**
 * The least cost by a whole-number program over plates and cuts, solved by HiGHS: each cut uses up one plate and makes
 * two, each part uses up one plate it fits (after Furini, Malaguti, Thomopulos 2016, from memory). Exact for any number
 * of stages; the kerf is added to parts and sheets.
 */
function exactOptimum(job: CuttingJob): number {
  const kerf = job.kerf ?? 0;
  const grown = (size: { readonly length: number; readonly width?: number }): Size => ({
    length: size.length + kerf,
    width: (size.width ?? 0) + kerf,
  });
  const waysOf = job.parts.map((part) => {
    const straight = grown(part);
    return part.turn ? [straight, { length: straight.width, width: straight.length }] : [straight];
  });
  const each = job.parts.flatMap((part, k) => Array.from({ length: part.count ?? 1 }, () => waysOf[k] ?? []));
  const xs = each.flatMap((ways) => ways.map(({ length }) => length));
  const ys = each.flatMap((ways) => ways.map(({ width }) => width));
  const program: Program = { sheets: [], names: [], balance: new Map(), demand: job.parts.map(() => []) };
  const add = (name: string, plate: string, sign: '+' | '-'): void => {
    program.balance.set(plate, [...(program.balance.get(plate) ?? []), `${sign} ${name}`]);
  };
  const seen = new Set<string>();
  const visit = ({ length, width }: Size): void => {
    const plate = `${length}_${width}`;
    if (seen.has(plate)) return;
    seen.add(plate);
    waysOf.forEach((ways, k) => {
      if (!ways.some((way) => way.length <= length && way.width <= width)) return;
      const name = `t${plate}_${k}`;
      program.names.push(name);
      program.demand[k]?.push(name);
      add(name, plate, '-');
    });
    const halves = [
      ...sumsOf(xs, length).map(
        (at) =>
          [
            { length: at, width },
            { length: length - at, width },
          ] as const,
      ),
      ...sumsOf(ys, width).map(
        (at) =>
          [
            { length, width: at },
            { length, width: width - at },
          ] as const,
      ),
    ];
    halves.forEach(([low, high], c) => {
      const name = `c${plate}_${c}`;
      program.names.push(name);
      add(name, plate, '-');
      for (const half of [low, high]) {
        add(name, `${half.length}_${half.width}`, '+');
        visit(half);
      }
    });
  };
  job.stock.forEach((stock, i) => {
    const sheet = grown(stock);
    program.sheets.push(`${stock.cost} n${i}`);
    program.names.push(`n${i}`);
    add(`n${i}`, `${sheet.length}_${sheet.width}`, '+');
    visit(sheet);
  });
  const rows = [
    ...[...program.balance].map(([plate, terms]) => `b${plate}: ${terms.join(' ')} >= 0`),
    ...program.demand.map((terms, k) => `d${k}: ${terms.join(' + ')} >= ${job.parts[k]?.count ?? 1}`),
  ];
  const text = `Minimize\nobj: ${program.sheets.join(' + ')}\nSubject To\n${rows.join('\n')}\nGeneral\n${program.names.join(' ')}\nEnd\n`;
  return Math.round(highs.solve(text).ObjectiveValue);
}

test.each(Array.from({ length: 160 }, (_, i) => i + 1))(
  'small sheet job %i equals the exact model',
  (seed) => {
    const job = makeJob(seed);
    const plan = solveCutting(job, { solveLp, clock: () => performance.now(), work: 40_000 });
    expect(checkPlan(job, plan)).toEqual([]);
    if (plan.unplaced.length > 0) return;
    const optimum = exactOptimum(job);
    expect(plan.bound ?? 0).toBeLessThanOrEqual(optimum);
    expect(plan.cost).toBe(optimum);
    for (const cells of [4, 6, 9, 13, 30]) expect(tightBound(job, [cells])).toBeLessThanOrEqual(optimum);
  },
);
