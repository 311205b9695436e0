import { impairedSamples } from '../impaired.ts';
import { identTimeline, timelineLengthS, type Mark } from '../timeline.ts';
import { unevenMarks } from '../uneven.ts';
import type { Question } from './event.ts';
import { spacedTimeline } from './spaced.ts';

/** The sound of a question. */
export interface QuestionSound {
  /** Mono, -1 to 1. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** When the last mark ends, or the listening where there is none, seconds from the start. */
  readonly keyedEndS: number;
}

/** Samples a second of the sound of a question, and so of a voice that is laid over it. */
export const QUESTION_RATE_HZ = 16_000;

const LEAD_S = 0.6;
const TAIL_S = 0.8;

/** Long enough to notice that nothing is keyed; a real station is given half a minute. */
const NOTHING_S = 6;

/**
 * The sound of a question: what is sent, once, in the noise of a cabin and under a voice where the
 * question has them. The same question sounds the same.
 *
 * `voice`: speech, mono at `QUESTION_RATE_HZ`; null: there is none at hand, and none is laid over.
 */
export function questionSound(question: Question, voice: Float32Array | null): QuestionSound {
  const { snrDb, voiceDb, seed, toneHz } = question;
  const marks = marksOf(question).map((mark) => ({ ...mark, toneHz }));
  const isNothing = marks.length === 0;
  const samples = impairedSamples(marks, {
    sampleRateHz: QUESTION_RATE_HZ,
    seed,
    leadS: LEAD_S,
    tailS: isNothing ? NOTHING_S : TAIL_S,
    ...(snrDb === null ? {} : { noise: { of: 'cabin' as const, toneOverDb: snrDb } }),
    ...(voiceDb === null || voice === null
      ? {}
      : { voice: { samples: voice, toneOverDb: voiceDb } }),
  });
  const keyedEndS = isNothing ? NOTHING_S : LEAD_S + timelineLengthS(marks);
  return { samples, sampleRateHz: QUESTION_RATE_HZ, keyedEndS };
}

function marksOf(question: Question): readonly Mark[] {
  const marks = evenMarks(question);
  return question.isUneven ? unevenMarks(marks, { seed: question.seed }) : marks;
}

function evenMarks({ sent, letterWpm, wpm }: Question): readonly Mark[] {
  switch (sent.kind) {
    case 'ident':
      return spacedTimeline(sent.ident, { letterWpm, wpm });
    case 'test':
      return spacedTimeline('TEST', { letterWpm, wpm });
    case 'dme-only':
      return identTimeline(sent.ident);
    case 'nothing':
      return [];
  }
}
