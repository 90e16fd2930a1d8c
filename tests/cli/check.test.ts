import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { runCli } from '../support/run-cli.ts';
import { job, readings, withReading } from './examples.ts';
import { drawerProject } from './sample-projects.ts';

interface Answer {
  readonly kind: string;
  readonly findings: readonly { readonly severity: string; readonly code: string }[];
}

function check(name: string, text: string): { readonly code: number | null; readonly answer: Answer } {
  const folder = mkdtempSync(join(tmpdir(), 'joggle-'));
  writeFileSync(join(folder, name), text);
  const run = runCli(['check', name, '--json'], { cwd: folder });
  return { code: run.code, answer: JSON.parse(run.stdout) as Answer };
}

describe('joggle check', () => {
  test('each kind of file is known by its content', () => {
    expect(check('a.json', JSON.stringify(readings)).answer.kind).toBe('survey');
    expect(check('a.json', JSON.stringify(job)).answer).toEqual({ kind: 'cutting-job', findings: [] });
    expect(check('a.json', JSON.stringify(drawerProject())).answer.kind).toBe('project');
    const adjusted = runCli(['measure', '-', '--json'], { input: JSON.stringify(readings) }).stdout;
    expect(check('a.json', adjusted).answer.kind).toBe('adjustment');
  });

  test('a project in which nothing is wrong has exit code 0, one without stock has 1', () => {
    expect(check('p.json', JSON.stringify(drawerProject())).code).toBe(0);
    const bare = check('p.json', JSON.stringify({ ...drawerProject(), stock: [] }));
    expect(bare.code).toBe(1);
    expect(bare.answer.findings.map((finding) => finding.code)).toContain('part-without-stock');
  });

  test('contradicting readings are found', () => {
    const { code, answer } = check('r.json', JSON.stringify(withReading('w13', 649)));
    expect(code).toBe(1);
    expect(answer.findings[0]?.code).toBe('readings-contradict');
  });

  test('a table with a missing cell or a broken number is found', () => {
    const good = 'part,cut length mm\r\nA1,700.5\r\n';
    expect(check('parts.csv', good).answer).toEqual({ kind: 'csv', findings: [] });
    expect(check('parts.csv', `${good}A2\r\n`).code).toBe(1);
    expect(check('parts.csv', `${good}A2,7OO\r\n`).answer.findings[0]?.code).toBe('csv-not-a-number');
  });

  test('a drawing that is cut off, has no size or holds a script is found', () => {
    const good = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="5mm"><path d="M0 0"/></svg>';
    const codes = (text: string): readonly string[] =>
      check('d.svg', text).answer.findings.map((finding) => finding.code);
    expect(codes(good)).toEqual([]);
    expect(codes(good.replace('</svg>', ''))).toEqual(['svg-broken']);
    expect(codes(good.replace('10mm', '10'))).toEqual(['svg-no-size']);
    expect(codes(good.replace('<path', '<script>x</script><path'))).toEqual(['svg-active']);
  });

  test('a cutting plan without its job is checked for form only, and that is said', () => {
    const plan = runCli(['cut', '-', '--json'], { input: JSON.stringify(job) }).stdout;
    const { code, answer } = check('plan.json', plan);
    expect(code).toBe(0);
    expect(answer.findings.map((finding) => finding.code)).toEqual(['job-not-given']);
  });
});
