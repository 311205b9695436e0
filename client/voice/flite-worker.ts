import { ConsoleStdout, File, OpenFile, PreopenDirectory, WASI } from '@bjorn3/browser_wasi_shim';
import { fetchKept } from './fetch-kept.ts';
import type { FromFlite, ToFlite } from './flite-messages.ts';

// The speech program is a command: it is started anew for each sentence, with the words as an
// argument, and leaves a WAV file in a folder that exists only in memory.

/** Length of flite.wasm 0.1.1, for the progress where the server sends it packed. */
const WASM_BYTES = 21_530_456;

/** The voice that was understood best in noise. */
const VOICE = 'rms';

const SOUND_FILE = 'sentence.wav';

const page = globalThis as unknown as {
  postMessage(message: FromFlite, transfer?: Transferable[]): void;
  onmessage: ((event: MessageEvent<ToFlite>) => void) | null;
};

let program: WebAssembly.Module | null = null;

const reasonOf = (reason: unknown): string =>
  reason instanceof Error ? reason.message : String(reason);

async function load(wasmUrl: string): Promise<void> {
  const bytes = await fetchKept(wasmUrl, WASM_BYTES, (fraction) => {
    page.postMessage({ kind: 'progress', fraction });
  });
  program = await WebAssembly.compile(bytes);
}

interface Sound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly rateHz: number;
}

/** Reads what flite writes: a 44-byte header, 16-bit mono. */
function readSound(wav: Uint8Array): Sound {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  const header = 44;
  const samples = new Float32Array(Math.max(0, (wav.byteLength - header) >> 1));
  for (let at = 0; at < samples.length; at += 1) {
    samples[at] = view.getInt16(header + 2 * at, true) / 32_768;
  }
  return { samples, rateHz: view.getUint32(24, true) };
}

async function speak(sentence: string, stretch: number): Promise<Sound> {
  if (program === null) throw new Error('the voice is not loaded');
  const folder = new PreopenDirectory('.', new Map());
  const told: string[] = [];
  const note = ConsoleStdout.lineBuffered((line) => told.push(line));
  const wasi = new WASI(
    ['flite', '-voice', VOICE, '--setf', `duration_stretch=${stretch.toFixed(2)}`].concat([
      '-t',
      sentence,
      '-o',
      SOUND_FILE,
    ]),
    [],
    [new OpenFile(new File([])), note, note, folder],
    { debug: false },
  );
  const instance = await WebAssembly.instantiate(program, {
    wasi_snapshot_preview1: wasi.wasiImport,
  });
  const code = wasi.start(instance as Parameters<WASI['start']>[0]);
  const file = folder.dir.contents.get(SOUND_FILE);
  if (code !== 0 || !(file instanceof File) || file.data.byteLength <= 44) {
    throw new Error(told.join(' ') || `it ended with ${code}`);
  }
  return readSound(file.data);
}

page.onmessage = ({ data }): void => {
  if (data.kind === 'load') {
    load(data.wasmUrl).then(
      () => {
        page.postMessage({ kind: 'ready' });
      },
      (reason: unknown) => {
        page.postMessage({ kind: 'not-loaded', reason: reasonOf(reason) });
      },
    );
    return;
  }
  const { id } = data;
  speak(data.sentence, data.stretch).then(
    ({ samples, rateHz }) => {
      page.postMessage({ kind: 'samples', id, samples, rateHz }, [samples.buffer]);
    },
    (reason: unknown) => {
      page.postMessage({ kind: 'not-spoken', id, reason: reasonOf(reason) });
    },
  );
};
