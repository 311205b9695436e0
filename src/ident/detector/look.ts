import { CENTRE_HZ } from '../front-end.ts';
import type { Confirmation, IdentHeard, Known } from '../heard.ts';
import type { Judged } from './judged.ts';
import { spectrogramOf } from './spectrogram.ts';
import type { Stream } from './stream.ts';
import { tell, verdictFrom } from './tell.ts';
import { tonesIn } from './tone-search.ts';
import type { ToneFound } from './tone-search.ts';

/** What is looked for, and when the stretch began. */
export interface LookingFor {
  readonly expected: string | null;
  readonly known: Known | undefined;
  /** Start of the stretch, seconds since listening began. */
  readonly startS: number;
}

/** What one look at the last stretch of sound has shown. */
export interface Look {
  readonly heard: IdentHeard;
  /** How probable the likeliest ident is, told or not. */
  readonly likelihood: number;
  readonly confirmation: Confirmation | null;
  /** Marks of the likeliest ident, seconds since listening began. */
  readonly marks: readonly {
    readonly startS: number;
    readonly durationS: number;
    readonly element: 'dot' | 'dash';
  }[];
  readonly dotS: number | null;
  /** The tone that is most likely keyed, whether or not an ident was read. */
  readonly loudestHz: number | null;
  /** Not even a mark stands out. */
  readonly isStill: boolean;
}

/** Reads a stretch of the stream as a whole. */
export function look(stream: Stream, looking: LookingFor): Look {
  const telling = tell(stream, looking.known ?? {}, looking.expected);
  const { heard, best, likelihood, isStill } = telling.told;
  const offsetHz = telling.analysis.readings[0]?.tone.offsetHz;
  return {
    heard,
    likelihood,
    isStill,
    confirmation: looking.expected === null ? null : verdictFrom(telling, looking.expected),
    marks: best === null || likelihood < 0.3 ? [] : marksOf(best, looking.startS),
    dotS: heard.wpm === null ? null : 1.2 / heard.wpm,
    loudestHz: offsetHz === undefined ? null : offsetHz + CENTRE_HZ,
  };
}

/** The tone that looks most keyed in a short stretch, from the stream's centre; null when none does. */
export function keyedToneIn(stream: Stream): number | null {
  const tones = tonesIn(spectrogramOf(stream, 0.4, 0.1, 512), 1);
  const best = tones.reduce<ToneFound | null>(
    (most, tone) => (tone.score > (most?.score ?? 0) ? tone : most),
    null,
  );
  return best?.offsetHz ?? null;
}

function marksOf({ heard, reading }: Judged, startS: number): Look['marks'] {
  const { frameS, count } = reading.frames;
  return heard.flatMap(({ marks, dotFrames }) =>
    marks
      .filter(({ from, to }) => from >= 0 && to <= count)
      .map(({ from, to }) => ({
        startS: startS + from * frameS,
        durationS: (to - from) * frameS,
        element: to - from > 2 * dotFrames ? ('dash' as const) : ('dot' as const),
      })),
  );
}
