import { signal, type ReadonlySignal } from '@preact/signals';
import { claimSound } from './claim.ts';

/** How an ident is keyed. */
export interface IdentSound {
  /** Words per minute (PARIS). */
  readonly wpm: number;
  /** 1020 for the ident of a VOR. */
  readonly toneHz: number;
  readonly repeats: number;
  /** 0 to 1. */
  readonly volume: number;
}

/** An ident that is being played. */
export interface PlayingIdent {
  stop(): void;
  /** Index of the dot or dash that sounds now (counted anew in each repeat); null between them. */
  readonly marks: ReadonlySignal<number | null>;
  /** Settles when the sound has ended or was stopped; rejects with a sentence when there can be no sound. */
  readonly done: Promise<void>;
}

/** Keys an ident as sound; nothing is spoken meanwhile. Call it from a tap or a key. */
export function playIdent(_ident: string, _sound: IdentSound): PlayingIdent {
  const release = claimSound();
  const marks = signal<number | null>(null);
  const done = Promise.resolve().then(release);
  return { stop: release, marks, done };
}
