import { fail, succeed, type Problem, type Result } from '#core/problems';
import type { Project } from '#core/project';
import type { IDBPDatabase } from 'idb';

import type { Head, StoreSchema, Version } from './schema.ts';

/** Reads the text of a project's file. */
export type ReadText = (text: string) => Result<Project>;

/** A project as it was stored. */
export interface StoredProject extends Head {
  readonly project: Project;
}

/**
 * The latest state of a project that can be read; a finding says so when it is not the last one saved. A state saved by a
 * newer Joggle is not passed over: that fails, so that nothing older is put in its place.
 */
export async function loadVersion(
  database: IDBPDatabase<StoreSchema>,
  id: string,
  read: ReadText,
): Promise<Result<StoredProject>> {
  const look = database.transaction(['heads', 'versions'], 'readonly');
  const head = await look.objectStore('heads').get(id);
  const range = IDBKeyRange.bound([id, -Infinity], [id, Infinity]);
  const versions = await look.objectStore('versions').getAll(range);
  await look.done;
  if (!head || versions.length === 0) return fail(notStored(id));
  const faults: Problem[] = [];
  for (const version of versions.toReversed()) {
    const project = read(version.text);
    if (project.ok)
      return succeed({ ...head, project: project.value }, [
        ...faults.slice(0, 1).map((fault) => fellBack(head, version, fault)),
        ...project.problems,
      ]);
    faults.push(...project.problems);
    if (project.problems.some((problem) => problem.code === 'newer-version')) break;
  }
  return fail(...faults);
}

function notStored(id: string): Problem {
  return {
    severity: 'stop',
    code: 'not-stored',
    about: id,
    message: `There is no project "${id}" in this browser.`,
    remedy: 'Open it from its file, or choose another.',
  };
}

function fellBack(head: Head, version: Version, fault: Problem): Problem {
  return {
    severity: 'warn',
    code: 'older-state',
    about: head.id,
    message: `The last state of "${head.name}" cannot be read (${fault.message}) Opened is the one saved at ${version.savedAt}.`,
    remedy: 'Look whether the last changes are missing and enter them again.',
  };
}
