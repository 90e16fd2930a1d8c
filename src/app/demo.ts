import { resolve } from '$app/paths';
import { readProject } from '#formats/json';
import type { Project } from '#core/project';

/** The name the demo comes with; a project of another name is the user's own. */
const demoName = 'Curlew';

/** The demos by the name of their file: a door opening with one wrong reading; a galley against the curved hull. */
export type DemoFile = 'curlew' | 'curlew-galley';

/** A demo project, from the app's own files. Throws when the build lacks it or it cannot be read: our mistake. */
export async function fetchDemo(file: DemoFile = 'curlew'): Promise<Project> {
  const response = await fetch(`${resolve('/')}projects/${file}.json`);
  if (!response.ok) throw new Error(`the demo is missing: ${response.status}`);
  const read = readProject(await response.text());
  if (!read.ok)
    throw new Error(`the demo is faulty: ${read.problems.map((problem) => problem.message).join(' ')}`);
  return read.value;
}

/** Whether this is still the demo. */
export function isDemo(project: Project): boolean {
  return project.name.startsWith(demoName);
}
