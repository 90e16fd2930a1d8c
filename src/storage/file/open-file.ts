import { fail, succeed, type Problem, type Result } from '#core/problems';

import type { FileHost } from './pickers.ts';

/** A text file the user chose. */
export interface OpenedFile {
  readonly name: string;
  readonly text: string;
}

/** No file of ours comes near this, bytes. */
const largest = 50e6;

/** Asks for a file and reads it as text; null when the user chose none. Fails with a finding when it cannot be read. */
export async function openFile(
  accept = '.json',
  host: FileHost = window,
): Promise<Result<OpenedFile | null>> {
  const file = await chooseFile(accept, host.document);
  return file ? readTextFile(file) : succeed(null);
}

/** The text of a file, from the picker or dropped on the page; fails when it is too large or no text. */
export async function readTextFile(file: File): Promise<Result<OpenedFile>> {
  if (file.size > largest)
    return fail(
      notOpened(
        file.name,
        `it has ${Math.round(file.size / 1e6)} MB, more than any project`,
        'Choose a project file.',
      ),
    );
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
    return succeed({ name: file.name, text });
  } catch (reason) {
    const detail = reason instanceof TypeError ? 'it is not a text in UTF-8' : 'the device did not give it';
    return fail(notOpened(file.name, detail, 'Choose another file, or an older copy of it.'));
  }
}

function chooseFile(accept: string, document: Document): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });
}

function notOpened(name: string, detail: string, remedy: string): Problem {
  return {
    severity: 'stop',
    code: 'file-not-opened',
    about: name,
    message: `"${name}" could not be opened: ${detail}.`,
    remedy,
  };
}
