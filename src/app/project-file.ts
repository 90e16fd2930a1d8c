import type { Result } from '#core/problems';
import type { Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';
import { readTextFile, saveAsFile } from '#storage/file';

/** The project in a file the user chose; fails with every fault and where it is. */
export async function openProjectFile(file: File): Promise<Result<Project>> {
  const opened = await readTextFile(file);
  return opened.ok ? readProject(opened.value.text) : opened;
}

/** Hands the project to the user as a file. */
export function saveProjectFile(project: Project): ReturnType<typeof saveAsFile> {
  return saveAsFile({
    name: project.name,
    ending: 'json',
    type: 'application/json',
    content: writeJson(project),
  });
}
