import { resolve } from '$app/paths';
import { readProject } from '#formats/json';
import type { Project } from '#core/project';

/** The name the demo comes with; a project of another name is the user's own. */
const demoName = 'Curlew';

/** The demo project, from the app's own files. Throws when the build lacks it or it cannot be read: our mistake. */
export async function fetchDemo(): Promise<Project> {
  const response = await fetch(`${resolve('/')}projects/curlew.json`);
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
