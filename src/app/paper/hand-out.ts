import { strToU8, zipSync } from 'fflate';
import type { OutputFile } from '#core/pipeline';
import { typeOf } from './files.ts';

/** Hands a file to the browser to keep. */
export function handOut(file: OutputFile): void {
  const url = URL.createObjectURL(asBlob(file));
  const link = document.createElement('a');
  link.href = url;
  link.download = file.path.replaceAll('/', '-');
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000); // the browser may still be reading it
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

export function asBlob(file: OutputFile): Blob {
  const content = typeof file.content === 'string' ? file.content : new Uint8Array(file.content);
  return new Blob([content], { type: typeOf(file.path) });
}
