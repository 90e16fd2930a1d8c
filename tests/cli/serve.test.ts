import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveFolder } from '#cli/serve';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const folder = join(mkdtempSync(join(tmpdir(), 'joggle-')), 'build');
let server: Server;
let port = 0;

beforeAll(async () => {
  mkdirSync(join(folder, 'bench'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), 'the board');
  writeFileSync(join(folder, 'bench', 'index.html'), 'the bench');
  writeFileSync(join(folder, 'glpk.wasm'), 'wasm');
  writeFileSync(join(folder, '..', 'secret.txt'), 'not for the net');
  const serving = await serveFolder(folder, 43_170);
  if (!serving) throw new Error('no free port');
  ({ server, port } = serving);
});
afterAll(() => void server.close());

/** A raw request: unlike `fetch` it leaves dots in the path alone. */
function get(path: string, method = 'GET'): Promise<{ status: number; type: string; body: string }> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method }, (response) => {
      let body = '';
      response.on('data', (chunk) => (body += String(chunk)));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, type: response.headers['content-type'] ?? '', body }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('the server of `joggle open`', () => {
  test('pages, folders and wasm come with their types', async () => {
    expect(await get('/')).toEqual({ status: 200, type: 'text/html; charset=utf-8', body: 'the board' });
    expect((await get('/bench/')).body).toBe('the bench');
    expect((await get('/bench?x=1')).body).toBe('the bench');
    expect((await get('/glpk.wasm')).type).toBe('application/wasm');
  });

  test('nothing outside the folder is given', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/bench/../../secret.txt',
      '//secret.txt',
    ])
      expect((await get(path)).body).not.toContain('not for the net');
    expect((await get('/%00')).status).toBe(404);
    expect((await get('/%')).status).toBe(404);
  });

  test('a missing page is 404, writing is refused, HEAD has no body', async () => {
    expect((await get('/nowhere')).status).toBe(404);
    expect((await get('/', 'POST')).status).toBe(405);
    expect(await get('/', 'HEAD')).toMatchObject({ status: 200, body: '' });
  });

  test('where a port is taken the next free one is used', async () => {
    const second = await serveFolder(folder, port);
    expect(second?.port).toBeGreaterThan(port);
    second?.server.close();
  });
});
