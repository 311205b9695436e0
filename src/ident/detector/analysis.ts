import { keyOfLetters, lettersOfKey } from './likely-idents.ts';
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
  /** The likeliest first. */
  readonly candidates: readonly Candidate[];
}

/** A tone this much weaker than the other one is only the click of its keying. */
const FAINTEST = 0.06;

/** Works out which idents a recording may hold. `asked`: idents that are looked at in any case. */
export function analyse(listened: Listened, asked: readonly (readonly number[])[]): Analysis {
  const all = tonesIn(listened.coarse, 2).flatMap((tone) => readTone(listened, tone) ?? []);
  const bands = (['vor', 'dme'] as const).flatMap((band) => {
    const here = all.filter((reading) => reading.tone.band === band);
    const loudest = Math.max(0, ...here.map(({ meanAmplitude }) => meanAmplitude));
    // The sidebands of a keyed tone are keyed as well: the tone itself is the louder one.
    const worth = (each: ToneReading) => each.score * (each.meanAmplitude / loudest) ** 2;
    return here.sort((a, b) => worth(b) - worth(a)).slice(0, 1);
  });
  const loudest = Math.max(0, ...bands.map(({ meanAmplitude }) => meanAmplitude));
  const readings = bands.filter(({ meanAmplitude }) => meanAmplitude > FAINTEST * loudest);
  const keys = new Set([...asked.map(keyOfLetters), ...readings.flatMap(likeliestAt)]);
  const candidates = [...keys].map((key) => ({
    key,
    score:
      readings.reduce((sum, reading) => sum + evidenceAt(reading, key), 0) +
      identLogPrior(lettersOfKey(key).length),
  }));
  return { readings, candidates: candidates.sort((a, b) => b.score - a.score) };
}
