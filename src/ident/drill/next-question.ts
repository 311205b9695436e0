import type { Around } from './candidates.ts';
import { chanceFrom } from './chance.ts';
import { chooseIdent } from './choose-ident.ts';
import type { About, Question } from './event.ts';
import type { Practice, Session } from './practice.ts';
import { NOISE_STEPS, thresholdDb } from './staircase.ts';
import { whatIsSent } from './what-is-sent.ts';

/** Letters quick with long gaps, then slower and closer, until both are what a station does. */
const WAY_IN: readonly { readonly letterWpm: number; readonly wpm: number }[] = [
  { letterWpm: 12, wpm: 5 },
  { letterWpm: 10, wpm: 5.5 },
  { letterWpm: 9, wpm: 6 },
  { letterWpm: 8, wpm: 6.5 },
];
const ON_AIR = { letterWpm: 7, wpm: 7 } as const;

const VOR_TONE_HZ = 1020;
const DME_TONE_HZ = 1350;
const TONE_SPREAD_HZ = 50;

/** How many idents are keyed unevenly, once the way in is behind. */
const UNEVEN_SHARE = 0.25;

/** A voice is laid over the ident when the noise threshold is this good, decibels. */
const VOICE_FROM_DB = -3;

/** A plate question is this much easier than the staircase, decibels. */
const PLATE_MARGIN_DB = 6;

/** Two parts of a session of three; the third is always the plate. */
const PARTS: Readonly<Record<About, readonly Question['purpose'][]>> = {
  letters: ['letters', 'letters', 'plate'],
  mixed: ['letters', 'noise', 'plate'],
  noise: ['noise', 'noise', 'plate'],
};

/** When a question is put, and what follows from nothing else. */
export interface Asking {
  readonly atMs: number;
  /** Any number; the same seed, the same question. */
  readonly seed: number;
  /** Whether there is a voice to be laid over an ident. */
  readonly hasVoice: boolean;
}

/**
 * The next question of a session.
 *
 * One in three is a plate question: the ident on the plate or, as often, one that differs in one element.
 * What is asked is what is worth most now (`worth`), never with the same first letter twice in a row.
 * One in eight sends TEST, nothing, or a DME alone.
 * *Source:* a proposal of this project; nothing was measured on people.
 */
export function nextQuestion(
  practice: Practice,
  session: Session,
  around: Around,
  { atMs, seed, hasVoice }: Asking,
): Question {
  const chance = chanceFrom(seed);
  const purpose = purposeOf(practice, session, hasVoice, chance);
  const isPlate = purpose === 'plate';
  const ident = chooseIdent(practice, session, { around, atMs, isPlate, chance });
  const sent = whatIsSent(practice, session, ident, { isPlate, chance });
  const { letterWpm, wpm } = keyingOf(session);
  return {
    sent,
    plate: isPlate ? ident : null,
    purpose,
    letterWpm,
    wpm,
    toneHz: sent.kind === 'dme-only' ? DME_TONE_HZ : vorToneHz(session, chance),
    snrDb: snrOf(practice, purpose),
    voiceDb: purpose === 'voice' ? practice.voice.levelDb : null,
    isUneven: sent.kind === 'ident' && !isOnTheWayIn(session) && chance() < UNEVEN_SHARE,
    seed: Math.trunc(chance() * 0x8000_0000),
  };
}

/** Whether the pilot hears well enough in noise for a voice on the channel. */
export function isReadyForVoice({ noise }: Practice): boolean {
  return (thresholdDb(noise) ?? 0) <= VOICE_FROM_DB;
}

function purposeOf(
  practice: Practice,
  session: Session,
  hasVoice: boolean,
  chance: () => number,
): Question['purpose'] {
  const part = PARTS[session.about][session.answered.length % 3] ?? 'letters';
  if (part !== 'noise') return part;
  // Who is still learning the first letters has enough to do without the noise.
  if (session.about === 'mixed' && practice.groups < 2) return 'letters';
  return hasVoice && isReadyForVoice(practice) && chance() < 0.5 ? 'voice' : 'noise';
}

/** How fast the letters of a session are keyed, and how fast it is over all, words a minute. */
function keyingOf({ pace, about, practisedBefore }: Session): Pick<Question, 'letterWpm' | 'wpm'> {
  if (pace === 'on-air' || about === 'noise') return ON_AIR;
  return WAY_IN[practisedBefore] ?? ON_AIR;
}

function isOnTheWayIn({ pace, practisedBefore }: Session): boolean {
  return pace === 'way-in' && practisedBefore < WAY_IN.length;
}

function vorToneHz(session: Session, chance: () => number): number {
  if (isOnTheWayIn(session)) return VOR_TONE_HZ;
  return VOR_TONE_HZ + Math.round((2 * chance() - 1) * TONE_SPREAD_HZ);
}

function snrOf({ noise, groups }: Practice, purpose: Question['purpose']): number | null {
  if (purpose === 'noise') return noise.levelDb;
  if (purpose === 'voice') return NOISE_STEPS.easiestDb;
  if (purpose === 'letters' || groups < 2) return null;
  return Math.min(NOISE_STEPS.easiestDb, noise.levelDb + PLATE_MARGIN_DB);
}
