import type { Plugin } from 'vite';

/** Fetched only when needed, too large to be part of opening the page; fonts in the packing of older browsers. */
const ON_DEMAND = /\.wasm$|\.woff$|keyed-tone|\.map$|^service-worker\.js$/;

/** A short fingerprint of a text (FNV-1a, 32 bits). */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  }
  return hash.toString(36);
}

/** Tells the service worker at build time which files make up the page. */
export function serviceWorkerFiles(): Plugin {
  return {
    name: 'service-worker-files',
    apply: 'build',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const worker = bundle['service-worker.js'];
      if (worker?.type !== 'chunk') return;
      const names = Object.keys(bundle)
        .filter((name) => !ON_DEMAND.test(name) && name !== 'index.html')
        .sort();
      const page = bundle['index.html'];
      const html = page?.type === 'asset' ? String(page.source) : '';
      const files = JSON.stringify(names.map((name) => `./${name}`));
      const edition = JSON.stringify(fingerprint(files + html));
      worker.code = worker.code.replaceAll('PAGE_FILES', files).replaceAll('PAGE_EDITION', edition);
    },
  };
}
