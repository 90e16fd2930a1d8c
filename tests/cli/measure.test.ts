import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { runCli } from '../support/run-cli.ts';
import { readings, withReading } from './examples.ts';

interface Answer {
  readonly points: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly sx: number;
  }[];
  readonly readings: readonly Readonly<Record<string, unknown>>[];
  readonly suspects: readonly { readonly id: string; readonly slip: number; readonly cause: string }[];
  readonly findings: readonly {
    readonly severity: string;
    readonly message: string;
    readonly remedy?: string;
  }[];
  readonly [key: string]: unknown;
}

function measure(document: unknown): { readonly code: number | null; readonly answer: Answer } {
  const run = runCli(['measure', '-', '--json'], { input: JSON.stringify(document) });
  return { code: run.code, answer: JSON.parse(run.stdout) as Answer };
}

describe('joggle measure', () => {
  test('the example of the contract is answered in its shape, with BL as origin and BR on the x axis', () => {
    const { code, answer } = measure(readings);
    expect(code).toBe(0);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(
        'points readings tilt dof chi2 suspects undetermined advice findings'.split(' '),
      ),
    );
    const point = (id: string) => answer.points.find((each) => each.id === id);
    expect(point('BL')).toMatchObject({ x: 0, y: 0 });
    expect(point('BR')?.y).toBeCloseTo(0, 9);
    // corners of joinery calc B1, to the millimetre: BR 641,0 · TR 649,1752 · TL 14,1746
    expect(point('BR')?.x).toBeCloseTo(641, 0);
    expect(Math.abs((point('TR')?.x ?? 0) - 649)).toBeLessThan(1);
    expect(Math.abs((point('TL')?.x ?? 0) - 14)).toBeLessThan(1);
    expect(answer.readings).toHaveLength(12);
    for (const reading of answer.readings)
      expect(Object.keys(reading)).toEqual(
        expect.arrayContaining('id adjusted residual redundancy normalised smallestSlip'.split(' ')),
      );
    expect(answer.suspects).toEqual([]);
  });

  test('a diagonal read 10 mm short is named with its size, and nothing may be cut', () => {
    const { code, answer } = measure(withReading('d2', 1845));
    expect(code).toBe(1);
    expect(answer.suspects[0]?.id).toBe('d2');
    expect(answer.suspects[0]?.slip).toBeGreaterThan(-11.5);
    expect(answer.suspects[0]?.slip).toBeLessThan(-8.5);
    expect(answer.findings.some((finding) => finding.severity === 'stop')).toBe(true);
  });

  test('without --json the shape is printed for people, findings go to standard error', () => {
    const run = runCli(['measure', '-'], { input: JSON.stringify(withReading('d2', 1845)) });
    expect(run.stdout).toMatch(/TL\s+x\s+\d+\.\d ±/);
    expect(run.stdout).toContain('Doubt d2');
    expect(run.stderr).toMatch(/^Stop: /);
  });

  test('a missing reading leaves an answer that says what is still open', () => {
    const few = {
      ...readings,
      readings: readings.readings.filter((each) => ['wb', 'hl', 'hr'].includes(each.id)),
    };
    const { code, answer } = measure(few);
    expect(code).toBe(1);
    expect(JSON.stringify(answer['undetermined'])).toMatch(/diagonal|measure/i);
  });

  test('the same readings give the same bytes', () => {
    const run = (): string => runCli(['measure', '-', '--json'], { input: JSON.stringify(readings) }).stdout;
    expect(run()).toBe(run());
  });

  test('a path is taken from INIT_CWD where it is set, else from the working directory', () => {
    const folder = mkdtempSync(join(tmpdir(), 'joggle-'));
    const elsewhere = mkdtempSync(join(tmpdir(), 'joggle-'));
    writeFileSync(join(folder, 'r.json'), JSON.stringify(readings));
    expect(runCli(['measure', 'r.json', '--json'], { cwd: folder }).code).toBe(0);
    expect(runCli(['measure', 'r.json', '--json'], { env: { INIT_CWD: folder } }).code).toBe(0);
    expect(runCli(['measure', 'r.json', '--json'], { cwd: folder, env: { INIT_CWD: elsewhere } }).code).toBe(
      2,
    );
  });
});
