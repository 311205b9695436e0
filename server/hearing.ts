import type { Confirmation, IdentHeard, Known } from '../src/ident/heard.ts';
import type { Result } from '../src/base/result.ts';

/** What is asked of a recording. */
export interface Hearing {
  /** A WAV file; handed over, not copied. */
  readonly wav: Uint8Array<ArrayBuffer>;
  /** Which ident it is held to; null: it is only decoded. */
  readonly expected: string | null;
  readonly known: Known;
}

/** What a worker answers. */
export type Heard = Result<
  | { readonly kind: 'decoded'; readonly heard: IdentHeard }
  | { readonly kind: 'confirmed'; readonly confirmation: Confirmation }
>;
