import { fail, succeed, type Problem, type Result } from '#core/problems';

import { toFileName } from './file-name.ts';
import { isCancelled, type FileHost, type WritableFile } from './pickers.ts';

/** What to save: a name without its ending, the ending, its kind and its content. */
export interface FileToSave {
  readonly name: string;
  /** As `json`, without the point. */
  readonly ending: string;
  /** MIME type, as `application/json`. */
  readonly type: string;
  readonly content: BlobPart;
}

/**
 * Saves a file where the user wants it, or into the downloads where the browser cannot ask. Gives how it went; fails with
 * a finding when the disk refuses.
 */
export async function saveAsFile(
  file: FileToSave,
  host: FileHost = window,
): Promise<Result<'saved' | 'downloaded' | 'cancelled'>> {
  const name = toFileName(file.name, file.ending);
  const content = new Blob([file.content], { type: file.type });
  try {
    if (!host.showSaveFilePicker) return succeed(download(name, content, host.document));
    const target = await host.showSaveFilePicker({
      suggestedName: name,
      types: [{ accept: { [file.type]: [`.${file.ending}`] } }],
    });
    await write(target, content);
    return succeed('saved');
  } catch (reason) {
    if (isCancelled(reason)) return succeed('cancelled');
    return fail(notSaved(name, reason));
  }
}

/** The browser writes to the side and puts it in place on closing; what fails before leaves the old file. */
async function write(target: WritableFile, content: Blob): Promise<void> {
  const stream = await target.createWritable();
  try {
    await stream.write(content);
  } catch (reason) {
    await stream.abort();
    throw reason;
  }
  await stream.close();
}

function download(name: string, content: Blob, document: Document): 'downloaded' {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has its own hold on the content once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return 'downloaded';
}

function notSaved(name: string, reason: unknown): Problem {
  const detail = reason instanceof Error ? reason.name : 'unknown';
  return {
    severity: 'stop',
    code: 'file-not-saved',
    about: name,
    message: `"${name}" could not be written (${detail}).`,
    remedy: 'Choose another folder, or free some space, and save again.',
  };
}
