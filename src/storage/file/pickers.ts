/** A file the browser lets us write (File System Access; not in every browser). */
export interface WritableFile {
  readonly createWritable: () => Promise<{
    readonly write: (content: Blob) => Promise<void>;
    readonly close: () => Promise<void>;
    readonly abort: () => Promise<void>;
  }>;
}

interface PickerTypes {
  readonly types: readonly { readonly accept: Readonly<Record<string, readonly string[]>> }[];
}

/** What this browser can do with files. */
export interface FileHost {
  readonly showSaveFilePicker?: (
    options: PickerTypes & { readonly suggestedName: string },
  ) => Promise<WritableFile>;
  readonly document: Document;
}

/** True when the user closed the picker without choosing. */
export function isCancelled(reason: unknown): boolean {
  return reason instanceof DOMException && reason.name === 'AbortError';
}
