import { lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import type { Listened } from './listened.ts';
import { identLogPrior } from './occurrences.ts';
import { evidenceAt, likeliestAt, readTone } from './tone-reading.ts';
import type { ToneReading } from './tone-reading.ts';
import { tonesIn } from './tone-search.ts';

/** An ident that may have been keyed, with the evidence for it. */
export interface Candidate {
  readonly key: IdentKey;
  /** Evidence and prior together, nats, against nothing keyed at all. */
  readonly score: number;
}

/** What a recording holds. */
export interface Analysis {
  readonly readings: readonly ToneReading[];
  /** Whether a second station is keyed beside the first one, on a tone of its own. */
  readonly hasOther: boolean;
  /** The likeliest first. */
  readonly candidates: readonly Candidate[];
}

/** A tone this much weaker than the other one is only the click of its keying. */
const FAINTEST = 0.06;

/** Works out which idents a recording may hold. `asked`: idents that are looked at in any case. */
export function analyse(listened: Listened, asked: readonly IdentKey[]): Analysis {
  const all = readingsOf(listened);
  const ranked = (['vor', 'dme'] as const).map((band) => inBand(all, band));
  const bands = ranked.flatMap((here) => here.slice(0, 1));
  const hasOther = ranked.some(([first, ...others]) =>
    others.some((other) => first !== undefined && isOther(first, other)),
  );
  const loudest = Math.max(0, ...bands.map(({ meanAmplitude }) => meanAmplitude));
  const readings = bands.filter(({ meanAmplitude }) => meanAmplitude > FAINTEST * loudest);
  const keys = new Set([...asked, ...readings.flatMap(likeliestAt)]);
  const candidates = [...keys].map((key) => ({
    key,
    score:
      readings.reduce((sum, reading) => sum + evidenceAt(reading, key), 0) +
      identLogPrior(lettersOfKey(key).length),
  }));
  return { readings, hasOther, candidates: candidates.sort((a, b) => b.score - a.score) };
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

/** How much it must look keyed, nats, and beside the first one: its sidebands hardly do. */
const OTHER_SEARCH = 90;
const OTHER_SHARE = 0.3;

function isOther(first: ToneReading, other: ToneReading): boolean {
  const isApart = Math.abs(first.tone.offsetHz - other.tone.offsetHz) > 7;
  const isLoud = other.meanAmplitude > OTHER_LEVEL * first.meanAmplitude;
  const least = Math.max(OTHER_SEARCH, OTHER_SHARE * first.tone.score);
  return first.score > 0 && isApart && isLoud && other.tone.score > least;
}
