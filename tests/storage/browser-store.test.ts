import 'fake-indexeddb/auto';

import fc from 'fast-check';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

import type { Result } from '#core/problems';
import { newProject, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';
import { openStore, type ProjectStore } from '#storage/browser';

import { generateProject } from '../support/generate-project.ts';

let count = 0;
let database = '';
let clock = 0;

beforeEach(() => {
  count += 1;
  database = `test-${count}`;
  clock = 0;
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

async function open(): Promise<ProjectStore> {
  const now = () => {
    clock += 1;
    return new Date(clock * 60_000).toISOString();
  };
  return valueOf(await openStore(readProject, { database, now }));
}

function save(project: Project, basedOn: number, id = 'curlew') {
  return { id, name: project.name, text: writeJson(project), basedOn };
}

describe('projects in the browser', () => {
  test('always: what was stored comes back', async () => {
    const store = await open();
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: 1e6 }), async (seed) => {
        const project = generateProject(seed);
        const head = valueOf(await store.save(save(project, 0, `seed-${seed}`)));
        const loaded = valueOf(await store.load(`seed-${seed}`));
        expect(loaded.project).toEqual(project);
        expect(loaded.revision).toBe(head.revision);
      }),
      { numRuns: 25 },
    );
  });

  test('every save is a new revision, but for a text that is stored already', async () => {
    const store = await open();
    const project = newProject('Curlew');
    expect(valueOf(await store.save(save(project, 0))).revision).toBe(1);
    expect(valueOf(await store.save(save(project, 1))).revision).toBe(1);
    expect(valueOf(await store.save(save({ ...project, units: 'inch' }, 1))).revision).toBe(2);
  });

  test('the last twenty states are kept and can be read', async () => {
    const store = await open();
    for (let step = 0; step < 30; step += 1) {
      const head = valueOf(await store.save(save(newProject(`State ${step}`), step)));
      expect(head.revision).toBe(step + 1);
    }
    const kept = valueOf(await store.listVersions('curlew'));
    expect(kept.map((version) => version.name)).toEqual(
      Array.from({ length: 20 }, (_, index) => `State ${29 - index}`),
    );
    const oldest = valueOf(await store.readVersion('curlew', 11));
    expect(oldest && valueOf(readProject(oldest)).name).toBe('State 10');
    expect(valueOf(await store.readVersion('curlew', 10))).toBeNull();
  });

  test('a second tab cannot overwrite a newer state, and nothing of its work is lost', async () => {
    const [first, second] = [await open(), await open()];
    await first.save(save(newProject('Curlew'), 0));
    valueOf(await first.save(save({ ...newProject('Curlew'), units: 'inch' }, 1)));

    const refused = await second.save(save({ ...newProject('Curlew'), paper: 'Letter' }, 1));
    expect(refused.ok).toBe(false);
    expect(refused.problems[0]).toMatchObject({ code: 'changed-elsewhere', severity: 'warn' });

    expect(valueOf(await first.load('curlew')).project).toMatchObject({ units: 'inch', paper: 'A4' });
    const copy = refused.problems[0]?.about ?? '';
    expect(valueOf(await first.load(copy)).project).toMatchObject({ units: 'mm', paper: 'Letter' });

    await second.save(save({ ...newProject('Curlew'), paper: 'Letter', currency: 'GBP' }, 1));
    expect(valueOf(await first.load(copy)).project.currency).toBe('GBP');
    expect(valueOf(await first.list())).toHaveLength(2);
  });

  test('the project saved last comes first in the list', async () => {
    const store = await open();
    for (const name of ['Wren', 'Teal', 'Curlew']) await store.save(save(newProject(name), 0, name));
    await store.save(save(newProject('Wren again'), 1, 'Wren'));
    expect(valueOf(await store.list()).map((head) => head.name)).toEqual(['Wren again', 'Curlew', 'Teal']);
  });

  test('a removed project is gone with all its states', async () => {
    const store = await open();
    await store.save(save(newProject('Curlew'), 0));
    await store.save(save(newProject('Curlews'), 0, 'curlews'));
    valueOf(await store.remove('curlew'));
    expect(await store.load('curlew')).toMatchObject({ ok: false, problems: [{ code: 'not-stored' }] });
    expect(valueOf(await store.listVersions('curlew'))).toEqual([]);
    expect(valueOf(await store.load('curlews')).name).toBe('Curlews');
  });

  test('when the last state cannot be read the one before is opened, and it is said', async () => {
    const store = await open();
    await store.save(save(newProject('Curlew'), 0));
    await store.save({ id: 'curlew', name: 'Curlew', text: '{"version": 1,', basedOn: 1 });
    const loaded = await store.load('curlew');
    expect(valueOf(loaded).project.name).toBe('Curlew');
    expect(valueOf(loaded).revision).toBe(2);
    expect(loaded.problems[0]).toMatchObject({ code: 'older-state', severity: 'warn' });
  });

  test('a state of a newer Joggle is not passed over for an older one', async () => {
    const store = await open();
    await store.save(save(newProject('Curlew'), 0));
    await store.save({ id: 'curlew', name: 'Curlew', text: '{"version": 9}', basedOn: 1 });
    expect(await store.load('curlew')).toMatchObject({ ok: false, problems: [{ code: 'newer-version' }] });
  });
});

describe('a browser that refuses', () => {
  test('without storage the store does not open, with a sentence', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const refused = await openStore(readProject, { database });
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'storage-refused', severity: 'warn' }] });
    expect(refused.problems[0]?.remedy).toMatch(/file/);
  });

  test('a private window that throws is a finding', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('no', 'SecurityError');
    });
    expect(await openStore(readProject, { database })).toMatchObject({
      ok: false,
      problems: [{ code: 'storage-refused' }],
    });
  });

  test('a full disk leaves the state before as it was', async () => {
    const store = await open();
    await store.save(save(newProject('Curlew'), 0));
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    const refused = await store.save(save({ ...newProject('Curlew'), units: 'inch' }, 1));
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'storage-full', severity: 'stop' }] });
    vi.restoreAllMocks();
    expect(valueOf(await store.load('curlew')).project.units).toBe('mm');
    expect(valueOf(await store.save(save({ ...newProject('Curlew'), units: 'inch' }, 1))).revision).toBe(2);
  });

  test('a database of a newer Joggle is left alone', async () => {
    (await openDB(database, 7)).close();
    expect(await openStore(readProject, { database })).toMatchObject({
      ok: false,
      problems: [{ code: 'storage-newer' }],
    });
  });

  test('a newer page that brings the database up to date is not kept waiting', async () => {
    const store = await open();
    await store.save(save(newProject('Curlew'), 0));
    const newer = await openDB(database, 2);
    newer.close();
    expect(await store.save(save({ ...newProject('Curlew'), units: 'inch' }, 1))).toMatchObject({
      ok: false,
      problems: [{ code: 'storage-closed' }],
    });
  });

  test('a closed store says so instead of throwing', async () => {
    const store = await open();
    store.close();
    expect(await store.list()).toMatchObject({ ok: false, problems: [{ code: 'storage-closed' }] });
    expect((await store.save(save(newProject('Curlew'), 0))).ok).toBe(false);
  });
});
