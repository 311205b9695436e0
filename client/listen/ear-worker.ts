import { frontEndTaps } from '../../src/ident/front-end.ts';
import { attend } from './attend.ts';
import type { FromEar, ToEar } from './ear-messages.ts';
import { BROKEN_WORDS } from './ear-words.ts';
import { hearFile } from './hear-file.ts';

const page = globalThis as unknown as {
  postMessage(message: FromEar): void;
  onmessage: ((event: MessageEvent<ToEar>) => void) | null;
};

const say = (message: FromEar): void => {
  page.postMessage(message);
};

const nowS = (): number => performance.now() / 1000;

/** How often the page hears of it: every so many blocks of 32 ms. */
const TELL_EVERY = 3;

page.onmessage = ({ data }): void => {
  if (data.kind === 'file') {
    hearFile(data.file, data.expected, say).catch((reason: unknown) => {
      console.error(reason);
      say({ kind: 'refused', problem: BROKEN_WORDS });
    });
    return;
  }
  const { blocks, sampleRateHz, expected } = data;
  const attention = attend(expected, frontEndTaps(sampleRateHz).outRateHz, say, nowS);
  let count = 0;
  blocks.onmessage = (event: MessageEvent<Float32Array<ArrayBuffer>>): void => {
    attention.take(event.data);
    // Back to the audio thread, to be filled again.
    blocks.postMessage(event.data, [event.data.buffer]);
    count += 1;
    if (count % TELL_EVERY === 0) attention.tell();
  };
};
