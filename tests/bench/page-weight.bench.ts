// Compressed bytes of the page's entry: index.html, what it asks for, and what those import at once.
// What the entry then loads by itself is in page-load.bench.ts, measured in a browser.
import { existsSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { report } from './report.ts';

const PAGE = path.join(import.meta.dirname, '..', '..', 'build', 'page');

/** Links of index.html that the browser follows at once, preloaded fonts included. */
const LINK = /<link\b[^>]*\brel="(?:stylesheet|modulepreload|preload|icon)"[^>]*>/g;
const HREF = /\bhref="([^"]+)"/;
const SCRIPT = /<script\b[^>]*\bsrc="([^"]+)"/g;
/** Static imports of a built module: `from"./x.js"` and `import"./x.js"`, not `import("./x.js")`. */
const IMPORT = /(?:\bfrom|\bimport)\s*["'](\.\/[^"']+\.js)["']/g;

function resolved(reference: string, from: string): string {
  return reference.startsWith('/')
    ? path.join(PAGE, reference)
    : path.join(path.dirname(from), reference);
}

function referencesOf(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  if (file.endsWith('.html')) {
    const links = [...text.matchAll(LINK)].map(([link]) => HREF.exec(link)?.[1] ?? '');
    const scripts = [...text.matchAll(SCRIPT)].map((match) => match[1] ?? '');
    return [...links, ...scripts].filter((each) => each !== '');
  }
  return file.endsWith('.js') ? [...text.matchAll(IMPORT)].map((match) => match[1] ?? '') : [];
}

function collect(file: string, seen: Set<string>): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const reference of referencesOf(file)) collect(resolved(reference, file), seen);
  return seen;
}

/** As the server sends it: the .br beside the file, else the file as it is (fonts are compressed already). */
function sentBytes(file: string): number {
  return statSync(existsSync(`${file}.br`) ? `${file}.br` : file).size;
}

function gzippedBytes(file: string): number {
  return file.endsWith('.woff2') ? statSync(file).size : gzipSync(readFileSync(file)).length;
}

const files = [...collect(path.join(PAGE, 'index.html'), new Set())];
const kB = (bytes: (file: string) => number): number =>
  files.reduce((sum, file) => sum + bytes(file), 0) / 1000;

report({ name: 'page entry alone, as sent (brotli)', value: kB(sentBytes), unit: 'kB' });
report({ name: 'page entry alone, gzip', value: kB(gzippedBytes), unit: 'kB' });
