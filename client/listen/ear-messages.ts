import type { ListeningView } from '../../src/ident/listening.ts';

/** What is listened for. */
export interface Wanted {
  /** The ident that should be there; null: whichever there is. */
  readonly expected: string | null;
}

/** What the page asks of the worker that listens. */
export type ToEar =
  | ({
      readonly kind: 'live';
      /** The microphone's front end sends its blocks here: re, im, re, im ... */
      readonly blocks: MessagePort;
      /** Of the microphone, before the front end. */
      readonly sampleRateHz: number;
    } & Wanted)
  | ({ readonly kind: 'file'; readonly file: Blob } & Wanted);

/** Level of the tone over time, one value for each block. */
export interface LevelStretch {
  /** Where the first value begins, seconds since listening began. */
  readonly fromS: number;
  readonly stepS: number;
  /** Decibels below full scale. */
  readonly levelsDb: readonly number[];
}

/** What the worker answers. */
export type FromEar =
  | {
      readonly kind: 'heard';
      readonly view: ListeningView;
      readonly levels: LevelStretch;
      /** For how long every sample has been exactly zero, seconds. */
      readonly flatS: number;
    }
  | { readonly kind: 'read'; readonly lengthS: number; readonly isCutShort: boolean }
  /** How much of the work on a file is done, 0 to 1, with what can be shown of it. */
  | { readonly kind: 'progress'; readonly fraction: number; readonly levels: LevelStretch | null }
  /** All of a file has been heard. */
  | { readonly kind: 'over'; readonly view: ListeningView; readonly levels: LevelStretch }
  | { readonly kind: 'refused'; readonly problem: string };

/** What the front end in the audio thread is given: where to send its blocks; null: it is to end. */
export interface ToFrontEnd {
  readonly blocks: MessagePort | null;
}
