export type { ReadText, StoredProject } from './load-version.ts';
export { openStore } from './open-store.ts';
export type { ProjectStore, StoreOptions } from './open-store.ts';
export type { Save } from './save-version.ts';
export type { Head } from './schema.ts';
