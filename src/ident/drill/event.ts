/** What a session is about: new letters, listening through noise, or both. */
export type About = 'letters' | 'mixed' | 'noise';

/** How fast it is keyed: from quick letters with long gaps down to what a station does, or that at once. */
export type Pace = 'way-in' | 'on-air';

/**
 * What is sent. Only `ident` identifies a station: TEST means that it is being worked on, nothing means
 * that it must not be used, and a DME alone says nothing of the VOR.
 */
export type Sent =
  | { readonly kind: 'ident'; readonly ident: string }
  | { readonly kind: 'test' }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'dme-only'; readonly ident: string };

/** One question: a sound to be written down, or to be held against the ident on the plate. */
export interface Question {
  readonly sent: Sent;
  /** The ident on the plate in "is this the station on the plate?"; null: it is to be written down. */
  readonly plate: string | null;
  /** What it is for: the letters, the plate, or the level of noise or of voice that the ear still takes. */
  readonly purpose: 'letters' | 'plate' | 'noise' | 'voice';
  readonly letterWpm: number;
  readonly wpm: number;
  readonly toneHz: number;
  /** Tone over noise in 3 kHz, decibels; null: no noise. */
  readonly snrDb: number | null;
  /** Tone over a voice on the channel, decibels; null: no voice. */
  readonly voiceDb: number | null;
  /** Keyed as by a hand or a worn cam: lengths a little off, dashes of their own length. */
  readonly isUneven: boolean;
  /** From which the noise and the unevenness of the keying follow. */
  readonly seed: number;
}

/** What the pilot answers. */
export type Answer =
  | { readonly kind: 'letters'; readonly letters: string }
  | { readonly kind: 'yes' }
  | { readonly kind: 'no' }
  | { readonly kind: 'not-identified' };

interface Stamp {
  /** A ULID made where the event was born. */
  readonly id: string;
  readonly atMs: number;
}

/** A session of so many questions begins. */
export interface StartedEvent extends Stamp {
  readonly kind: 'started';
  readonly about: About;
  readonly pace: Pace;
  /** How many questions. */
  readonly length: number;
}

/** A question was put. */
export interface AskedEvent extends Stamp {
  readonly kind: 'asked';
  readonly question: Question;
}

/** It was answered; the first answer to a question is the one that counts. */
export interface AnsweredEvent extends Stamp {
  readonly kind: 'answered';
  readonly questionId: string;
  readonly answer: Answer;
  /** From the end of the sound as first played to the answer, seconds; 0 when answered before its end. */
  readonly tookS: number;
  /** How often it was played. */
  readonly plays: number;
}

/** The session is over, all asked or not. */
export interface EndedEvent extends Stamp {
  readonly kind: 'ended';
}

/** The pilot takes up the letters of the first `groups` groups without waiting for the score. */
export interface OpenedEvent extends Stamp {
  readonly kind: 'opened';
  readonly groups: number;
}

/** One line of the append-only practice log. */
export type PracticeEvent = StartedEvent | AskedEvent | AnsweredEvent | EndedEvent | OpenedEvent;
