import { createReadStream, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

/** Ports tried one after the other when the first is taken. */
const portsTried = 20;

/**
 * Serves the files of a folder to this computer only, at the port or the next free one; resolves once it answers, with null
 * when all of them are taken.
 */
export async function serveFolder(
  folder: string,
  port: number,
): Promise<{ readonly server: Server; readonly port: number } | null> {
  for (let tried = port; tried < Math.min(port + portsTried, 65_536); tried += 1) {
    const server = createServer((request, response) => answer(folder, request, response));
    if (await listens(server, tried)) return { server, port: tried };
  }
  return null;
}

function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    });
    server.listen(port, '127.0.0.1', () => resolve(true));
  });
}

function answer(folder: string, request: IncomingMessage, response: ServerResponse): void {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    refuse(response, 405, 'Only reading is possible here.');
    return;
  }
  const file = findFile(folder, request.url ?? '/');
  if (file === null) {
    refuse(response, 404, 'There is no such page.');
    return;
  }
  response.writeHead(200, {
    'content-type': types[extname(file.path).toLowerCase()] ?? 'application/octet-stream',
    'content-length': file.size,
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
  });
  if (request.method === 'HEAD') response.end();
  else
    createReadStream(file.path)
      .on('error', () => response.destroy())
      .pipe(response);
}

/** The file behind an address, never outside the folder; a folder answers with its index page. */
function findFile(folder: string, url: string): { readonly path: string; readonly size: number } | null {
  const path = decodePath(url);
  if (path === null || path.includes('\0')) return null;
  const inside = normalize(join(folder, path));
  if (inside !== folder && !inside.startsWith(folder + sep)) return null;
  for (const candidate of [inside, join(inside, 'index.html'), `${inside.replace(/[/\\]+$/, '')}.html`]) {
    const found = statSync(candidate, { throwIfNoEntry: false });
    if (found?.isFile()) return { path: candidate, size: found.size };
  }
  return null;
}

function decodePath(url: string): string | null {
  try {
    return decodeURIComponent(url.replace(/[?#].*$/, ''));
  } catch {
    return null;
  }
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' });
  response.end(`${text}\n`);
}
