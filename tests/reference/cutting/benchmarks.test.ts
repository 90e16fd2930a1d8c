import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkPlan, solveCutting } from '#core/cutting';
import type { CuttingJob } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

/** Jobs of the literature with their optima; each row of the files names its source. They stay outside the project. */
const folder = resolve('../shared/benchmarks');
const here = existsSync(folder);

interface Row {
  readonly name: string;
  readonly best: { readonly value: number; readonly bound: number };
  readonly job: CuttingJob;
}

function rowsOf(file: string, names: readonly string[]): readonly Row[] {
  if (!here) return [];
  const all = JSON.parse(readFileSync(resolve(folder, file), 'utf8')) as readonly Row[];
  return names.map((name) => all.find((row) => row.name === name)).filter((row) => row !== undefined);
}

const rows = [
  ...rowsOf('sheets-C.json', ['2|O', 'CHL2|O', 'Hchl4s|O', 'OF2|O', 'STS4|O', 'Hchl2|O', 'CW1|O', 'A3|O']),
  ...rowsOf('boards.json', ['N2C1W1_M', 'N1W2B2R8', 'Schwerin1_BPP1', 'N1C1W1_A']),
];

const solveLp = await loadGlpk();

describe.skipIf(!here)('twelve published jobs (skipped: the folder ../shared/benchmarks is absent)', () => {
  test('all twelve are there', () => {
    expect(rows).toHaveLength(12);
  });

  test.each(rows)('$name: the published optimum, proven', ({ job, best }) => {
    const plan = solveCutting(job, { solveLp, clock: () => performance.now(), seconds: 60 });
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan).toMatchObject({ cost: best.value, bound: best.value, proven: true });
  });
});
