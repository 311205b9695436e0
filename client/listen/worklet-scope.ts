/** What of the scope of an AudioWorklet is used here (the DOM types do not have it). */
export interface WorkletScope {
  /** Samples a second of the audio context. */
  readonly sampleRate: number;
  readonly AudioWorkletProcessor: new () => { readonly port: MessagePort };
  registerProcessor(
    name: string,
    processor: new () => {
      process(inputs: readonly (readonly Float32Array[])[]): boolean;
    },
  ): void;
}

/** Under which name the front end is known to the audio thread. */
export const FRONT_END = 'ident-front-end';
