import { assert } from '../base/assert.ts';
import { timelineLengthS } from './timeline.ts';
import type { Mark } from './timeline.ts';
import { IDENT_LIMITS } from './limits.ts';

/** How keyed marks are turned into sound; what is left out is as usual. */
export interface Tone {
  readonly toneHz?: number;
  readonly sampleRateHz?: number;
  /** Quiet before the first mark and after the last, seconds; a word gap at 7 words a minute. */
  readonly leadS?: number;
  readonly tailS?: number;
  /** Amplitude of the held tone, 0 to 1. */
  readonly amplitude?: number;
}

/**
 * Length of the rise and of the fall of each mark. With 12 ms all energy farther than 200 Hz from the
 * tone is more than 50 dB down, so keying does not click; and the shortest dot (60 ms) keeps its top.
 */
const EDGE_S = 0.012;

/** A listener, or a decoder, needs quiet at both ends to know that no letter is missing. */
const QUIET_S = 1.2;

/**
 * The sound of keyed marks: mono samples, -1 to 1, at `sampleRateHz` (16000 when left out).
 *
 * One unbroken sine of `toneHz` under an envelope with raised-cosine edges. The edges are centred on
 * the start and the end of each mark, so that a mark measured at half height has its exact length.
 * `leadS` and `tailS` are made at least half an edge long. No marks: only the quiet.
 */
export function keyedSamples(marks: readonly Mark[], tone: Tone = {}): Float32Array<ArrayBuffer> {
  const toneHz = tone.toneHz ?? IDENT_LIMITS.toneHz.usual;
  const rateHz = tone.sampleRateHz ?? IDENT_LIMITS.sampleRateHz.usual;
  assert(toneHz < rateHz / 2, `a tone of ${toneHz} Hz does not fit ${rateHz} samples a second`);
  const amplitude = tone.amplitude ?? 0.7;
  const leadS = Math.max(tone.leadS ?? QUIET_S, EDGE_S / 2);
  const tailS = Math.max(tone.tailS ?? QUIET_S, EDGE_S / 2);
  const lengthS = leadS + timelineLengthS(marks) + tailS;
  const samples = new Float32Array(Math.ceil(lengthS * rateHz));
  for (const mark of marks) {
    const startS = leadS + mark.startS;
    const first = Math.max(0, Math.ceil((startS - EDGE_S / 2) * rateHz));
    const end = Math.min(samples.length, (startS + mark.durationS + EDGE_S / 2) * rateHz);
    for (let index = first; index < end; index += 1) {
      const atS = index / rateHz;
      const level = envelope(atS - startS, mark.durationS);
      samples[index] = amplitude * level * Math.sin(2 * Math.PI * toneHz * atS);
    }
  }
  return samples;
}

/** Height of a mark's envelope, 0 to 1, at a time from its start; one half at its start and end. */
function envelope(fromStartS: number, durationS: number): number {
  return edge(fromStartS) * edge(durationS - fromStartS);
}

function edge(fromMiddleS: number): number {
  const along = Math.min(1, Math.max(0, fromMiddleS / EDGE_S + 0.5));
  return (1 - Math.cos(Math.PI * along)) / 2;
}
