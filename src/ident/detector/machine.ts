import { loudAmplitude, amplitudeFromMarks } from './amplitude.ts';
import type { Stretch } from './amplitude.ts';
import { framesAt, halved } from './frames.ts';
import type { Frames } from './frames.ts';
import { letterTables } from './letter-tables.ts';
import type { LetterTables, Level } from './letter-tables.ts';
import { markSums } from './mark-sums.ts';
import { marksOfPatterns, patternsOf } from './marks-of.ts';
import { occurrencesIn } from './occurrences.ts';
import type { Occurrence } from './occurrences.ts';
import { detuningHz } from './retune.ts';
import { COARSE_DOTS_S } from './speeds.ts';
import type { Listened } from './listened.ts';
import type { ToneFound } from './tone-search.ts';

/** How machine keying at one tone was read. */
export interface MachineReading {
  readonly tone: ToneFound;
  readonly frames: Frames;
  readonly amplitude: Float64Array;
  readonly meanAmplitude: number;
  readonly levels: readonly Level[];
  /** Tables at a few speeds around the best, with the occurrences that each shows. */
  readonly speeds: readonly {
    readonly tables: LetterTables;
    readonly found: readonly Occurrence[];
  }[];
  /** The best of them. */
  readonly best: number;
  readonly score: number;
}

/** Dots before the recording in which an ident may have begun. */
const LEAD_UNITS = 40;

const FINE_STEP = 0.006;
const FINE_STEPS = 4;

/** The keying at a tone, rough: the best speed and what is there. */
export function roughReading(
  frames: Frames,
  amplitude: Float64Array,
): {
  readonly dotS: number;
  readonly found: readonly Occurrence[];
  readonly lead: number;
  readonly score: number;
}[] {
  const rough = halved(frames);
  const half = Float64Array.from({ length: rough.count }, (_, n) => amplitude[2 * n] ?? 0);
  const levels: Level[] = [{ sums: markSums(rough, half, 1), logPrior: 0 }];
  return COARSE_DOTS_S.map((dotS) => {
    const unit = dotS / rough.frameS;
    const lead = Math.round(LEAD_UNITS * unit);
    const found = occurrencesIn(letterTables(levels, unit, lead), rough.frameS);
    return { dotS, found, lead, score: scoreOf(found) };
  }).sort((a, b) => b.score - a.score);
}

function scoreOf(found: readonly Occurrence[]): number {
  return found.reduce((sum, each) => sum + each.score, 0);
}

/** The marks of occurrences, in frames of the recording. */
export function stretchesOf(found: readonly Occurrence[], unit: number, lead: number): Stretch[] {
  return found.flatMap(({ place, letters }) =>
    marksOfPatterns(patternsOf(letters)).map(({ fromUnits, toUnits }) => ({
      from: place - lead + fromUnits * unit,
      to: place - lead + toUnits * unit,
    })),
  );
}

/** Reads one tone as keyed by a machine; null when nothing is keyed there. */
export function machineReading(listened: Listened, tone: ToneFound): MachineReading | null {
  const first = framesAt(listened.stream, tone.offsetHz, listened.besideAt(tone.offsetHz));
  const guess = new Float64Array(first.count).fill(loudAmplitude(first));
  const rough = roughReading(first, guess)[0];
  if (rough === undefined || rough.found.length === 0) return null;
  const unit = rough.dotS / first.frameS;
  const marks = stretchesOf(rough.found, unit / 2, rough.lead).map(({ from, to }) => ({
    from: 2 * from,
    to: 2 * to,
  }));
  const offsetHz = tone.offsetHz + detuningHz(first, marks, guess[0] ?? 0);
  const frames = framesAt(listened.stream, offsetHz, listened.besideAt(offsetHz));
  const { amplitude, mean, spread } = amplitudeFromMarks(frames, marks);
  const levels = levelsFor(frames, amplitude, spread);
  const speeds = Array.from({ length: 2 * FINE_STEPS + 1 }, (_, n) => {
    const fine = unit * (1 + (n - FINE_STEPS) * FINE_STEP);
    const tables = letterTables(levels, fine, Math.round(LEAD_UNITS * fine));
    return { tables, found: occurrencesIn(tables, frames.frameS) };
  });
  const best = speeds.reduce(
    (most, each, n) => (scoreOf(each.found) > scoreOf(speeds[most]?.found ?? []) ? n : most),
    0,
  );
  const kept = speeds.slice(Math.max(0, best - 2), best + 3);
  return {
    tone: { ...tone, offsetHz },
    frames,
    amplitude,
    meanAmplitude: mean,
    levels,
    speeds: kept,
    best: Math.min(best, 2),
    score: scoreOf(speeds[best]?.found ?? []),
  };
}

/** The levels at which marks may come: nearly all at full level, weaker ones where levels vary. */
function levelsFor(frames: Frames, amplitude: Float64Array, spread: number): Level[] {
  const weak = Math.min(0.15, 0.002 + spread * spread);
  return [
    { scale: 1, share: 1 - 1.25 * weak },
    { scale: 0.55, share: weak },
    { scale: 0.3, share: weak / 4 },
  ].map(({ scale, share }) => ({
    sums: markSums(frames, amplitude, scale),
    logPrior: Math.log(share),
  }));
}
