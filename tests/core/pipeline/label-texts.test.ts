import { expect, test } from 'vitest';

import { labelTexts, understandProject } from '#core/pipeline';

import { generateProject } from '../../support/generate-project.ts';

test('always: labels name joints in the words of the trade, not of a file', () => {
  const joints = Array.from({ length: 30 }, (_, seed) => generateProject(seed + 1)).flatMap((project) =>
    labelTexts(project, understandProject(project), []).flatMap((label) => label.joints),
  );
  expect(joints).toContain('loose tenon to A1');
  for (const text of joints) expect(text).toMatch(/^[a-z]+( [a-z]+)* to [A-Z]+\d+$/);
});

// 25.4 mm to the inch exactly (international yard and pound agreement, 1959); labels show the nearest 1/32.
test('labels of a project in inches give inches and say so, those in mm stay bare', () => {
  const project = generateProject(3);
  const understanding = understandProject(project);
  const inMm = labelTexts({ ...project, units: 'mm' }, understanding, []);
  const inInches = labelTexts({ ...project, units: 'inch' }, understanding, []);
  expect(inMm.length).toBeGreaterThan(0);
  inMm.forEach((label, i) => {
    expect(label.size).toMatch(/^[\d.]+( × [\d.]+){2}$/);
    expect(inInches[i]?.size).toMatch(/ in$/);
    const shown = (inInches[i]?.size ?? '').replace(/ in$/, '').split(' × ').map(readInches);
    label.size.split(' × ').forEach((size, k) => {
      expect(Math.abs((shown[k] ?? NaN) * 25.4 - Number(size))).toBeLessThanOrEqual(25.4 / 64 + 0.05 + 1e-9);
    });
  });
});

function readInches(text: string): number {
  return text.split(' ').reduce((sum, part) => {
    const [top = NaN, bottom = 1] = part.split('/').map(Number);
    return sum + top / bottom;
  }, 0);
}
