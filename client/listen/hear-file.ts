import { confirmIdent, decodeIdent } from '../../src/ident/decode.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import type { ListeningView } from '../../src/ident/listening.ts';
import { readWav } from '../../src/ident/read-wav.ts';
import type { Recording } from '../../src/ident/recording.ts';
import { attend } from './attend.ts';
import { BLOCK_SAMPLES } from './block-pool.ts';
import type { FromEar } from './ear-messages.ts';
import { LONGEST_S } from './file-limits.ts';

/** How much is heard at a time, seconds; the page is told after each. */
const STRETCH_S = 1;

/** Reads a recording and listens to all of it; the page hears how far it has come. */
export async function hearFile(
  file: Blob,
  expected: string | null,
  say: (message: FromEar) => void,
): Promise<void> {
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    say({ kind: 'refused', problem: GONE });
    return;
  }
  const read = readWav(bytes);
  if (!read.ok) {
    say({ kind: 'refused', problem: refusal(read.problem) });
    return;
  }
  const { samples, sampleRateHz, isCutShort } = read.value;
  say({ kind: 'read', lengthS: samples.length / sampleRateHz, isCutShort });
  const heard = samples.subarray(0, LONGEST_S * sampleRateHz);
  const recording = { samples: heard, sampleRateHz, isCutShort };
  const view = hearAll(recording, expected, say);
  say({ kind: 'over', view: { ...view, ...allTogether(recording, expected) } });
}

/** What all of a recording together says: surer than what was known at any moment of it. */
function allTogether(recording: Recording, expected: string | null): Partial<ListeningView> {
  const confirmation = expected === null ? null : confirmIdent(recording, expected);
  const heard = confirmation?.detail ?? decodeIdent(recording);
  const { letters, repeats, snrDb, toneHz } = heard;
  return { letters, repeats, snrDb, toneHz, confirmation, heard };
}

const GONE = 'The recording cannot be opened: has it been moved or changed? Choose it again.';

function refusal(problems: readonly { readonly expected: string; readonly got: string }[]): string {
  const what = problems.map(({ expected, got }) => `expected ${expected}, got ${got}`).join('; ');
  return `This recording cannot be read: ${what}. Save it as a WAV file and choose it again.`;
}

function hearAll(
  { samples, sampleRateHz }: Recording,
  expected: string | null,
  say: (message: FromEar) => void,
): ListeningView {
  const frontEnd = startFrontEnd(sampleRateHz);
  const attention = attend(expected, frontEnd.taps.outRateHz, say);
  const stretch = Math.round(STRETCH_S * sampleRateHz);
  const output = new Float32Array(2 * (Math.ceil(stretch / frontEnd.taps.every) + 1));
  const block = new Float32Array(2 * BLOCK_SAMPLES);
  let filled = 0;
  for (let from = 0; from < samples.length; from += stretch) {
    const to = Math.min(samples.length, from + stretch);
    const count = 2 * frontEndStep(frontEnd, samples.subarray(from, to), output);
    for (const value of output.subarray(0, count)) {
      block[filled] = value;
      filled += 1;
      if (filled < block.length) continue;
      attention.take(block);
      filled = 0;
    }
    attention.tell(to / samples.length);
  }
  return attention.view();
}
