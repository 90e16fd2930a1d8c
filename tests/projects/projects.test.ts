import { readFileSync, readdirSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { understandProject, type Understanding } from '#core/pipeline';
import { applyCommand, checkProject, type Project } from '#core/project';
import { readCuttingJob, readProject, writeJson } from '#formats/json';

import { generateProject } from '../support/generate-project.ts';

const demo = new URL('../../static/projects/', import.meta.url);
const others = new URL('./', import.meta.url);

/** Every project that is shipped or kept for the tests, by its file name. */
const files = [demo, others].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const),
);

function open(text: string): Project {
  const read = readProject(text);
  if (!read.ok) throw new Error(read.problems.map((problem) => problem.message).join(' '));
  return read.value;
}

function openFile(wanted: string): Project {
  return open(files.find(([name]) => name === wanted)?.[1] ?? '');
}

function stopsOf(understanding: Understanding) {
  return understanding.findings.filter((finding) => finding.severity === 'stop');
}

/** What holds of every project: sentences without holes, and cutting jobs that our own door lets in. */
function expectSound(understanding: Understanding): void {
  for (const finding of understanding.findings) {
    expect(`${finding.message} ${finding.remedy ?? ''}`).not.toMatch(/NaN|undefined|Infinity|\[object/);
  }
  for (const group of understanding.groups) {
    const read = readCuttingJob(writeJson(group.job));
    expect(read.problems).toEqual([]);
    expect(group.job.parts.length).toBeGreaterThan(0);
  }
}

describe('projects in files', () => {
  test.each(files)('%s is read without a fault and written with the same content', (_, text) => {
    const project = open(text);
    expect(checkProject(project)).toEqual([]);
    expect(writeJson(project)).toBe(writeJson(JSON.parse(text)));
  });

  test.each(files.filter(([name]) => name !== 'curlew.json'))(
    '%s can be built and cut as it stands',
    (_, text) => {
      const understanding = understandProject(open(text));
      expect(stopsOf(understanding)).toEqual([]);
      expect(understanding.pieces.every((piece) => piece.parts.length > 0)).toBe(true);
      expectSound(understanding);
    },
  );
});

describe('the demo', () => {
  test('its one slip is found, named and sized, and nothing else stands in the way', () => {
    const understanding = understandProject(openFile('curlew.json'));
    expect(stopsOf(understanding)).toMatchObject([{ code: 'readings-contradict', about: 'saloon-door/w23' }]);
    const [suspect] = understanding.shapes[0]?.adjustment.suspects ?? [];
    expect(suspect).toMatchObject({ id: 'w23', mistake: 'E2' });
    expect(Math.abs((suspect?.slip ?? 0) + 10)).toBeLessThan(1);
    expectSound(understanding);
  });

  test('with that reading put right all is clear', () => {
    const before = openFile('curlew.json');
    const reading = before.shapes[0]?.readings.find((each) => each.id === 'w23');
    if (!reading) throw new Error('the demo has lost its reading');
    const after = applyCommand(before, {
      kind: 'change-reading',
      shape: 'saloon-door',
      id: 'w23',
      reading: { ...reading, value: reading.value + 10 },
    });
    expect(after.ok && stopsOf(understandProject(after.value))).toEqual([]);
  });

  test('it has a spread: a frame and its door, a bank with continuous grain, drawers, locker fronts, sheets, boards and battens', () => {
    const { pieces, groups } = understandProject(openFile('curlew.json'));
    expect(new Set(pieces.map((piece) => piece.kind))).toEqual(
      new Set(['door-frame', 'cabinet-front', 'drawer', 'flat-door']),
    );
    expect(pieces.some((piece) => piece.matchedSets.length > 0)).toBe(true);
    expect(new Set(groups.map((group) => group.form))).toEqual(new Set(['sheet', 'board', 'batten']));
    expect(pieces.flatMap((piece) => piece.parts).length).toBeGreaterThan(40);
  });
});

describe('projects nobody looked at', () => {
  test('always: a sensible project is understood without a stop, with sentences and jobs that hold', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const understanding = understandProject(generateProject(seed));
      expectSound(understanding);
      expect(stopsOf(understanding), `seed ${seed}`).toEqual([]);
    }
  });
});
