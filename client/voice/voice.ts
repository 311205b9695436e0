/** How a sentence is spoken. */
export interface Manner {
  /** 1 is the voice's own pace. */
  readonly rate: number;
  /** 0 to 1. */
  readonly volume: number;
}

/** A sentence that is being spoken. */
export interface Speaking {
  /** Settles when the sentence is over or was stopped; rejects when the voice cannot speak. */
  readonly done: Promise<void>;
  stop(): void;
}

/** Something that can speak a sentence. */
export interface Voice {
  speak(sentence: string, manner: Manner): Speaking;
  /** Gets a sentence ready that will follow soon. */
  prepare(sentence: string, manner: Manner): void;
}

const WORDS_PER_S = 2.2;

/** A careful guess of how long a sentence takes, milliseconds. */
export function lengthMs(sentence: string, rate: number): number {
  return 700 + (sentence.split(/\s+/).length / (WORDS_PER_S * rate)) * 1000;
}
