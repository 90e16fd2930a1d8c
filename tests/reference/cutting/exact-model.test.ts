import createHighs from 'highs';
import { expect, test } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { makeRandom } from '#core/numerics';
import { loadGlpk } from '#solver/glpk';

const highs = await createHighs();
const solveLp = await loadGlpk();

/** Boards of one length and a few parts, drawn by lot. */
function makeJob(seed: number): CuttingJob {
  const random = makeRandom(seed);
  const length = random.whole(80, 120);
  const parts = Array.from({ length: random.whole(3, 7) }, (_, i) => ({
    id: `p${i}`,
    length: random.whole(12, 70),
    count: random.whole(1, 3),
  }));
  return {
    kerf: random.whole(0, 2),
    cuts: { style: 'length' },
    stock: [{ id: 'bar', length, cost: 1 }],
    parts,
  };
}

/** Every way to fill a bar, as counts per part. */
function patternsOf(job: CuttingJob): readonly (readonly number[])[] {
  const kerf = job.kerf ?? 0;
  const patterns: number[][] = [];
  const fill = (at: number, room: number, counts: readonly number[]): void => {
    const part = job.parts[at];
    if (!part) return void (counts.some((n) => n > 0) && patterns.push([...counts]));
    for (let n = 0; n <= (part.count ?? 1) && n * (part.length + kerf) <= room; n++) {
      fill(at + 1, room - n * (part.length + kerf), [...counts, n]);
    }
  };
  fill(0, (job.stock[0]?.length ?? 0) + kerf, []);
  return patterns;
}

/** The least number of bars by a whole-number program over all patterns, solved by HiGHS. */
function exactOptimum(job: CuttingJob): number {
  const patterns = patternsOf(job);
  const sum = (terms: readonly string[]) => terms.join(' + ') || '0 x0';
  const rows = job.parts.map((part, k) => {
    const terms = patterns.flatMap((pattern, j) => (pattern[k] ? [`${pattern[k]} x${j}`] : []));
    return `d${k}: ${sum(terms)} >= ${part.count ?? 1}`;
  });
  const names = patterns.map((_, j) => `x${j}`);
  const text = `Minimize\nobj: ${sum(names)}\nSubject To\n${rows.join('\n')}\nGeneral\n${names.join(' ')}\nEnd\n`;
  return Math.round(highs.solve(text).ObjectiveValue);
}

test.each(Array.from({ length: 40 }, (_, i) => i + 1))(
  'small board job %i equals the exact model',
  (seed) => {
    const job = makeJob(seed);
    const plan = solveCutting(job, { solveLp, clock: () => performance.now(), work: 2000 });
    expect(checkPlan(job, plan)).toEqual([]);
    const optimum = exactOptimum(job);
    expect(plan.bound ?? 0).toBeLessThanOrEqual(optimum);
    expect(plan.cost).toBe(optimum);
  },
);
