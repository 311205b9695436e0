import { loopEvidence, plus } from './ident-loop.ts';
import { keyOfLetters, lettersOfKey, likelyIdents } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import type { Listened } from './listened.ts';
import { machineReading } from './machine.ts';
import type { MachineReading } from './machine.ts';
import { identLogPrior } from './occurrences.ts';
import { tonesIn } from './tone-search.ts';

/** An ident that may have been keyed, with the evidence for it. */
export interface Candidate {
  readonly key: IdentKey;
  /** Evidence and prior together, nats, against nothing keyed at all. */
  readonly score: number;
}

/** What a recording holds. */
export interface Analysis {
  readonly readings: readonly MachineReading[];
  /** The likeliest first. */
  readonly candidates: readonly Candidate[];
}

const MOST_CANDIDATES = 60;

/** A tone this much weaker than the other one is only the click of its keying. */
const FAINTEST = 0.06;

/** Works out which idents a recording may hold. `asked`: idents that are looked at in any case. */
export function analyse(listened: Listened, asked: readonly (readonly number[])[]): Analysis {
  const tones = tonesIn(listened.coarse, 2);
  const all = tones.flatMap((tone) => machineReading(listened, tone) ?? []);
  const readings = (['vor', 'dme'] as const)
    .flatMap((band) => {
      const here = all.filter((reading) => reading.tone.band === band);
      return here.sort((a, b) => b.score - a.score).slice(0, 1);
    })
    .filter((reading, _, both) =>
      both.every((other) => reading.meanAmplitude > FAINTEST * other.meanAmplitude),
    );
  const keys = new Set([...asked.map(keyOfLetters), ...readings.flatMap(likeliest)]);
  const candidates = [...keys].map((key) => {
    const letters = lettersOfKey(key);
    const evidence = readings.reduce((sum, reading) => sum + machineEvidence(reading, letters), 0);
    return { key, score: evidence + identLogPrior(letters.length) };
  });
  return { readings, candidates: candidates.sort((a, b) => b.score - a.score) };
}

/** The likeliest idents of one tone by all its occurrences together. */
function likeliest(reading: MachineReading): IdentKey[] {
  const speed = reading.speeds[reading.best];
  if (speed === undefined) return [];
  const lists = speed.found.map((occurrence) => likelyIdents(speed.tables, occurrence));
  const floors = lists.map((list) => Math.max(...list.values()) - 15);
  const keys = [...new Set(lists.flatMap((list) => [...list.keys()]))];
  const total = (key: IdentKey) =>
    lists.reduce((sum, list, n) => sum + (list.get(key) ?? floors[n] ?? 0), 0);
  const scored = keys.map((key) => ({ key, score: total(key) }));
  scored.sort((a, b) => b.score - a.score);
  return scored.slice(0, MOST_CANDIDATES).map(({ key }) => key);
}

/** Evidence for one ident at one tone, over the speeds that fit. */
function machineEvidence(reading: MachineReading, letters: readonly number[]): number {
  return reading.speeds.reduce(
    (sum, { tables }) => plus(sum, loopEvidence(tables, letters, reading.frames.frameS)),
    -Infinity,
  );
}
