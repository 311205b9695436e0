import { defineConfig } from 'vite';
import { serviceWorkerFiles } from './offline/vite-plugin.ts';

const here = (file: string): string => new URL(file, import.meta.url).pathname;

/** The core alone: packages have folders of that name too. */
const SRC = here('../src/').replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/**
 * Few files: what is always needed together is one, since each file costs a request, its headers, and what a
 * compressor cannot know of the others. The reader of sentences stays apart: it can wait.
 */
const CHUNKS = [
  {
    name: 'frame',
    test: /node_modules\/(@?preact|idb|ulid)|client\/(demo|settings|store\/(flight-store|log-disk|server-calls|stamp-event)|sound\/gesture|parts\/(route|clock|later|today))|src\/base\/|\0/,
  },
  {
    name: 'core',
    test: new RegExp(
      [
        'node_modules/(geographiclib-geodesic|magvar)',
        `${SRC}(?!speech|ident|station/library|leg/route|flight/files)`,
        `${SRC}speech/(numbers|phonetic)`,
        'client/(store(?!/practice)|voice/speaker|parts/(actions|figures))',
      ].join('|'),
    ),
  },
];

export default defineConfig({
  build: {
    outDir: '../build/page',
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    // The security policy allows nothing inline.
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: here('index.html'), 'service-worker': here('offline/service-worker.ts') },
      output: {
        // Its name decides what it governs, so it stays the same and in the root.
        entryFileNames: (chunk) =>
          chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js',
        codeSplitting: { groups: CHUNKS },
      },
    },
  },
  worker: { format: 'es' },
  plugins: [serviceWorkerFiles()],
});
