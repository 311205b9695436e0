import { defineConfig } from 'vite';
import { serviceWorkerFiles } from './offline/vite-plugin.ts';

const here = (file: string): string => new URL(file, import.meta.url).pathname;

export default defineConfig({
  build: {
    outDir: '../build/page',
    emptyOutDir: true,
    target: 'es2022',
    // The security policy allows nothing inline.
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: here('index.html'), 'service-worker': here('offline/service-worker.ts') },
      output: {
        // Its name decides what it governs, so it stays the same and in the root.
        entryFileNames: (chunk) =>
          chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js',
      },
    },
  },
  worker: { format: 'es' },
  plugins: [serviceWorkerFiles()],
});
