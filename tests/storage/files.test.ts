import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readTextFile, saveAsFile, toFileName, type FileHost } from '#storage/file';

const project = { name: 'Curlew', ending: 'json', type: 'application/json', content: '{}' };

/** A browser whose picker writes into `written`, or fails with `fault`. */
function fakeHost(fault: { readonly at: 'pick' | 'write'; readonly name: string } | null) {
  const written: Blob[] = [];
  let isAborted = false;
  const host: FileHost = {
    document: {} as Document,
    showSaveFilePicker: async () => {
      if (fault?.at === 'pick') throw new DOMException('no', fault.name);
      return {
        createWritable: async () => ({
          write: async (content) => {
            if (fault) throw new DOMException('no', fault.name);
            written.push(content);
          },
          close: async () => undefined,
          abort: async () => {
            isAborted = true;
          },
        }),
      };
    },
  };
  return { host, written, isAborted: () => isAborted };
}

describe('names of files', () => {
  test.each([
    ['Curlew', 'Curlew.json'],
    ['Curlew: door/frame', 'Curlew- door-frame.json'],
    ['../../etc/passwd', 'etc-passwd.json'],
    ['CON', 'CON-.json'],
    ['  ', 'joggle.json'],
    ['...', 'joggle.json'],
    ['Péniche Évangéline', 'Péniche Évangéline.json'],
  ])('%j becomes %j', (name, file) => {
    expect(toFileName(name, 'json')).toBe(file);
  });

  test('always: a name is short, visible, without a path and never empty', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (name) => {
        const file = toFileName(name, 'json');
        expect(file).toMatch(/^[^/\\:*?"<>|\p{C}]+\.json$/u);
        expect(file).not.toMatch(/^[.\s]/);
        expect([...file].length).toBeLessThanOrEqual(86);
      }),
    );
  });
});

describe('saving as a file', () => {
  test('the chosen file gets the content', async () => {
    const { host, written } = fakeHost(null);
    expect(await saveAsFile(project, host)).toMatchObject({ ok: true, value: 'saved' });
    expect(await written[0]?.text()).toBe('{}');
    expect(written[0]?.type).toBe('application/json');
  });

  test('closing the picker is no fault', async () => {
    const { host } = fakeHost({ at: 'pick', name: 'AbortError' });
    expect(await saveAsFile(project, host)).toMatchObject({ ok: true, value: 'cancelled' });
  });

  test('a full disk leaves the old file and says so', async () => {
    const { host, isAborted } = fakeHost({ at: 'write', name: 'QuotaExceededError' });
    expect(await saveAsFile(project, host)).toMatchObject({
      ok: false,
      problems: [{ code: 'file-not-saved' }],
    });
    expect(isAborted()).toBe(true);
  });
});

describe('opening a file', () => {
  test('its text and name are given', async () => {
    const file = new File(['{"version": 1}'], 'curlew.json');
    expect(await readTextFile(file)).toMatchObject({
      ok: true,
      value: { name: 'curlew.json', text: '{"version": 1}' },
    });
  });

  test('a picture is no text, and it is said', async () => {
    const file = new File([new Uint8Array([0x89, 0x50, 0xff, 0xfe])], 'photo.json');
    const opened = await readTextFile(file);
    expect(opened).toMatchObject({ ok: false, problems: [{ code: 'file-not-opened', about: 'photo.json' }] });
    expect(opened.problems[0]?.message).toContain('UTF-8');
  });

  test('a file larger than any project is not read', async () => {
    const file = new File(['x'], 'huge.json');
    Object.defineProperty(file, 'size', { value: 60e6 });
    expect((await readTextFile(file)).problems[0]?.message).toContain('60 MB');
  });
});
