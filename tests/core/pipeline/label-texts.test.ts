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
