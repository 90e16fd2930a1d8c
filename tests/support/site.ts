import { createServer, type Server } from 'node:http';
import { readFile, stat } from 'node:fs/promises';
import { extname, join, normalize } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.webmanifest': 'application/manifest+json',
};

export interface Site {
  readonly origin: string;
  /** Takes the site off the network, open connections included. */
  readonly stop: () => Promise<void>;
}

/** Serves a folder as any static host would, with the `Vary: Origin` that many of them send. */
export async function serveSite(folder: string): Promise<Site> {
  const server = createServer((request, response) => {
    void answer(folder, request.url ?? '/').then(({ status, type, body }) => {
      response.writeHead(status, { 'content-type': type, vary: 'Origin', 'cache-control': 'no-store' });
      response.end(body);
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return { origin: `http://localhost:${address.port}`, stop: () => close(server) };
}

async function answer(folder: string, url: string) {
  const path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
  const file = join(folder, path.endsWith('/') ? `${path}index.html` : path);
  const isThere = await stat(file).then(
    (found) => found.isFile(),
    () => false,
  );
  if (isThere)
    return {
      status: 200,
      type: types[extname(file)] ?? 'application/octet-stream',
      body: await readFile(file),
    };
  return { status: 404, type: 'text/html', body: await readFile(join(folder, '404.html')) };
}

function close(server: Server): Promise<void> {
  server.closeAllConnections();
  return new Promise((done) => server.close(() => done()));
}
