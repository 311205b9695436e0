import { parentPort } from 'node:worker_threads';
import { accept } from '../src/base/result.ts';
import { confirmIdent, decodeIdent } from '../src/ident/decode.ts';
import { readWav } from '../src/ident/read-wav.ts';
import type { Heard, Hearing } from './hearing.ts';

/** Longer ones are a mistake: an ident comes round at least every half minute. */
const LONGEST_S = 300;

function hear({ wav, expected, known }: Hearing): Heard {
  const recording = readWav(wav, LONGEST_S);
  if (!recording.ok) return recording;
  return expected === null
    ? accept({ kind: 'decoded', heard: decodeIdent(recording.value, known) })
    : accept({
        kind: 'confirmed',
        confirmation: confirmIdent(recording.value, expected, known),
      });
}

parentPort?.on('message', (hearing: Hearing) => {
  parentPort?.postMessage(hear(hearing));
});
