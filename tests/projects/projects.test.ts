import { readFileSync, readdirSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { checkProject, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';

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

describe('projects in files', () => {
  test.each(files)('%s is read without a fault and written as it is', (_, text) => {
    const project = open(text);
    expect(checkProject(project)).toEqual([]);
    expect(writeJson(project)).toBe(text);
  });
});
