import { look } from '../../src/ident/detector/look.ts';
import { streamOf } from '../../src/ident/detector/stream.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import type { ListeningView } from '../../src/ident/listening.ts';
import { readWav } from '../../src/ident/read-wav.ts';
import type { Recording } from '../../src/ident/recording.ts';
import { BLOCK_SAMPLES } from './block-pool.ts';
import type { FromEar, LevelStretch } from './ear-messages.ts';
import { LONGEST_S } from './file-limits.ts';
import { identLevelDb } from './tone-level.ts';

/** Share of the work that is done when the levels are there; the rest is the reading of the ident. */
const LEVELS_SHARE = 0.4;

const GONE = 'The recording cannot be opened: has it been moved or changed? Choose it again.';

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
  hear({ samples: heard, sampleRateHz, isCutShort }, expected, say);
}

function refusal(problems: readonly { readonly expected: string; readonly got: string }[]): string {
  const what = problems.map(({ expected, got }) => `expected ${expected}, got ${got}`).join('; ');
  return `This recording cannot be read: ${what}. Save it as a WAV file and choose it again.`;
}

/** The picture first, then all of it together: surer than what is known at any moment of it. */
function hear(
  recording: Recording,
  expected: string | null,
  say: (message: FromEar) => void,
): void {
  say({ kind: 'progress', fraction: 0.1, levels: levelsOf(recording, null) });
  say({ kind: 'progress', fraction: LEVELS_SHARE, levels: null });
  const looked = look(streamOf(recording), { expected, known: undefined, startS: 0 });
  const { heard, confirmation, marks } = looked;
  const { letters, repeats, snrDb, toneHz } = heard;
  const atS = recording.samples.length / recording.sampleRateHz;
  const read = { letters, repeats, snrDb, toneHz, heard, confirmation, marks };
  const view: ListeningView = { atS, toneLevelDb: null, ...read };
  say({ kind: 'over', view, levels: levelsOf(recording, toneHz) });
}

function levelsOf({ samples, sampleRateHz }: Recording, toneHz: number | null): LevelStretch {
  const frontEnd = startFrontEnd(sampleRateHz);
  const { every, outRateHz } = frontEnd.taps;
  const quantum = BLOCK_SAMPLES * every;
  const block = new Float32Array(2 * (BLOCK_SAMPLES + 1));
  const levelsDb: number[] = [];
  for (let from = 0; from < samples.length; from += quantum) {
    const count = frontEndStep(frontEnd, samples.subarray(from, from + quantum), block);
    levelsDb.push(identLevelDb(block.subarray(0, 2 * count), outRateHz, toneHz));
  }
  return { fromS: 0, stepS: BLOCK_SAMPLES / outRateHz, levelsDb };
}
