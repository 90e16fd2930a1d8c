import { fail, succeed, type Result } from '#core/problems';

/** Turns a saved document of one version into the next: item 0 goes from version 1 to 2. Pure, and never edited once released. */
export type Migration = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** None yet: version 1 is the first. */
export const migrations: readonly Migration[] = [];

/**
 * A document as read from a file, brought to the newest version (the one after the last of `steps`). Fails with a
 * sentence when it is newer than this program or has no version; its content is not checked here.
 */
export function upgradeProject(document: unknown, steps: readonly Migration[] = migrations): Result<unknown> {
  const newest = steps.length + 1;
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    return fail(
      versionProblem(
        'not-a-project',
        'This file does not hold a project.',
        'Choose a file that was saved as a project.',
      ),
    );
  const version: unknown = 'version' in document ? document.version : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return fail(
      versionProblem(
        'no-version',
        `The project says version ${JSON.stringify(version) ?? 'nothing'}; a whole number from 1 to ${newest} is expected.`,
        'Write "version": 1 at its beginning if it was written by hand.',
      ),
    );
  if (version > newest)
    return fail(
      versionProblem(
        'newer-version',
        `The project was saved by a newer Joggle: its version is ${version}, this one reads up to ${newest}.`,
        'Update this Joggle, or open the file where it was saved; nothing in it has been touched.',
      ),
    );
  return succeed(steps.slice(version - 1).reduce<object>((older, step) => step({ ...older }), document));
}

function versionProblem(code: string, message: string, remedy: string) {
  return { severity: 'stop' as const, code, about: 'version', message, remedy };
}
