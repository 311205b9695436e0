import { impairedSamples, type Impaired } from '../../src/ident/impaired.ts';
import { stationTimeline, type StationMark } from '../../src/ident/interleaved.ts';
import type { Noise } from '../../src/ident/noise-bed.ts';
import { unevenMarks } from '../../src/ident/uneven.ts';

/** What the pilot has asked to hear. */
export interface HearDraft {
  readonly ident: string;
  readonly keyed: 'vor-and-dme' | 'vor' | 'dme';
  /** Once, or as it comes round: 40 seconds. */
  readonly long: 'once' | 'round';
  readonly wpm: number;
  readonly vorToneHz: number;
  readonly noise: Noise | 'none';
  /** The tone over the noise, decibels. */
  readonly toneOverNoiseDb: number;
  readonly isFading: boolean;
  readonly hasVoice: boolean;
  /** The tone over the voice, decibels. */
  readonly toneOverVoiceDb: number;
  readonly isUneven: boolean;
}

/** As a station sounds when nothing disturbs it. */
export const CLEAN: HearDraft = {
  ident: 'QEV',
  keyed: 'vor-and-dme',
  long: 'round',
  wpm: 7,
  vorToneHz: 1020,
  noise: 'none',
  toneOverNoiseDb: 6,
  isFading: false,
  hasVoice: false,
  toneOverVoiceDb: 0,
  isUneven: false,
};

/** The sound, and when its marks are in it. */
export interface HearSound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** Seconds from the start of the samples. */
  readonly marks: readonly StationMark[];
}

/** Samples a second: what is heard of an ident lies below 4 kHz. */
export const HEAR_RATE_HZ = 16_000;

const LEAD_S = 0.6;
const TAIL_S = 1.2;
const FADING_DB = 8;

/** When which tone is on; `seed` decides how an uneven hand keys. */
export function hearMarks(draft: HearDraft, seed: number): readonly StationMark[] {
  const { ident, keyed, long, wpm, vorToneHz } = draft;
  // The DME alone has the last part of a round: of one part nothing would be heard.
  const parts = long === 'once' && keyed !== 'dme' ? { parts: 1 } : {};
  const marks = stationTimeline(ident, { keyed, wpm, vorToneHz, ...parts });
  return draft.isUneven ? unevenMarks(marks, { seed }) : marks;
}

/** The sound of some marks with all that is asked to lie over it; `seed` decides the noise. */
export function hearSound(
  marks: readonly StationMark[],
  draft: HearDraft,
  voice: Float32Array | null,
  seed: number,
): HearSound {
  const samples = impairedSamples(marks, {
    sampleRateHz: HEAR_RATE_HZ,
    seed,
    leadS: LEAD_S,
    tailS: TAIL_S,
    ...disturbed(draft, voice),
  });
  return {
    samples,
    sampleRateHz: HEAR_RATE_HZ,
    marks: marks.map((mark) => ({ ...mark, startS: mark.startS + LEAD_S })),
  };
}

function disturbed(draft: HearDraft, voice: Float32Array | null): Impaired {
  const { noise, toneOverNoiseDb, isFading, toneOverVoiceDb } = draft;
  return {
    ...(noise === 'none' ? {} : { noise: { of: noise, toneOverDb: toneOverNoiseDb } }),
    ...(isFading ? { fadingDb: FADING_DB } : {}),
    ...(voice === null ? {} : { voice: { samples: voice, toneOverDb: toneOverVoiceDb } }),
  };
}

/** Which mark sounds at a moment: its place in its ident, and whose it is; null between marks. */
export function markAt(
  marks: readonly StationMark[],
  nowS: number,
): { readonly index: number; readonly of: 'vor' | 'dme' } | null {
  const at = marks.findLastIndex((mark) => mark.startS <= nowS);
  const mark = marks[at];
  if (mark === undefined || nowS >= mark.startS + mark.durationS) return null;
  const first = marks.findIndex((each) => each.identIndex === mark.identIndex);
  return { index: at - first, of: mark.of };
}
