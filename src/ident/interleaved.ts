import { identTimeline, timelineLengthS, wordGapS } from './timeline.ts';
import type { Mark } from './timeline.ts';
import { IDENT_LIMITS } from './limits.ts';

/** One keying of a tone on the receiver's audio, with whose it is. */
export interface StationMark extends Mark {
  readonly toneHz: number;
  readonly of: 'vor' | 'dme';
  /** Which ident of the sound it belongs to, VOR and DME counted together, from 0. */
  readonly identIndex: number;
}

/** How a station keys its ident; what is left out is as usual. */
export interface StationKeying {
  /** What is keyed: a VOR with its DME, the VOR alone, or the DME alone because the VOR's is missing. */
  readonly keyed?: 'vor-and-dme' | 'vor' | 'dme';
  /** Idents of the VOR for one of its DME. */
  readonly vorForOneDme?: 3 | 4;
  readonly wpm?: number;
  readonly vorToneHz?: number;
  readonly dmeToneHz?: number;
  /** How many parts of the interval are sounded; the DME has the last part of each interval. */
  readonly parts?: number;
}

/** In which a DME keys its ident once. */
const SHARED_INTERVAL_S = 40;

/** Tone of a DME's ident. *Source:* AIM 1-1-7 f. */
const DME_TONE_HZ = 1350;

const LEAST_REST_S = 2;

/**
 * When which tone is on, for the ident of a station as it comes round: three or four times the VOR's on its
 * tone, then once the DME's on a higher one.
 *
 * Seconds, the first mark of the first part at 0; `dme` alone begins with the quiet of the VOR's parts. An ident
 * that is too long for its part makes all parts longer: two seconds and a word gap always stand between idents.
 * *Source:* ICAO Annex 10 volume I, 3.5.3.6.4 b: an interval of 40 s in 4 or more equal parts, the DME's ident
 * in one of them only. Three or four: AIM 1-1-7 f.
 */
export function stationTimeline(ident: string, keying: StationKeying = {}): StationMark[] {
  const wpm = keying.wpm ?? IDENT_LIMITS.wpm.usual;
  const keyed = keying.keyed ?? 'vor-and-dme';
  const inInterval = (keying.vorForOneDme ?? 3) + 1;
  const once = identTimeline(ident, { wpm });
  const neededS = timelineLengthS(once) + Math.max(wordGapS(wpm), LEAST_REST_S);
  const partS = Math.max(SHARED_INTERVAL_S / inInterval, neededS);
  const parts = Array.from({ length: keying.parts ?? inInterval }, (_, part) => {
    const isDmes = keyed !== 'vor' && part % inInterval === inInterval - 1;
    return { startS: part * partS, of: isDmes ? ('dme' as const) : ('vor' as const) };
  }).filter(({ of }) => keyed !== 'dme' || of === 'dme');
  const toneHz = {
    vor: keying.vorToneHz ?? IDENT_LIMITS.toneHz.usual,
    dme: keying.dmeToneHz ?? DME_TONE_HZ,
  };
  return parts.flatMap(({ startS, of }, identIndex) =>
    once.map((mark) => ({
      ...mark,
      startS: startS + mark.startS,
      of,
      toneHz: toneHz[of],
      identIndex,
    })),
  );
}
