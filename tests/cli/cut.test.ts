import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { runCli } from '../support/run-cli.ts';
import { job } from './examples.ts';

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}
type Node = Rectangle & {
  readonly cut?: 'along' | 'across';
  readonly at?: number;
  readonly children?: readonly [Node, Node];
  readonly part?: string;
};
interface Answer {
  readonly cost: number;
  readonly bound: number | null;
  readonly proven: boolean;
  readonly stockUsed: readonly { readonly id: string; readonly count: number }[];
  readonly unplaced: readonly { readonly id: string; readonly count: number }[];
  readonly findings: readonly {
    readonly severity: string;
    readonly message: string;
    readonly remedy?: string;
  }[];
  readonly layouts: readonly {
    readonly stock: string;
    readonly times: number;
    readonly placed: readonly (Rectangle & { readonly id: string; readonly turned: boolean })[];
    readonly cuts: Node | null;
    readonly leftovers: readonly Rectangle[];
  }[];
}

function cut(
  document: unknown,
  ...more: readonly string[]
): {
  readonly code: number | null;
  readonly answer: Answer;
  readonly stdout: string;
  readonly seconds: number;
} {
  const run = runCli(['cut', '-', '--json', ...more], { input: JSON.stringify(document) });
  return {
    code: run.code,
    answer: JSON.parse(run.stdout) as Answer,
    stdout: run.stdout,
    seconds: run.seconds,
  };
}

function leavesOf(node: Node): readonly Node[] {
  return node.children ? node.children.flatMap(leavesOf) : [node];
}

describe('joggle cut', () => {
  test('the example of the contract is answered in its shape and proven', () => {
    const { code, answer } = cut(job);
    expect(code).toBe(0);
    expect(answer).toMatchObject({
      cost: 78,
      bound: 78,
      proven: true,
      stockUsed: [{ id: 'ply', count: 1 }],
      unplaced: [],
    });
    const layout = answer.layouts[0];
    expect(layout).toMatchObject({ stock: 'ply', times: 1 });
    expect(layout?.placed).toHaveLength(2);
    expect(layout?.placed[0]).toMatchObject({ id: 'A1', length: 700, width: 300, turned: false });
    expect(layout?.cuts).toMatchObject({ x: 10, y: 10, length: 2430, width: 1210 });
    expect(layout?.leftovers.length).toBeGreaterThan(0);
  });

  test('the tree of cuts leads to the parts: each high child begins a kerf beyond its cut', () => {
    const root = cut(job).answer.layouts[0]?.cuts;
    const check = (node: Node): void => {
      if (!node.children || node.at === undefined) return;
      const [, high] = node.children;
      expect(node.cut === 'along' ? high.y : high.x).toBeCloseTo(node.at + 3, 6);
      node.children.forEach(check);
    };
    if (!root) throw new Error('no tree');
    check(root);
    expect(leavesOf(root).filter((leaf) => leaf.part === 'A1')).toHaveLength(2);
  });

  test('stock and parts are enough: the rest has the defaults of the contract', () => {
    const { code, answer } = cut({
      stock: [{ id: 's', length: 1000, width: 500 }],
      parts: [{ id: 'a', length: 500, width: 500 }],
    });
    expect(code).toBe(0);
    expect(answer.layouts[0]?.placed).toHaveLength(1);
  });

  test('lengths are cut from bars without a tree', () => {
    const { answer } = cut({
      kerf: 3,
      cuts: { style: 'length' },
      stock: [{ id: 'bar', length: 2000, cost: 10 }],
      parts: [{ id: 'a', length: 660, count: 6 }],
    });
    // three of 660 and two kerfs are 1986 of 2000: two bars, and one cannot hold six
    expect(answer).toMatchObject({ cost: 20, bound: 20, proven: true });
    expect(answer.layouts.every((layout) => layout.cuts === null)).toBe(true);
  });

  test('a part larger than every sheet is reported, not cut', () => {
    const large = { ...job, parts: [...job.parts, { id: 'B1', length: 3000, width: 300 }] };
    const { code, answer } = cut(large);
    expect(code).toBe(1);
    expect(answer.unplaced).toEqual([{ id: 'B1', count: 1 }]);
    expect(answer.bound).toBeNull();
    expect(answer.proven).toBe(false);
    const stop = answer.findings.find((finding) => finding.severity === 'stop');
    expect(stop?.message).toMatch(/3000/);
  });

  test('the same work gives the same bytes, whatever the machine does meanwhile', () => {
    const many = {
      ...job,
      parts: [
        { id: 'a', length: 511, width: 217, count: 37 },
        { id: 'b', length: 333, width: 402, count: 11 },
      ],
    };
    const strip = (text: string): string => text.replace(/"seconds": [\d.e-]+/, '');
    const first = strip(cut(many, '--work', '200', '--seed', '3').stdout);
    expect(strip(cut(many, '--work', '200', '--seed', '3').stdout)).toBe(first);
  });

  test('a run keeps to its seconds, from reading to printing', () => {
    const many = {
      kerf: 3,
      stock: [{ id: 's', length: 2440, width: 1220 }],
      parts: Array.from({ length: 40 }, (_, index) => ({
        id: `p${index}`,
        length: 211 + ((index * 137) % 700),
        width: 97 + ((index * 89) % 400),
        count: 2,
        turn: true,
      })),
    };
    const { seconds, code } = cut(many, '--seconds', '2');
    expect(code).toBe(0);
    expect(seconds).toBeLessThan(8); // 2 and the start of Node on a busy machine
  });

  test('the answer passes `check` with its job, and a shifted part is found', () => {
    const folder = mkdtempSync(join(tmpdir(), 'joggle-'));
    const { answer } = cut(job);
    writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
    writeFileSync(join(folder, 'plan.json'), JSON.stringify(answer));
    const good = runCli(['check', 'plan.json', '--job', 'job.json', '--json'], { cwd: folder });
    expect(JSON.parse(good.stdout)).toEqual({ kind: 'cutting-plan', findings: [] });
    expect(good.code).toBe(0);
    const [layout] = answer.layouts;
    const shifted = {
      ...answer,
      layouts: [{ ...layout, placed: layout?.placed.map((part) => ({ ...part, x: part.x + 1 })) }],
    };
    writeFileSync(join(folder, 'plan.json'), JSON.stringify(shifted));
    const bad = runCli(['check', 'plan.json', '--job', 'job.json', '--json'], { cwd: folder });
    expect(bad.code).toBe(1);
    expect((JSON.parse(bad.stdout) as Answer).findings.length).toBeGreaterThan(0);
  });
});
