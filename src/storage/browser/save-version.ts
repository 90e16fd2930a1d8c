import { fail, succeed, type Result } from '#core/problems';
import type { IDBPDatabase } from 'idb';

import { versionsKept, type Head, type StoreSchema, type Version } from './schema.ts';

/** A state to keep. */
export interface Save {
  readonly id: string;
  readonly name: string;
  /** The text of its file. */
  readonly text: string;
  /** The revision this state grew from; 0 for a project not stored yet. */
  readonly basedOn: number;
}

/**
 * Stores a state as the next revision and gives its number; a text that is stored already makes none. All in one
 * transaction, the new before the oldest is dropped, so that a crash leaves one or the other. When the project went on
 * elsewhere since `basedOn`, it is not touched: the state is kept as a project of its own and a finding says so.
 */
export async function saveVersion(
  database: IDBPDatabase<StoreSchema>,
  save: Save,
  savedAt: string,
): Promise<Result<Head>> {
  const change = database.transaction(['heads', 'versions'], 'readwrite', { durability: 'strict' });
  const heads = change.objectStore('heads');
  const versions = change.objectStore('versions');
  const former = await heads.get(save.id);
  const latest = former && (await versions.get([save.id, former.revision]));
  if (former && latest?.text === save.text) {
    await change.done;
    return succeed(former);
  }
  if (former && former.revision !== save.basedOn) {
    const copy = { ...save, id: `${save.id}-copy-${save.basedOn}`, name: `${save.name} (other tab)` };
    const before = await heads.get(copy.id);
    const kept = toVersion(copy, (before?.revision ?? 0) + 1, savedAt);
    await Promise.all([versions.put(kept), heads.put(toHead(kept)), dropOldest(versions, kept), change.done]);
    return fail(changedElsewhere(former, kept));
  }
  const version = toVersion(save, (former?.revision ?? save.basedOn) + 1, savedAt);
  await Promise.all([
    versions.put(version),
    heads.put(toHead(version)),
    dropOldest(versions, version),
    change.done,
  ]);
  return succeed(toHead(version));
}

function toVersion(save: Save, revision: number, savedAt: string): Version {
  return { id: save.id, name: save.name, revision, savedAt, text: save.text };
}

function toHead({ id, name, revision, savedAt }: Version): Head {
  return { id, name, revision, savedAt };
}

function dropOldest(
  versions: { delete: (range: IDBKeyRange) => Promise<void> },
  latest: Version,
): Promise<void> {
  const newest = latest.revision - versionsKept;
  return versions.delete(IDBKeyRange.bound([latest.id, -Infinity], [latest.id, newest]));
}

function changedElsewhere(former: Head, copy: Version) {
  return {
    severity: 'warn' as const,
    code: 'changed-elsewhere',
    about: copy.id,
    message: `"${former.name}" was changed in another tab or window at ${former.savedAt}, so this one did not overwrite it. What stands here is kept as "${copy.name}".`,
    remedy: 'Load the newer state here, or go on with the copy.',
  };
}
