import { version } from '$service-worker';

/** Keeps every built file, so that after the first visit nothing more is asked of the network. */
const worker = self as unknown as ServiceWorkerGlobalScope;
const cacheName = `joggle-${version}`;

worker.addEventListener('install', (event) => event.waitUntil(keepEverything()));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));
worker.addEventListener('message', (event) => {
  if (event.data === 'take over') void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin) return;
  event.respondWith(answer(event.request));
});

/** The build lists its own files: `$service-worker` leaves out what only a worker imports, as the wasm of the solver. */
async function keepEverything(): Promise<void> {
  const list = await fetch(inScope('/precache.json'), { cache: 'no-cache' });
  if (!list.ok) throw new Error(`the list of files is missing: ${list.status}`);
  const paths = (await list.json()) as readonly string[];
  const cache = await caches.open(cacheName);
  await Promise.all(paths.map((path) => keepFile(cache, path)));
}

/** Pages are kept under the address of their folder; the copy is plain, as a redirected answer may not serve a page. */
async function keepFile(cache: Cache, path: string): Promise<void> {
  const url = inScope(path.replace(/\/index\.html$/, '/'));
  const response = await fetch(url, { cache: 'no-cache' });
  if (!response.ok && !path.endsWith('/404.html')) throw new Error(`${path}: ${response.status}`);
  await cache.put(url, plainCopy(response, await response.blob()));
}

function plainCopy(response: Response, body: Blob): Response {
  const type = response.headers.get('content-type');
  return new Response(body, { status: 200, headers: type === null ? {} : { 'content-type': type } });
}

async function takeOver(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith('joggle-') && name !== cacheName);
  await Promise.all(old.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(keptAddress(request), { ignoreVary: true, ignoreSearch: true });
  if (kept) return kept;
  try {
    return await fetch(request);
  } catch (error) {
    const shell =
      request.mode === 'navigate' && (await cache.match(inScope('/404.html'), { ignoreVary: true }));
    if (shell) return shell;
    throw error;
  }
}

/** The address under which a page is kept, with or without its closing slash or file name. */
function keptAddress(request: Request): string {
  const url = new URL(request.url);
  if (request.mode !== 'navigate') return url.href;
  url.pathname = url.pathname.replace(/\/(index\.html)?$/, '') + '/';
  return url.href;
}

function inScope(path: string): string {
  return new URL(path.replace(/^\//, ''), worker.registration.scope).href;
}
