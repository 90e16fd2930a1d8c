import type { DBSchema } from 'idb';

/** The latest state of a project and which revision it is. */
export interface Head {
  readonly id: string;
  readonly name: string;
  /** Counts up with every save. */
  readonly revision: number;
  /** When it was saved, ISO 8601. */
  readonly savedAt: string;
}

/** A state that was saved, as the text of its file. */
export interface Version extends Head {
  readonly text: string;
}

export interface StoreSchema extends DBSchema {
  heads: { key: string; value: Head };
  versions: { key: [string, number]; value: Version };
}

/** Version of the database, not of the document in it. */
export const databaseVersion = 1;

/** States of a project that are kept, the latest included. */
export const versionsKept = 20;
