import { describe, expect, test } from 'vitest';

import { runCli } from '../support/run-cli.ts';
import { job, readings } from './examples.ts';

interface Refusal {
  readonly findings: readonly {
    readonly about?: string;
    readonly message: string;
    readonly remedy?: string;
  }[];
}

/** Runs with `--json`, expects exit code 2 and a document of findings alone, and gives their text. */
function refuse(args: readonly string[], input = ''): string {
  const run = runCli([...args, '--json'], { input });
  expect(run.code).toBe(2);
  const document = JSON.parse(run.stdout) as Refusal;
  expect(Object.keys(document)).toEqual(['findings']);
  expect(document.findings.length).toBeGreaterThan(0);
  for (const finding of document.findings) expect(finding.message).toMatch(/^\S.*[.!?]$/s);
  const text = JSON.stringify(document);
  expect(text).not.toMatch(/NaN|undefined|\bat .*\.js|Error:/);
  expect(run.stderr).not.toMatch(/\bat .*\.js:\d+/);
  return text;
}

const measure = (document: unknown): string => refuse(['measure', '-'], JSON.stringify(document));
const cut = (document: unknown): string => refuse(['cut', '-'], JSON.stringify(document));

describe('bad input ends in a sentence and exit code 2', () => {
  test('no such file', () => {
    expect(refuse(['measure', 'nowhere.json'])).toContain('there is no such file');
  });

  test('nothing on standard input', () => {
    expect(refuse(['measure', '-'])).toMatch(/empty|nothing|ends/i);
  });

  test('broken JSON is named with line and column', () => {
    expect(refuse(['cut', '-'], '{ "stock": [\n  { "id": "a", ]')).toMatch(/line 2/);
  });

  test('an unknown key is refused with its path', () => {
    expect(cut({ ...job, stock: [{ ...job.stock[0], colour: 'red' }] })).toContain('stock[0].colour');
    expect(measure({ ...readings, seen_from: 'x' })).toContain('seen_from');
  });

  test('a missing key is named with its path', () => {
    expect(cut({ stock: job.stock })).toContain('parts');
    expect(
      measure({ seenFrom: 'x', readings: [{ id: 'a', kind: 'distance', from: 'A', value: 3 }] }),
    ).toContain('readings[0].to');
  });

  test('a negative kerf', () => {
    expect(cut({ ...job, kerf: -3 })).toMatch(/kerf[^"]*-3/);
  });

  test('a size that is no number, zero, or beyond all measure', () => {
    expect(cut({ ...job, parts: [{ id: 'a', length: '700', width: 300 }] })).toContain('parts[0].length');
    expect(cut({ ...job, parts: [{ id: 'a', length: 0, width: 300 }] })).toMatch(/length/);
    expect(refuse(['cut', '-'], '{"stock":[{"id":"s","length":1e400,"width":3}],"parts":[]}')).toMatch(
      /length/,
    );
  });

  test('a project of a newer version', () => {
    expect(refuse(['plan', '-'], JSON.stringify({ version: 99, name: 'Later' }))).toContain('99');
  });

  test('a file that is none of ours', () => {
    expect(refuse(['check', '-'], '{"hello": 1}')).toContain('hello');
    expect(refuse(['plan', '-'], '[1, 2]')).toMatch(/project/);
  });
});

describe('wrong use ends in a sentence and exit code 2', () => {
  test('an unknown command, an unknown option, an option of another command', () => {
    expect(refuse(['saw', 'x.json'])).toContain('no command \\"saw\\"');
    expect(refuse(['cut', 'x.json', '--speed', '3'])).toContain('--speed');
    expect(refuse(['measure', 'x.json', '--seconds', '3'])).toContain('--seconds');
  });

  test('no file, or two of them', () => {
    expect(refuse(['cut'])).toContain('No file');
    expect(refuse(['cut', 'a.json', 'b.json'])).toContain('2 were named');
  });

  test('seconds, work and seed that are none', () => {
    for (const args of [
      ['--seconds', '0'],
      ['--seconds', 'ten'],
      ['--seconds', '-1'],
      ['--work', '1.5'],
      ['--seed', 'x'],
    ])
      expect(refuse(['cut', '-', ...args], JSON.stringify(job))).toContain(args[0]);
    expect(refuse(['cut', '-', '--seconds'], JSON.stringify(job))).toContain('--seconds');
  });

  test('an outline that crosses itself is refused with the sides that cross', () => {
    const bow = {
      id: 'bow',
      outline: [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 50],
      ],
    };
    const text = JSON.stringify({ stock: [{ strip: 1220 }], parts: [bow] });
    expect(refuse(['nest', '-'], text)).toContain('crosses or touches itself at its sides 1 and 3');
  });

  test('--job with something that is no plan', () => {
    expect(refuse(['check', '-', '--job', 'j.json'], JSON.stringify(job))).toContain('--job');
  });
});

describe('asking for help', () => {
  test('--help and --version answer on standard output with exit code 0', () => {
    const help = runCli(['--help']);
    expect(help).toMatchObject({ code: 0, stderr: '' });
    for (const verb of ['plan', 'measure', 'cut', 'nest', 'check'])
      expect(help.stdout).toContain(`joggle ${verb}`);
    expect(runCli(['cut', '--help']).stdout).toBe(help.stdout);
    expect(runCli(['--version']).stdout).toMatch(/^joggle \d+\.\d+\.\d+\n$/);
  });
});
