import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { runCli } from '../support/run-cli.ts';

type Corner = readonly [number, number];
interface Answer {
  readonly sheets: readonly { readonly stock: string }[];
  readonly placements: readonly {
    readonly id: string;
    readonly sheet: number;
    readonly angle: number;
    readonly x: number;
    readonly y: number;
  }[];
  readonly stockUsed: readonly { readonly id: string; readonly count: number }[];
  readonly length: number | null;
  readonly cost: number;
  readonly bound: number | null;
  readonly density: number;
  readonly unplaced: readonly { readonly id: string; readonly count: number }[];
  readonly findings: readonly { readonly severity: string; readonly code: string }[];
}

/** The job of the contract (DESIGN section 6). */
const outline: readonly Corner[] = [
  [0, 0],
  [400, 0],
  [380, 260],
  [0, 300],
];
const job = {
  gap: 8,
  margin: 10,
  stock: [{ id: 'ply', length: 2440, width: 1220, cost: 78, count: null }],
  parts: [{ id: 'p1', outline, holes: [], angles: [0, 180], count: 2 }],
};

function nest(document: unknown, ...more: readonly string[]) {
  const run = runCli(['nest', '-', '--json', ...more], { input: JSON.stringify(document) });
  return {
    code: run.code,
    answer: JSON.parse(run.stdout) as Answer,
    stdout: run.stdout,
    seconds: run.seconds,
  };
}

/** The outline as the contract lays it: turned about its own origin, then moved. */
function lay({ angle, x, y }: Answer['placements'][number]): readonly Corner[] {
  const radians = (angle * Math.PI) / 180;
  return outline.map(([u, v]) => [
    u * Math.cos(radians) - v * Math.sin(radians) + x,
    u * Math.sin(radians) + v * Math.cos(radians) + y,
  ]);
}

/** Least distance of the corners of one polygon from the sides of another. */
function distance(a: readonly Corner[], b: readonly Corner[]): number {
  return Math.min(
    ...a.flatMap(([x, y]) =>
      b.map(([px, py], i) => {
        const [qx, qy] = b[(i + 1) % b.length] ?? [px, py];
        const [ux, uy] = [qx - px, qy - py];
        const t = Math.min(1, Math.max(0, ((x - px) * ux + (y - py) * uy) / (ux * ux + uy * uy)));
        return Math.hypot(px + t * ux - x, py + t * uy - y);
      }),
    ),
  );
}

describe('joggle nest', () => {
  test('lays the job of the contract on one sheet, the margin and the gap kept', () => {
    const { code, answer } = nest(job, '--seconds', '3');
    expect(code).toBe(0);
    expect(answer).toMatchObject({ cost: 78, bound: 78, length: null, unplaced: [], findings: [] });
    expect(answer.sheets).toEqual([{ stock: 'ply' }]);
    expect(answer.stockUsed).toEqual([{ id: 'ply', count: 1 }]);
    // net area by the shoelace formula: 109 000 mm² each
    expect(answer.density).toBeCloseTo((2 * 109_000) / (2440 * 1220), 9);
    const [first, second] = answer.placements.map(lay);
    if (!first || !second) throw new Error('two parts are laid');
    for (const [x, y] of [...first, ...second]) {
      expect(Math.min(x - 10, y - 10, 2430 - x, 1210 - y)).toBeGreaterThan(-1e-6);
    }
    expect(Math.min(distance(first, second), distance(second, first))).toBeGreaterThan(8 - 1e-6);
  });

  test('the same work gives the same bytes but for the seconds', () => {
    const bytes = () => nest(job, '--work', '200').stdout.replace(/"seconds": [\d.e-]+/, '');
    expect(bytes()).toBe(bytes());
  });

  test('a strip is answered with its length, within the time asked for', () => {
    const parts = [{ ...job.parts[0], count: 12 }];
    const { code, answer, seconds } = nest({ gap: 8, stock: [{ strip: 1220 }], parts }, '--seconds', '3');
    expect(code).toBe(0);
    expect(answer.length).toBe(answer.cost);
    expect(answer.bound).toBeLessThanOrEqual(answer.cost);
    expect(answer.placements.every(({ sheet }) => sheet === 0)).toBe(true);
    expect(Math.max(...answer.placements.flatMap((each) => lay(each).map(([x]) => x)))).toBeCloseTo(
      answer.cost,
      6,
    );
    expect(seconds).toBeLessThan(3 * 1.1 + 0.5); // starting Node takes its share on a busy machine
  });

  test('check passes the answer with its job, finds a shifted part, and says what the files are', () => {
    const folder = mkdtempSync(join(tmpdir(), 'joggle-nest-'));
    const write = (name: string, document: unknown): string => {
      const path = join(folder, name);
      writeFileSync(path, JSON.stringify(document));
      return path;
    };
    const { answer } = nest(job, '--work', '50');
    const jobPath = write('job.json', job);
    const check = (path: string, ...more: readonly string[]) => {
      const run = runCli(['check', path, '--json', ...more]);
      return {
        code: run.code,
        ...(JSON.parse(run.stdout) as { kind: string; findings: Answer['findings'] }),
      };
    };
    expect(check(jobPath)).toMatchObject({ code: 0, kind: 'nest-job', findings: [] });
    const sound = write('plan.json', answer);
    expect(check(sound)).toMatchObject({ kind: 'nest-plan', findings: [{ code: 'job-not-given' }] });
    expect(check(sound, '--job', jobPath)).toMatchObject({ code: 0, findings: [] });
    const [first, second] = answer.placements;
    const spoilt = write('spoilt.json', {
      ...answer,
      placements: [first, { ...second, y: first?.y, x: 60 }],
    });
    const found = check(spoilt, '--job', jobPath);
    expect(found.code).toBe(1);
    expect(found.findings.map(({ code }) => code)).toContain('nest-gap');
  });

  test('a part that fits no sheet is a stop, and the rest is laid', () => {
    const parts = [
      ...job.parts,
      {
        id: 'mast',
        outline: [
          [0, 0],
          [9000, 0],
          [9000, 90],
        ],
      },
    ];
    const { code, answer } = nest({ ...job, parts }, '--work', '50');
    expect(code).toBe(1);
    expect(answer.unplaced).toEqual([{ id: 'mast', count: 1 }]);
    expect(answer.bound).toBeNull();
    expect(answer.placements).toHaveLength(2);
  });

  test('what it says without --json names sheets, shares and parts', () => {
    const { stdout } = runCli(['nest', '-', '--work', '20'], { input: JSON.stringify(job) });
    expect(stdout).toContain('Cost 78 (proven: no plan can cost less)');
    expect(stdout).toContain('sheet 0, ply: 2 × p1');
  });
});
