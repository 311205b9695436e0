import type { Stretch } from './amplitude.ts';
import type { BestChain } from './best-chain.ts';
import { halved } from './frames.ts';
import type { Frames } from './frames.ts';
import { letterTables } from './letter-tables.ts';
import type { LetterTables, Level } from './letter-tables.ts';
import { markSums } from './mark-sums.ts';
import { marksOfPatterns, patternsOf } from './marks-of.ts';
import { chainOf, occurrencesIn } from './occurrences.ts';
import type { Occurrence } from './occurrences.ts';
import { COARSE_DOTS_S } from './speeds.ts';

/** What one exact speed shows. */
export interface SpeedReading {
  readonly tables: LetterTables;
  readonly chain: BestChain;
  readonly found: readonly Occurrence[];
  readonly score: number;
}

/** How machine keying at one tone was read, at a few speeds around the best. */
export interface MachineReading {
  readonly speeds: readonly SpeedReading[];
  readonly best: SpeedReading;
  readonly score: number;
}

/** A first rough reading: the best speed and the marks there. */
export interface RoughReading {
  readonly dotS: number;
  /** In frames. */
  readonly marks: readonly Stretch[];
  readonly score: number;
}

/** Dots before the recording in which an ident may have begun. */
const LEAD_UNITS = 40;

const FINE_STEP = 0.006;
const FINE_STEPS = 4;

/** The keying at a tone, rough, with frames of double length; null when no ident stands out. */
export function roughReading(frames: Frames, amplitude: Float64Array): RoughReading | null {
  const rough = halved(frames);
  const half = Float64Array.from({ length: rough.count }, (_, n) => amplitude[2 * n] ?? 0);
  const levels: Level[] = [{ sums: markSums(rough, half, 1), logPrior: 0 }];
  let best: RoughReading | null = null;
  for (const dotS of COARSE_DOTS_S) {
    const unit = dotS / rough.frameS;
    const tables = letterTables(levels, unit, Math.round(LEAD_UNITS * unit));
    const found = occurrencesIn(tables, chainOf(tables, rough.frameS, 3));
    const score = scoreOf(found);
    if (score <= (best?.score ?? 0)) continue;
    const marks = stretchesOf(found, tables).map(({ from, to }) => ({
      from: 2 * from,
      to: 2 * to,
    }));
    best = { dotS, marks, score };
  }
  return best;
}

function scoreOf(found: readonly Occurrence[]): number {
  return found.reduce((sum, each) => sum + each.score, 0);
}

/** The marks of occurrences, in frames of the recording. */
export function stretchesOf(found: readonly Occurrence[], tables: LetterTables): Stretch[] {
  const { unit, lead } = tables;
  return found.flatMap(({ place, letters }) =>
    marksOfPatterns(patternsOf(letters)).map(({ fromUnits, toUnits }) => ({
      from: place - lead + fromUnits * unit,
      to: place - lead + toUnits * unit,
    })),
  );
}

/** The keying at a tone at speeds near that of a rough reading; null when no ident stands out. */
export function machineReading(
  levels: readonly Level[],
  dotS: number,
  frameS: number,
): MachineReading | null {
  const speeds = Array.from({ length: 2 * FINE_STEPS + 1 }, (_, n): SpeedReading => {
    const unit = (dotS / frameS) * (1 + (n - FINE_STEPS) * FINE_STEP);
    const tables = letterTables(levels, unit, Math.round(LEAD_UNITS * unit));
    const chain = chainOf(tables, frameS);
    const found = occurrencesIn(tables, chain);
    return { tables, chain, found, score: scoreOf(found) };
  });
  const at = speeds.reduce(
    (most, { score }, n) => (score > (speeds[most]?.score ?? 0) ? n : most),
    0,
  );
  const best = speeds[at];
  if (best === undefined || best.score <= 0) return null;
  return { speeds: speeds.slice(Math.max(0, at - 2), at + 3), best, score: best.score };
}
