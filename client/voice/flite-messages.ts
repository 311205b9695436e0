/** What the page asks of the worker that speaks. */
export type ToFlite =
  | { readonly kind: 'load'; readonly wasmUrl: string }
  | {
      readonly kind: 'speak';
      readonly id: number;
      readonly sentence: string;
      /** 1 is the voice's own pace, 2 twice as slow. */
      readonly stretch: number;
    };

/** What the worker answers. */
export type FromFlite =
  | { readonly kind: 'progress'; readonly fraction: number }
  | { readonly kind: 'ready' }
  | { readonly kind: 'not-loaded'; readonly reason: string }
  | {
      readonly kind: 'samples';
      readonly id: number;
      /** Mono, -1 to 1. */
      readonly samples: Float32Array<ArrayBuffer>;
      readonly rateHz: number;
    }
  | { readonly kind: 'not-spoken'; readonly id: number; readonly reason: string };
