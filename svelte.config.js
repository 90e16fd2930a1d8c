import { readdirSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import adapterStatic from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** Lists every built file, so that the service worker also keeps what only a worker imports. */
function withPrecache(adapter) {
  return {
    ...adapter,
    async adapt(builder) {
      await adapter.adapt(builder);
      const files = readdirSync('build', { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && !/service-worker\.js$|precache\.json$/.test(entry.name))
        .map((entry) => '/' + relative('build', join(entry.parentPath, entry.name)).split(sep).join('/'))
        .sort();
      writeFileSync(join('build', 'precache.json'), JSON.stringify(files));
    },
  };
}

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  kit: {
    adapter: withPrecache(
      adapterStatic({ pages: 'build', assets: 'build', fallback: '404.html', strict: true }),
    ),
    files: { serviceWorker: 'src/service-worker' },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self', 'wasm-unsafe-eval'],
        'style-src': ['self', 'unsafe-inline'],
        'img-src': ['self', 'data:', 'blob:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'worker-src': ['self', 'blob:'],
        'object-src': ['none'],
        'base-uri': ['self'],
      },
    },
  },
};
