import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';

import { fail, succeed, type Problem, type Result } from '#core/problems';

/** A file to write: text or bytes under a relative path. */
interface NewFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What a plan consists of: a folder holding nothing else is one of ours and may be replaced. */
const ours: readonly RegExp[] = [
  /^(parts|shopping)\.csv$/,
  /^(summary|trips)\.txt$/,
  /^plan\.json$/,
  /^(checklists|cutting|templates|labels|part-sheets)\.pdf$/,
  /^cutting$/,
  /^cutting\/[^/]+\.svg$/,
  /^router$/,
  /^router\/[^/]+\.(dxf|svg)$/,
];

/** Why a folder must not be written: it is a file, or holds things that no plan consists of. Empty when it may be. */
export function checkFolder(folder: string): readonly Problem[] {
  if (!existsSync(folder)) return [];
  if (!lstatSync(folder).isDirectory())
    return [refusal(folder, `"${folder}" is not a folder.`, 'Name another folder with -o.')];
  const strangers = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => !ours.some((pattern) => pattern.test(name)));
  if (strangers.length === 0) return [];
  const shown = strangers.sort().slice(0, 3).join(', ');
  return [
    refusal(
      folder,
      `"${folder}" holds ${strangers.length === 1 ? 'something' : `${strangers.length} things`} that no plan consists of: ${shown}${strangers.length > 3 ? ', …' : ''}. A plan replaces its whole folder, so it is left as it is.`,
      'Name another folder with -o, or take those things out.',
    ),
  ];
}

/**
 * Writes all files, or none: into a new folder beside it, which then takes the place of the old one. An old one is replaced
 * only when it is empty or a former plan; fails with a sentence otherwise, or when the disk refuses.
 */
export function writeFolder(folder: string, files: readonly NewFile[]): Result<readonly string[]> {
  const refused = checkFolder(folder);
  if (refused.length > 0) return fail(...refused);
  let fresh: string | null = null;
  try {
    mkdirSync(dirname(folder), { recursive: true });
    fresh = mkdtempSync(join(dirname(folder), `.${basename(folder)}-`));
    for (const file of files) {
      const path = join(fresh, ...file.path.split('/'));
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, file.content);
    }
    swapIn(fresh, folder);
    return succeed(files.map((file) => file.path));
  } catch (error) {
    if (fresh !== null) rmSync(fresh, { recursive: true, force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : null;
    if (code === null) throw error;
    return fail(
      refusal(
        folder,
        `"${folder}" cannot be written: ${reasons[code] ?? code}. Nothing has been changed.`,
        'Name another folder with -o.',
      ),
    );
  }
}

function swapIn(fresh: string, folder: string): void {
  if (!existsSync(folder)) {
    renameSync(fresh, folder);
    return;
  }
  const old = mkdtempSync(join(dirname(folder), `.${basename(folder)}-old-`));
  renameSync(folder, join(old, 'plan'));
  try {
    renameSync(fresh, folder);
  } catch (error) {
    renameSync(join(old, 'plan'), folder);
    rmSync(old, { recursive: true, force: true });
    throw error;
  }
  rmSync(old, { recursive: true, force: true });
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'writing there is not allowed',
  EPERM: 'writing there is not allowed',
  EROFS: 'it lies on a disk that can only be read',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of its path is a file',
  EEXIST: 'a part of its path is a file',
};

function refusal(about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code: 'folder-refused', about, message, remedy };
}
