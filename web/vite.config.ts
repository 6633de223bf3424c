import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { firstViewModules } from './build/first-view.ts';
import { packWorker } from './build/pack-worker.ts';

const isFirstView = firstViewModules();

export default defineConfig({
  // Elements are made by way of the reader's language.
  plugins: [react({ jsxImportSource: '#words' }), packWorker()],
  resolve: {
    alias: [
      {
        find: /^#words\/(jsx(-dev)?-runtime)$/,
        replacement: '/src/languages/$1.ts',
      },
    ],
  },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    // three is 530 kB and cannot be split; it is fetched only when a solid is opened.
    chunkSizeWarningLimit: 600,
    // The names of all that later screens import would stand in the first script and do not pack: 2 kB. Each screen names its own imports, one
    // step later; styles must be there before it is drawn.
    modulePreload: {
      resolveDependencies: (_file, deps, { hostType }) =>
        hostType === 'js' ? deps.filter((name) => name.endsWith('.css')) : deps,
    },
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { debugName: 'first view', name: (id, graph) => (isFirstView(id, graph) ? 'first' : null) },
          ],
        },
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:4170' } },
});
