export { toFileName } from './file-name.ts';
export { openFile, readTextFile } from './open-file.ts';
export type { OpenedFile } from './open-file.ts';
export type { FileHost, WritableFile } from './pickers.ts';
export { saveAsFile } from './save-as-file.ts';
export type { FileToSave } from './save-as-file.ts';
