// Puts a .br and a .gz beside each file of the page that shrinks by it; the server sends whichever fits.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const SHRINKS = /\.(js|css|html|svg|json|wasm|webmanifest|txt)$/;
const LEAST_BYTES = 1000;
const LARGE_BYTES = 1_000_000;

export function compressPage(pageDir) {
  for (const entry of readdirSync(pageDir, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !SHRINKS.test(entry.name)) continue;
    const file = path.join(entry.parentPath, entry.name);
    const bytes = readFileSync(file);
    if (bytes.length < LEAST_BYTES) continue;
    // The last few per cent of a large file would take minutes.
    const quality = bytes.length > LARGE_BYTES ? 9 : 11;
    const brotli = brotliCompressSync(bytes, {
      params: { [constants.BROTLI_PARAM_QUALITY]: quality },
    });
    writeFileSync(`${file}.br`, brotli);
    writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) compressPage('build/page');
