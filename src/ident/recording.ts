/** A stretch of sound, from a file or from the microphone. */
export interface Recording {
  /** Mono, -1 to 1. */
  readonly samples: Float32Array;
  /** Samples a second, 8000 to 192000. */
  readonly sampleRateHz: number;
  /** Whether the file promised more sound than it held. */
  readonly isCutShort: boolean;
}
