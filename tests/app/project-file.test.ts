import { expect, test } from 'vitest';
import { newProject } from '#core/project';
import { writeJson } from '#formats/json';
import { openProjectFile } from '#app/project-file.ts';

const fileOf = (name: string, text: string): File => new File([text], name);

test('a project saved as a file is read back the same', async () => {
  const project = newProject('Curlew');
  const opened = await openProjectFile(fileOf('Curlew.json', writeJson(project)));
  expect(opened).toMatchObject({ ok: true, value: project });
});

test.each([
  ['hull.DXF', 'From a drawing'],
  ['hull.svg', 'From a drawing'],
  ['readings.csv', 'Readings from a table'],
  ['everything.zip', 'project.json'],
])('of %s, which holds no project, it is said where it belongs', async (name, where) => {
  const opened = await openProjectFile(fileOf(name, 'x'));
  expect(opened.ok).toBe(false);
  expect(opened.problems[0]?.remedy).toContain(where);
});

test('a plan of ours is told apart from a project in one sentence', async () => {
  const opened = await openProjectFile(fileOf('plan.json', '{"version": 1, "groups": [], "parts": []}'));
  expect(opened).toMatchObject({ ok: false, problems: [{ code: 'not-a-project' }] });
});
