import { describe, expect, test } from 'vitest';
import { understandProject } from '#core/pipeline';
import type { Project } from '#core/project';
import { readProject } from '#formats/json';
import { readFileSync } from 'node:fs';

const read = readProject(readFileSync('static/projects/curlew.json', 'utf8'));
if (!read.ok) throw new Error('the demo cannot be read');
const withTrim = (left: number, bottom: number): Project => ({
  ...read.value,
  tools: {
    ...read.value.tools,
    sheetSaw: { ...read.value.tools.sheetSaw, trim: { left, right: 0, bottom, top: 0 } },
  },
});
const warnings = (project: Project) =>
  understandProject(project).findings.filter((finding) => finding.code === 'trim-does-not-true');

describe('the trim of the sheet saw', () => {
  test('of 10 on two edges trues what the mill may have left out of square', () => {
    expect(warnings(withTrim(10, 10))).toEqual([]);
  });

  test('of 2 at an end does not, and the warning says how much it lacks', () => {
    const long = warnings(withTrim(2, 10)).find((finding) => finding.message.includes('2440 × 1220'));
    expect(long?.message).toContain('3.8 out of square');
    expect(long?.message).toContain('takes off 2 in all');
  });
});
