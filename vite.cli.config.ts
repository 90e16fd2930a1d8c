import { defineConfig } from 'vite';

/** The command line: two files for Node, itself and its second thread, with what they share; packages left outside. */
export default defineConfig({
  plugins: [
    {
      name: 'second-thread',
      buildStart() {
        this.emitFile({ type: 'chunk', id: 'src/solver/threads/thread.ts', fileName: 'joggle-thread.js' });
      },
    },
  ],
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist',
    target: 'node20',
    emptyOutDir: true,
    copyPublicDir: false,
    rolldownOptions: {
      output: {
        entryFileNames: 'joggle.js',
        chunkFileNames: 'joggle-[name].js',
        banner: (chunk) => (chunk.isEntry && chunk.fileName === 'joggle.js' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
});
