import { defineConfig, type Rolldown } from 'vite';
import { serviceWorkerFiles } from './offline/vite-plugin.ts';
import { packagesAsModules } from './packages-as-modules.ts';

const here = (file: string): string => new URL(file, import.meta.url).pathname;

/** The core alone: packages have folders of that name too. */
const SRC = here('../src/').replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const FLY_PAGE = here('pages/fly-page.tsx');

type ModuleInfos = Pick<Rolldown.ChunkingContext, 'getModuleInfo'>;

let neededToFly: Set<string> | null = null;

/** Whether the Fly page needs it at once: what only other pages need of the core stays out of its file. */
function isNeededToFly(id: string, modules: ModuleInfos): boolean {
  if (neededToFly === null) {
    neededToFly = new Set([FLY_PAGE]);
    // It grows as it is gone through.
    for (const each of neededToFly)
      for (const imported of modules.getModuleInfo(each)?.importedIds ?? [])
        neededToFly.add(imported);
  }
  return neededToFly.has(id);
}

/**
 * Few files: what is always needed together is one, since each file costs a request, its headers, and what a
 * compressor cannot know of the others. The reader of sentences stays apart: it can wait.
 * What is in the core is not to be imported by `import()`: that makes the Fly page wait for one more file.
 */
const CHUNKS = [
  {
    name: 'frame',
    test: /node_modules\/(@?preact|idb|ulid)|client\/(demo|settings|store\/(flight-store|log-disk|server-calls|stamp-event)|sound\/gesture|parts\/(route|clock|later|today))|src\/base\/|\0/,
  },
  {
    name: (id: string, modules: ModuleInfos) => (isNeededToFly(id, modules) ? 'core' : null),
    test: new RegExp(
      [
        'node_modules/(geographiclib-geodesic|magvar)',
        SRC,
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
  plugins: [packagesAsModules(), serviceWorkerFiles()],
});
