import type { FieldProblem } from '../src/base/result.ts';

/** A station as it is kept: its id and its JSON text. */
export type KeptBody = readonly [id: string, body: string];

/** What the worker of an import is asked; every question has one answer. */
export type ImportQuestion =
  /** Some stations of the library, as JSON texts; `isFirst`: those told before do not count any more. */
  | { readonly kind: 'library'; readonly bodies: readonly string[]; readonly isFirst: boolean }
  /** A CSV file; null: the one before, read anew against another library. */
  | { readonly kind: 'file'; readonly csv: Uint8Array<ArrayBuffer> | null; readonly year: number }
  /** Some more of what is to be kept. */
  | { readonly kind: 'changes' };

/** What the worker of an import answers. */
export type ImportAnswer =
  | { readonly kind: 'heard' }
  | { readonly kind: 'refused'; readonly problems: readonly FieldProblem[] }
  /** What is answered to who sent the file, as JSON. */
  | { readonly kind: 'read'; readonly json: Uint8Array<ArrayBuffer> }
  /** None: that was all. */
  | { readonly kind: 'changes'; readonly bodies: readonly KeptBody[] };
