import { fail, type Result } from '#core/problems';
import type { Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';
import { readTextFile, saveAsFile } from '#storage/file';

/** Where files that hold no project are read, by their ending. */
const elsewhere: Readonly<Record<string, string>> = {
  dxf: 'Drawings come in on the Site page: Add a shape, From a drawing.',
  svg: 'Drawings come in on the Site page: Add a shape, From a drawing.',
  csv: 'Readings come in on the Site page, under the readings of a shape: Readings from a table.',
  zip: 'Unpack it, and open project.json out of it.',
};

/** The project in a file the user chose or dropped; fails with every fault and where it is, or with where the file belongs. */
export async function openProjectFile(file: File): Promise<Result<Project>> {
  const remedy = elsewhere[file.name.slice(file.name.lastIndexOf('.') + 1).toLowerCase()];
  if (remedy !== undefined)
    return fail({
      severity: 'stop',
      code: 'not-a-project',
      about: file.name,
      message: `"${file.name}" does not hold a project.`,
      remedy,
    });
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
