import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { SkippedReason } from './skipped-reasons.ts';

/** What an import does, without the stations themselves: those come after it, some at a time. */
export interface ImportTally {
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  /** How many lines were skipped, and the commonest reasons. */
  readonly skipped: number;
  readonly reasons: readonly SkippedReason[];
  /** What is doubtful about the file as a whole. */
  readonly warnings: readonly string[];
}

/** What the worker is asked: to read a file, then for some more of what is to be kept. */
export type ToImport =
  | {
      readonly kind: 'file';
      readonly file: File;
      /** Decimal, for declinations that are missing. */
      readonly year: number;
    }
  | { readonly kind: 'more' };

/** What it tells: how far it has come, what the import does, or why there is none. */
export type FromImport =
  | { readonly kind: 'progress'; readonly lines: number; readonly fraction: number }
  | { readonly kind: 'read'; readonly tally: ImportTally }
  /** None: that was all. */
  | { readonly kind: 'stations'; readonly stations: readonly LibraryStation[] }
  | { readonly kind: 'refused'; readonly problem: string };
