import { fail, succeed, type Result } from '#core/problems';
import { openDB, type IDBPDatabase } from 'idb';

import { loadVersion, type ReadText, type StoredProject } from './load-version.ts';
import { attempt, refused } from './refusals.ts';
import { saveVersion, type Save } from './save-version.ts';
import { databaseVersion, type Head, type StoreSchema } from './schema.ts';

/** The projects in this browser. No act throws: what the browser refuses comes back as a finding. */
export interface ProjectStore {
  /** All projects, the one saved last first. */
  readonly list: () => Promise<Result<readonly Head[]>>;
  /** The latest readable state. */
  readonly load: (id: string) => Promise<Result<StoredProject>>;
  /** Stores a state as the next revision; `changed-elsewhere` when another tab went on. */
  readonly save: (save: Save) => Promise<Result<Head>>;
  /** The states still kept, the latest first, without their text. */
  readonly listVersions: (id: string) => Promise<Result<readonly Head[]>>;
  /** The text of one state; null when it is no longer kept. */
  readonly readVersion: (id: string, revision: number) => Promise<Result<string | null>>;
  /** Removes a project with all its states. */
  readonly remove: (id: string) => Promise<Result<void>>;
  readonly close: () => void;
}

export interface StoreOptions {
  readonly database?: string;
  /** The time now, ISO 8601. */
  readonly now?: () => string;
}

/** Opens the projects of this browser; fails with a finding where it keeps nothing. `read` reads the text of a file. */
export async function openStore(read: ReadText, options: StoreOptions = {}): Promise<Result<ProjectStore>> {
  if (typeof indexedDB === 'undefined') return fail(refused('no IndexedDB'));
  const opened = await attempt(() => openDatabase(options.database ?? 'joggle'), true);
  if (!opened.ok) return opened;
  const now = options.now ?? (() => new Date().toISOString());
  return succeed(makeStore(opened.value, read, now));
}

function openDatabase(name: string): Promise<IDBPDatabase<StoreSchema>> {
  return openDB<StoreSchema>(name, databaseVersion, {
    upgrade(database) {
      database.createObjectStore('heads', { keyPath: 'id' });
      database.createObjectStore('versions', { keyPath: ['id', 'revision'] });
    },
    // A newer page in another tab must be able to bring the database up to date.
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase | null)?.close();
    },
  });
}

function makeStore(database: IDBPDatabase<StoreSchema>, read: ReadText, now: () => string): ProjectStore {
  return {
    list: () => attempt(() => listHeads(database)),
    load: async (id) => flatten(await attempt(() => loadVersion(database, id, read))),
    save: async (save) => flatten(await attempt(() => saveVersion(database, save, now()))),
    listVersions: (id) => attempt(() => listVersions(database, id)),
    readVersion: (id, revision) =>
      attempt(async () => (await database.get('versions', [id, revision]))?.text ?? null),
    remove: (id) => attempt(() => removeProject(database, id)),
    close: () => database.close(),
  };
}

async function listHeads(database: IDBPDatabase<StoreSchema>): Promise<readonly Head[]> {
  const heads = await database.getAll('heads');
  return heads.toSorted((a, b) => b.savedAt.localeCompare(a.savedAt));
}

async function listVersions(database: IDBPDatabase<StoreSchema>, id: string): Promise<readonly Head[]> {
  const versions = await database.getAll('versions', allOf(id));
  return versions.map(({ name, revision, savedAt }) => ({ id, name, revision, savedAt })).toReversed();
}

async function removeProject(database: IDBPDatabase<StoreSchema>, id: string): Promise<void> {
  const change = database.transaction(['heads', 'versions'], 'readwrite');
  await Promise.all([
    change.objectStore('heads').delete(id),
    change.objectStore('versions').delete(allOf(id)),
    change.done,
  ]);
}

function allOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, -Infinity], [id, Infinity]);
}

function flatten<T>(result: Result<Result<T>>): Result<T> {
  return result.ok ? result.value : result;
}
