import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { CuttingJob } from '#core/cutting';
import { planOf } from './solve.ts';

const file = '../shared/benchmarks/sheets-500.json';

interface Instance {
  readonly name: string;
  readonly best: { readonly bound: number };
  readonly job: CuttingJob;
}

// Martello & Vigo 1998 and Berkey & Wang 1987; the bounds from Becker's thesis (2022), as the file cites them. A plan at
// the bound is the best there is.
describe.skipIf(!existsSync(file))(
  'the search closes jobs of the literature (skipped: benchmarks absent)',
  () => {
    const all = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as readonly Instance[]) : [];

    test.each([['CLASS08_080_03|R', 18]])(
      '%s is cut from %i sheets, no more than any plan needs',
      (name, sheets) => {
        const instance = all.find((each) => each.name === name);
        if (!instance) throw new Error(`${name} is not in the file`);
        expect(instance.best.bound).toBe(sheets);
        const plan = planOf(instance.job, { work: 100_000 });
        expect(plan).toMatchObject({ cost: sheets, bound: sheets, proven: true });
      },
    );
  },
);
