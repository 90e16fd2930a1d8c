import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { understandProject } from '#core/pipeline';
import { drawPages, writeRouterFiles } from '#formats/bundle';
import { readProject } from '#formats/json';
import { nodeFonts } from '../../../../src/formats/pdf/node-fonts.ts';

test('two ends of the galley that share a blank have a template and router files among those of the plan', () => {
  const read = readProject(readFileSync('static/projects/curlew-galley.json', 'utf8'));
  if (!read.ok) throw new Error('the demo cannot be read');
  // the run alone: its ends are the pair
  const project = { ...read.value, pieces: read.value.pieces.slice(0, 1) };
  const understanding = understandProject(project);
  const [shared] = understanding.groups
    .flatMap(({ blanks }) => blanks)
    .filter(({ parts }) => parts.some(({ outline }) => outline));
  expect(shared).toBeDefined();
  const id = shared?.id ?? '';
  const source = { project, understanding, planned: [], routed: [], fonts: nodeFonts() };
  const titles = drawPages(source).templates.map(({ title }) => title);
  expect(titles.filter((title) => title.startsWith(`${id} template, page `)).length).toBeGreaterThan(1);
  const { files } = writeRouterFiles({ ...source, blocked: new Map() });
  const paths = files.map(({ path }) => path);
  const name = `pair-${id.replace('/', '-')}`;
  expect(paths).toContain(`router/${name}.dxf`);
  expect(paths).toContain(`router/${name}.svg`);
}, 60_000);
