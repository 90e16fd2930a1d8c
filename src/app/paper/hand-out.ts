import { strToU8, zipSync } from 'fflate';
import type { OutputFile } from '#core/pipeline';
import { saveAsFile } from '#storage/file';
import { typeOf } from './files.ts';

/** Saves one file where the user wants it; fails with a finding when the disk refuses. */
export function handOut(file: OutputFile): ReturnType<typeof saveAsFile> {
  const point = file.path.lastIndexOf('.');
  const content = typeof file.content === 'string' ? file.content : new Uint8Array(file.content);
  return saveAsFile({
    name: file.path.slice(0, point),
    ending: file.path.slice(point + 1),
    type: typeOf(file.path),
    content,
  });
}

/** All files in one, under their paths. The date inside is fixed: the same files give the same bytes. */
export function packFiles(name: string, files: readonly OutputFile[]): OutputFile {
  const entries = files.map((file) => [
    file.path,
    typeof file.content === 'string' ? strToU8(file.content) : file.content,
  ]);
  const content = zipSync(Object.fromEntries(entries) as Record<string, Uint8Array>, {
    mtime: new Date(2026, 0, 1),
  });
  return { path: `${name}.zip`, content };
}
