import { defineConfig } from 'vite';

/** The command line: one file for Node, packages left outside. */
export default defineConfig({
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist',
    target: 'node20',
    emptyOutDir: true,
    copyPublicDir: false,
    rolldownOptions: { output: { entryFileNames: 'joggle.js', banner: '#!/usr/bin/env node' } },
  },
});
