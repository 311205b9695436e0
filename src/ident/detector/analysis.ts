import { lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { listenedTo } from './listened.ts';
import type { Listened } from './listened.ts';
import { identLogPrior } from './occurrences.ts';
import { spectrogramOf } from './spectrogram.ts';
import { evidenceAt, keyedTotal, likeliestAt, marksOfReading, readTone } from './tone-reading.ts';
import type { ToneReading } from './tone-reading.ts';
import { tonesIn } from './tone-search.ts';
import { withoutMarks } from './without-marks.ts';

/** An ident that may have been keyed, with the evidence for it. */
export interface Candidate {
  readonly key: IdentKey;
  /** Evidence and prior together, nats, against nothing keyed at all. */
  readonly score: number;
}

/** What is keyed in a recording, before any ident is weighed. */
export interface Keyed {
  readonly readings: readonly ToneReading[];
  /** Whether a second station is keyed beside the first one, on a tone of its own. */
  readonly hasOther: boolean;
}

/** What a recording holds. */
export interface Analysis extends Keyed {
  /** The likeliest first. */
  readonly candidates: readonly Candidate[];
}

/** A tone this much weaker than the other one is only the click of its keying. */
const FAINTEST = 0.06;

/** Reads the tones that may be keyed. */
export function keyedIn(listened: Listened): Keyed {
  const all = readingsOf(listened);
  const bands = (['vor', 'dme'] as const).flatMap((band) => inBand(all, band).slice(0, 1));
  const loudest = Math.max(0, ...bands.map(({ meanAmplitude }) => meanAmplitude));
  const readings = bands.filter(({ meanAmplitude }) => meanAmplitude > FAINTEST * loudest);
  // Beside a tone that is only a click there are other clicks.
  const hasOther = readings.some((first) => isAnotherBeside(listened, first));
  return { readings, hasOther };
}

/** Weighs which idents a recording may hold. `asked`: idents that are looked at in any case. */
export function analyse(keyed: Keyed, asked: readonly IdentKey[]): Analysis {
  const { readings } = keyed;
  const keys = new Set([...asked, ...readings.flatMap(likeliestAt)]);
  const candidates = [...keys].map((key) => ({
    key,
    score:
      readings.reduce((sum, reading) => sum + evidenceAt(reading, key), 0) +
      identLogPrior(lettersOfKey(key).length),
  }));
  return { ...keyed, candidates: candidates.sort((a, b) => b.score - a.score) };
}

/** A tone is as good as read when an ident explains so much there, nats. */
const WELL_READ = 100;

/** The tones that may be keyed, read; when one of them is well read, others that do not look keyed are not. */
function readingsOf(listened: Listened): ToneReading[] {
  const tones = tonesIn(listened.coarse, 2);
  const likely = [...tones].sort((a, b) => b.score - a.score);
  const readings: ToneReading[] = [];
  for (const tone of likely) {
    const isWellRead = readings.some(({ score }) => score > WELL_READ);
    const isSecond = readings.some((other) => other.tone.band === tone.band);
    if (isWellRead && tone.score < (isSecond ? OTHER_SEARCH : -3)) continue;
    readings.push(...[readTone(listened, tone)].filter((each) => each !== null));
  }
  return readings;
}

/** The readings of one band, the one that is most likely the ident's tone first. */
function inBand(all: readonly ToneReading[], band: 'vor' | 'dme'): ToneReading[] {
  const here = all.filter((reading) => reading.tone.band === band);
  const loudest = Math.max(0, ...here.map(({ meanAmplitude }) => meanAmplitude));
  // The sidebands of a keyed tone are keyed as well: the tone itself is the louder one.
  const worth = (each: ToneReading) => each.score * (each.meanAmplitude / loudest) ** 2;
  return here.sort((a, b) => worth(b) - worth(a));
}

/** How loud a second tone must be beside the first one to be another station's. */
const OTHER_LEVEL = 0.52;

/** How much it must look keyed, nats, and beside the first one. */
const OTHER_SEARCH = 90;
const OTHER_SHARE = 0.3;

/** How much of the evidence for the first one there must be for it: in a voice a few dots can be found. */
const OTHER_TOTAL = 0.6;
const OTHER_LEAST = 60;

/**
 * Whether, without the marks of the ident read at a tone, another one is keyed in the same band.
 *
 * Taken away first, because a keyed tone has sidebands that are keyed as well, and two tones a few hertz
 * apart look like one.
 */
function isAnotherBeside(listened: Listened, first: ToneReading): boolean {
  if (first.score <= 0 || keyedTotal(first) < OTHER_LEAST) return false;
  const stream = withoutMarks(listened.stream, first.frames, marksOfReading(first));
  const least = Math.max(OTHER_SEARCH, OTHER_SHARE * first.tone.score);
  const rest = spectrogramOf(stream, 0.4, 0.1, 512);
  const tone = tonesIn(rest, 1).find(({ band }) => band === first.tone.band);
  if (tone === undefined || tone.score <= least) return false;
  const other = readTone(listenedTo(stream), tone);
  if (other === null || other.meanAmplitude < OTHER_LEVEL * first.meanAmplitude) return false;
  return keyedTotal(other) > Math.max(OTHER_LEAST, OTHER_TOTAL * keyedTotal(first));
}
